import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import type { Metres, Point } from "#engine";
import { twoPointMap } from "#exchange";
import type { ModelRead } from "../contract.ts";
import { LengthField } from "../fields/index.ts";
import { strokeLines } from "../plan/paint/lines.ts";
import { PlacesFrame } from "../survey/drawings/places-frame.tsx";
import { t } from "../texts/index.ts";
import { remedyOf, sentenceOf } from "../texts/problems.ts";

interface ScaleFromLengthProps {
  readonly drawing: ModelRead["drawings"][number];
  /** How many times larger the drawing is than it was read. */
  readonly onTimes: (times: number) => void;
}

interface LinesPicture {
  readonly source: string;
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly perMetre: number;
}

/** Longest side of the picture of a drawing: enough to meet a corner when it is shown four times as large. [px] */
const longest = 2000;
const margin = 12;

/** Two places of a drawing and the length between them tell its scale where the file does not. */
export function ScaleFromLength({ drawing, onTimes }: ScaleFromLengthProps) {
  const [picture, setPicture] = useState<LinesPicture | undefined>();
  const [places, setPlaces] = useState<readonly Point[]>([]);
  const [length, setLength] = useState<Metres | undefined>();
  const [trouble, setTrouble] = useState<string | undefined>();
  useEffect(() => {
    const stop = new AbortController();
    let source: string | undefined;
    void linesPicture(drawing, stop.signal).then((made) => {
      source = made?.source;
      if (stop.signal.aborted) URL.revokeObjectURL(source ?? "");
      else setPicture(made);
    });
    return () => {
      stop.abort();
      if (source !== undefined) URL.revokeObjectURL(source);
    };
  }, [drawing]);
  if (!picture) return null;
  const read = (): void => {
    const answer = twoPointMap(places as [Point, Point], { length: length ?? 0, height: picture.height });
    if ("map" in answer) onTimes(answer.metres * picture.perMetre);
    else setTrouble(`${sentenceOf(answer)} ${remedyOf(answer)}`);
  };
  return (
    <div className="stack">
      <p className="hint" role="status">
        {t("drawings.picture.straight.how", { set: places.length, count: 2 })}
      </p>
      <PlacesFrame
        picture={picture}
        places={places}
        needed={2}
        onPlaces={(next) => {
          setPlaces(next);
          setTrouble(undefined);
        }}
      />
      <LengthField label={t("drawings.picture.length")} value={length} onChange={setLength} />
      {trouble === undefined ? null : (
        <p className="field-trouble" role="alert">
          {trouble}
        </p>
      )}
      <Button className="button" isDisabled={places.length < 2 || !((length ?? 0) > 0)} onPress={read}>
        {t("home.plan.measured.read")}
      </Button>
    </div>
  );
}

/** A picture of lines, made a slice at a time so that the hand never waits; undefined where there is nothing to show. */
async function linesPicture(
  { lines, name }: ScaleFromLengthProps["drawing"],
  signal: AbortSignal,
): Promise<LinesPicture | undefined> {
  const [least, most] = [
    [Infinity, Infinity],
    [-Infinity, -Infinity],
  ] as [[number, number], [number, number]];
  lines.forEach((value, i) => {
    const axis = (i % 2) as 0 | 1;
    if (value < least[axis]) least[axis] = value;
    if (value > most[axis]) most[axis] = value;
  });
  const size = Math.max(most[0] - least[0], most[1] - least[1]);
  if (!(size > 0) || !Number.isFinite(size)) return undefined;
  const perMetre = (longest - 2 * margin) / size;
  const [width, height] = [0, 1].map((axis) =>
    Math.ceil((most[axis as 0 | 1] - least[axis as 0 | 1]) * perMetre + 2 * margin),
  ) as [number, number];
  const canvas = new OffscreenCanvas(width, height);
  const brush = canvas.getContext("2d");
  if (!brush) return undefined;
  brush.fillStyle = "#fff";
  brush.fillRect(0, 0, width, height);
  brush.strokeStyle = "#1e2430";
  brush.lineWidth = 2;
  const place = {
    scale: perMetre,
    x: margin - least[0] * perMetre,
    y: margin + most[1] * perMetre,
    width,
    height,
  };
  for (const _ of strokeLines(brush as unknown as CanvasRenderingContext2D, [lines], place)) {
    await new Promise((done) => setTimeout(done));
    if (signal.aborted) return undefined;
  }
  return { source: URL.createObjectURL(await canvas.convertToBlob()), name, width, height, perMetre };
}
