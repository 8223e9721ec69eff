import { useRef, useState } from "react";
import { Button } from "react-aria-components";
import { type Metres, type Point, remedyOf, sentenceOf } from "#engine";
import { fourPointMap, twoPointMap } from "#exchange";
import { Choice, LengthField } from "../../fields/index.ts";
import { t } from "../../texts/index.ts";
import type { SmallPicture } from "./picture-file.ts";
import "./picture-scale.css";

interface PictureScaleProps {
  readonly picture: SmallPicture;
  readonly word: string;
  readonly onTake: (map: readonly number[]) => void;
  readonly onDrop: () => void;
}

type Kind = "straight" | "slanted";

/** Places that are set, in order, and how many. */
const needed: Readonly<Record<Kind, number>> = { straight: 2, slanted: 4 };
const zooms = [1, 2, 4] as const;

/** Gives a picture its scale: two places with the length between them, or the four corners of a rectangle with its two sides. */
export function PictureScale({ picture, word, onTake, onDrop }: PictureScaleProps) {
  const [kind, setKind] = useState<Kind>("straight");
  const [places, setPlaces] = useState<readonly Point[]>([]);
  const [length, setLength] = useState<Metres | undefined>();
  const [width, setWidth] = useState<Metres | undefined>();
  const [zoom, setZoom] = useState<number>(1);
  const [trouble, setTrouble] = useState<string | undefined>();
  const held = useRef<{ readonly index: number; readonly fresh: "fresh" | "known" } | undefined>(undefined);
  const frame = useRef<HTMLDivElement>(null);
  const placeOf = (event: React.PointerEvent): Point => {
    const box = frame.current?.getBoundingClientRect() ?? new DOMRect(0, 0, 1, 1);
    return [
      ((event.clientX - box.left) / box.width) * picture.width,
      ((event.clientY - box.top) / box.height) * picture.height,
    ];
  };
  const pressed = (event: React.PointerEvent): void => {
    const at = placeOf(event);
    const box = frame.current?.getBoundingClientRect();
    const reach = (22 / (box?.width ?? 1)) * picture.width;
    const near = places.findIndex((place) => Math.hypot(place[0] - at[0], place[1] - at[1]) < reach);
    if (near < 0 && places.length >= needed[kind]) return;
    held.current = near < 0 ? { index: places.length, fresh: "fresh" } : { index: near, fresh: "known" };
    frame.current?.setPointerCapture(event.pointerId);
    setPlaces(near < 0 ? [...places, at] : places);
    setTrouble(undefined);
  };
  const moved = (event: React.PointerEvent): void => {
    const index = held.current?.index;
    if (index === undefined) return;
    const at = placeOf(event);
    setPlaces((known) => known.map((place, i) => (i === index ? at : place)));
  };
  const take = (): void => {
    const answer =
      kind === "straight"
        ? twoPointMap(places as [Point, Point], { length: length ?? 0, height: picture.height })
        : fourPointMap(places as [Point, Point, Point, Point], rectangle(length ?? 0, width ?? 0));
    if ("map" in answer) onTake(answer.map);
    else setTrouble(`${sentenceOf(answer)} ${remedyOf(answer)}`);
  };
  const whole =
    places.length === needed[kind] && (length ?? 0) > 0 && (kind === "straight" || (width ?? 0) > 0);
  const size = 100 / picture.width;
  return (
    <div className="stack">
      <Choice
        label={t("drawings.picture.kind")}
        value={kind}
        options={[
          { value: "straight", word: t("drawings.picture.straight") },
          { value: "slanted", word: t("drawings.picture.slanted") },
        ]}
        onChange={(next) => {
          setKind(next);
          setPlaces(places.slice(0, needed[next]));
        }}
      />
      <p className="hint" role="status">
        {t(`drawings.picture.${kind}.how`, { set: places.length, count: needed[kind] })}
      </p>
      <div className="picture-frame">
        <div
          ref={frame}
          className="picture-sheet"
          style={{ inlineSize: `${100 * zoom}%`, aspectRatio: `${picture.width} / ${picture.height}` }}
          onPointerDown={pressed}
          onPointerMove={moved}
          onPointerUp={() => {
            held.current = undefined;
          }}
          onPointerCancel={() => {
            // The finger went on to scroll: it did not mean to set a place.
            const { index, fresh } = held.current ?? { index: -1, fresh: "known" };
            if (fresh === "fresh") setPlaces((known) => known.filter((_, i) => i !== index));
            held.current = undefined;
          }}
        >
          <img src={`data:${picture.type};base64,${picture.data}`} alt={picture.name} draggable={false} />
          <svg viewBox={`0 0 ${picture.width} ${picture.height}`} aria-hidden="true">
            <polyline
              points={[...places, ...(places.length === 4 ? [places[0] as Point] : [])]
                .map(([x, y]) => `${x},${y}`)
                .join(" ")}
              vectorEffect="non-scaling-stroke"
            />
          </svg>
          {places.map(([x, y], index) => (
            <span
              // Places are told apart by their order.
              // biome-ignore lint/suspicious/noArrayIndexKey: the order is what they are
              key={index}
              className="picture-place"
              style={{ insetInlineStart: `${x * size}%`, insetBlockStart: `${(y / picture.height) * 100}%` }}
            >
              {index + 1}
            </span>
          ))}
        </div>
      </div>
      <div className="row">
        {zooms.map((times) => (
          <Button key={times} className="button" aria-pressed={zoom === times} onPress={() => setZoom(times)}>
            {t("drawings.picture.zoom", { times })}
          </Button>
        ))}
        <Button className="button" isDisabled={places.length === 0} onPress={() => setPlaces([])}>
          {t("drawings.picture.again")}
        </Button>
      </div>
      <div className="fields">
        <LengthField
          label={t(kind === "straight" ? "drawings.picture.length" : "drawings.picture.first-side")}
          value={length}
          onChange={setLength}
        />
        {kind === "slanted" ? (
          <LengthField label={t("drawings.picture.second-side")} value={width} onChange={setWidth} />
        ) : null}
      </div>
      {trouble === undefined ? null : (
        <p className="field-trouble" role="alert">
          {trouble}
        </p>
      )}
      <div className="row">
        <Button className="button button-first" isDisabled={!whole} onPress={take}>
          {word}
        </Button>
        <Button className="button button-quiet" onPress={onDrop}>
          {t("home.report.drop")}
        </Button>
      </div>
    </div>
  );
}

/** The rectangle on the plan that the four places are the corners of: the first side along the sheet, from its lower left. */
const rectangle = (first: Metres, second: Metres): [Point, Point, Point, Point] => [
  [0, second],
  [first, second],
  [first, 0],
  [0, 0],
];
