import { ink } from "../drawing/ink.ts";
import { lengthOf } from "../drawing/lettering.ts";
import type { Millimetres, PaperPoint, TextMark } from "../drawing/mark.ts";

/** Where the figure of a dimension may stand, best first: along its line; where that is too short, across it to one side; beyond its end. */
export const figurePlaces = ["along", "across-left", "across-right", "beyond"] as const;
export type FigurePlace = (typeof figurePlaces)[number];

const size = 2.5;
const lift: Millimetres = 0.9;

/** The figure, read from below or from the right; undefined where it does not fit. */
export function figureMark(
  text: string,
  line: {
    readonly from: PaperPoint;
    readonly along: PaperPoint;
    readonly length: Millimetres;
    readonly where: FigurePlace;
    /** Part of the line, from its beginning, that a sign covers. */
    readonly free: Millimetres;
  },
): TextMark | undefined {
  const width = lengthOf(text, size);
  const room = line.length - line.free;
  const angle = upright((Math.atan2(-line.along[1], line.along[0]) * 180) / Math.PI);
  const at = (along: Millimetres): PaperPoint => [
    line.from[0] + line.along[0] * along,
    line.from[1] + line.along[1] * along,
  ];
  const mark = (point: PaperPoint, turn: number, anchor: TextMark["anchor"]): TextMark => ({
    kind: "text",
    at: point,
    text,
    size,
    anchor,
    weight: "regular",
    colour: ink,
    turn,
    halo: 0.6,
  });
  switch (line.where) {
    case "along":
      return room < width + 1
        ? undefined
        : mark(raised(at(line.free + room / 2), angle, lift), angle, "middle");
    case "beyond":
      return mark(raised(at(line.length + width / 2 + 2.2), angle, lift), angle, "middle");
    case "across-left":
    case "across-right": {
      if (room < size + 1) return undefined;
      const turn = upright(angle + 90);
      const side = line.where === "across-left" ? -1 : 1;
      const [x, y] = at(line.free + room / 2);
      const reading = (turn * Math.PI) / 180;
      const foot: PaperPoint = [x + side * 1.2 * Math.cos(reading), y - side * 1.2 * Math.sin(reading)];
      return mark(raised(foot, turn, -size / 2), turn, side > 0 ? "start" : "end");
    }
  }
}

/** A direction of lettering that is read from below or from the right: above −90° and at most 90°. */
function upright(angle: number): number {
  const turned = ((((angle + 180) % 360) + 360) % 360) - 180;
  if (turned > 90.5) return turned - 180;
  return turned <= -89.5 ? turned + 180 : turned;
}

/** Moved towards the top of the letters. */
function raised([x, y]: PaperPoint, angle: number, by: Millimetres): PaperPoint {
  const up = ((angle + 90) * Math.PI) / 180;
  return [x + Math.cos(up) * by, y - Math.sin(up) * by];
}
