import { boxOfPoints, type Clip } from "./clip.ts";
import type { Collector, Pen } from "./collect.ts";
import type { Stroke } from "./flatten.ts";

/** Strokes with the pens that they are drawn with. */
export interface Drawn {
  readonly strokes: readonly Stroke[];
  readonly clip: Clip;
  readonly line: Pen | undefined;
  readonly fill: Pen | undefined;
  /** Size of the sheet, whose lower left corner is the origin. [drawing units] */
  readonly sheet: readonly [number, number];
}

/**
 * Collects what a path shows: its line, or where it has none the edge of its fill. A fill is closed, whether the path is or
 * not; a fill over the whole sheet is the background and no line.
 */
export function drawStrokes(collector: Collector, { strokes, clip, line, fill, sheet }: Drawn): void {
  const pen = line ?? fill;
  if (!pen || strokes.length === 0) return;
  const layer = collector.layerOf(pen);
  for (const stroke of strokes) {
    if (!line && coversSheet(stroke.points, sheet)) continue;
    // A single line has no inside that a fill could close.
    collector.stroke(fill && stroke.points.length > 4 ? closed(stroke) : stroke, { clip, layer });
  }
}

/** The stroke with a line back to its beginning. */
const closed = (stroke: Stroke): Stroke => {
  const { points } = stroke;
  return points[0] === points.at(-2) && points[1] === points.at(-1)
    ? stroke
    : { ...stroke, closed: true, points: [...points, points[0]!, points[1]!] };
};

/** Whether an outline is a box over the whole sheet. [0.2 % of the sheet is left for rounding] */
const coversSheet = (points: readonly number[], [width, height]: readonly [number, number]): boolean => {
  if (points.length > 10) return false;
  const [dx, dy] = [width * 0.002, height * 0.002];
  const [x0, y0, x1, y1] = boxOfPoints(points);
  if (x0 > dx || y0 > dy || x1 < width - dx || y1 < height - dy) return false;
  return points.every((value, i) =>
    i % 2 === 0 ? value - x0 <= dx || x1 - value <= dx : value - y0 <= dy || y1 - value <= dy,
  );
};
