import { type MouseEvent, useEffect, useRef, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { type Point, radiansOf, type ZoneKind } from "#engine";
import { AngleField, LengthField, Say } from "../fields/index.ts";
import { t } from "../texts/models.ts";
import {
  metresPerPixel,
  type PolarPoint,
  pixelOf,
  type Tracing,
  tracedPoint,
  withPoint,
} from "./outline-tracing.ts";
import { ViewHead } from "./view-head.tsx";

interface OutlineEditorProps {
  readonly kind: ZoneKind;
  readonly points: readonly PolarPoint[];
  /** Undefined: left as it was. */
  readonly onDone: (points: readonly PolarPoint[] | undefined) => void;
}

/** Drawing board without a picture: 10 m to the edge, centre in the middle. */
const board = { width: 400, height: 400 };
const emptyBoard: Tracing = { centre: [200, 200], mark: [380, 200], distance: 9, notch: 0 };

/** The edge of a zone that is not round: traced over a picture of the data sheet, or entered as angles and radii. */
export function OutlineEditor({ kind, points: before, onDone }: OutlineEditorProps) {
  const [points, setPoints] = useState(before);
  const [picture, setPicture] = useState<{
    readonly address: string;
    readonly width: number;
    readonly height: number;
  }>();
  const [tracing, setTracing] = useState<Tracing>(emptyBoard);
  const [trouble, setTrouble] = useState(false);
  const drawing = useRef<SVGSVGElement>(null);
  const address = picture?.address;
  useEffect(() => () => void (address === undefined ? undefined : URL.revokeObjectURL(address)), [address]);
  const { width, height } = picture ?? board;
  const size = Math.max(width, height);
  const load = async (file: File) => {
    try {
      const bitmap = await createImageBitmap(file);
      setPicture({ address: URL.createObjectURL(file), width: bitmap.width, height: bitmap.height });
      bitmap.close();
      setTracing({ centre: undefined, mark: undefined, distance: 4, notch: 0 });
      setTrouble(false);
    } catch {
      setTrouble(true);
    }
  };
  const press = (event: MouseEvent<SVGSVGElement>) => {
    const box = drawing.current?.getScreenCTM();
    if (box === null || box === undefined) return;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(box.inverse());
    const at: Point = [x, y];
    if (tracing.centre === undefined) setTracing({ ...tracing, centre: at });
    else if (tracing.mark === undefined) setTracing({ ...tracing, mark: at });
    else {
      const point = tracedPoint(tracing, at);
      if (point !== undefined) setPoints(withPoint(points, point));
    }
  };
  const step = tracing.centre === undefined ? "centre" : tracing.mark === undefined ? "mark" : "edge";
  const pixels = points.flatMap((point) => {
    const pixel = pixelOf(tracing, point);
    return pixel === undefined ? [] : [pixel];
  });
  return (
    <div className="stack outline">
      <ViewHead>{t("models.outline.title", { zone: t(`zone.${kind}`) })}</ViewHead>
      <p aria-live="polite">{t(`models.outline.step.${step}`)}</p>
      {trouble ? <Say severity="must">{t("models.outline.no-picture")}</Say> : null}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the keyboard enters the same points as figures below */}
      <svg
        ref={drawing}
        className="outline-board"
        viewBox={`0 0 ${width} ${height}`}
        onClick={press}
        role="img"
        aria-label={t("models.outline.board", { count: points.length })}
      >
        {picture === undefined ? null : (
          <image href={picture.address} width={width} height={height} opacity={0.7} />
        )}
        <Rings tracing={tracing} size={size} />
        {pixels.length > 1 ? <path className="outline-edge" d={`M${pixels.join("L")}Z`} /> : null}
        {pixels.map(([x, y], index) => (
          <circle key={points[index]![0]} className="outline-point" cx={x} cy={y} r={size * 0.012} />
        ))}
      </svg>
      <div className="fields">
        {picture === undefined ? null : (
          <LengthField
            label={t("models.outline.distance")}
            value={tracing.distance}
            least={0.1}
            most={100}
            onChange={(distance) => setTracing({ ...tracing, distance })}
          />
        )}
        <AngleField
          label={t("models.outline.notch")}
          value={tracing.notch}
          least={radiansOf(-360)}
          most={radiansOf(360)}
          onChange={(notch) => setTracing({ ...tracing, notch })}
        />
      </div>
      <div className="row">
        <FileTrigger acceptedFileTypes={["image/*"]} onSelect={(files) => files?.[0] && void load(files[0])}>
          <Button className="button">{t("models.outline.picture")}</Button>
        </FileTrigger>
        {picture === undefined ? null : (
          <Button
            className="button"
            onPress={() => setTracing({ ...tracing, centre: undefined, mark: undefined })}
          >
            {t("models.outline.again")}
          </Button>
        )}
        <Button className="button" onPress={() => setPoints([])} isDisabled={points.length === 0}>
          {t("models.outline.clear")}
        </Button>
      </div>
      <PointRows points={points} onChange={setPoints} />
      {points.length > 0 && points.length < 3 ? <p className="hint">{t("models.outline.three")}</p> : null}
      <div className="row">
        <Button
          className="button button-first"
          onPress={() => onDone(points)}
          isDisabled={points.length < 3 && (points.length > 0 || before.length === 0)}
        >
          {t("models.outline.done")}
        </Button>
        <Button className="button button-quiet" onPress={() => onDone(undefined)}>
          {t("models.outline.leave")}
        </Button>
      </div>
    </div>
  );
}

/** Centre, notch, and a ring every metre or more, once the picture has its scale. */
function Rings({ tracing, size }: { readonly tracing: Tracing; readonly size: number }) {
  const scale = metresPerPixel(tracing);
  const { centre } = tracing;
  if (centre === undefined) return null;
  const every =
    scale === undefined ? 1 : ([1, 2, 5, 10].find((step) => (size * scale) / 2 / step <= 8) ?? 20);
  const radii =
    scale === undefined ? [] : Array.from({ length: 8 }, (_, index) => ((index + 1) * every) / scale);
  const tip = pixelOf(tracing, [0, scale === undefined ? 0 : scale * size * 0.08]);
  return (
    <g className="outline-rings">
      {radii
        .filter((radius) => radius < size)
        .map((radius) => (
          <circle key={radius} cx={centre[0]} cy={centre[1]} r={radius} />
        ))}
      {tip === undefined ? null : (
        <line className="zone-notch" x1={centre[0]} y1={centre[1]} x2={tip[0]} y2={tip[1]} />
      )}
      <circle className="zone-device" cx={centre[0]} cy={centre[1]} r={size * 0.015} />
    </g>
  );
}

interface PointRowsProps {
  readonly points: readonly PolarPoint[];
  readonly onChange: (points: readonly PolarPoint[]) => void;
}

/** The same points as figures, for the keyboard and for data sheets with a table. */
function PointRows({ points, onChange }: PointRowsProps) {
  const others = (index: number) => points.filter((_, at) => at !== index);
  return (
    <div className="stack">
      <ol className="outline-rows">
        {points.map(([angle, radius], index) => (
          <li key={angle} className="outline-row">
            <AngleField
              label={t("models.outline.angle")}
              value={angle}
              least={0}
              most={2 * Math.PI}
              onChange={(next) => onChange(withPoint(others(index), [next, radius]))}
            />
            <LengthField
              label={t("models.outline.radius")}
              value={radius}
              least={0}
              most={100}
              onChange={(next) => onChange(withPoint(others(index), [angle, next]))}
            />
            <Button
              className="button button-quiet button-sign"
              aria-label={t("models.outline.remove-point", { number: index + 1 })}
              onPress={() => onChange(others(index))}
            >
              <svg viewBox="0 0 18 18" aria-hidden="true">
                <path d="M4 4l10 10M14 4 4 14" />
              </svg>
            </Button>
          </li>
        ))}
      </ol>
      <div>
        <Button
          className="button"
          onPress={() => {
            const last = points.at(-1);
            const angle = last === undefined ? 0 : last[0] + radiansOf(15);
            onChange(withPoint(points, [Math.min(angle, radiansOf(359)), last?.[1] ?? 4]));
          }}
        >
          {t("models.outline.add-point")}
        </Button>
      </div>
    </div>
  );
}
