import Flatbush from "flatbush";
import type { Point } from "#engine";
import { type Box, boxOf } from "../region.ts";

/** Which of many rings have a place in their box, without asking each. */
export function boxIndex(rings: readonly (readonly Point[])[]): (at: Point) => readonly number[] {
  const search = boxSearch(rings.map(boxOf));
  return ([x, y]) => search([x, y, x, y]);
}

/** Which of many boxes touch a box. */
export function boxSearch(boxes: readonly Box[]): (box: Box) => readonly number[] {
  if (boxes.length === 0) return () => [];
  const index = new Flatbush(boxes.length);
  for (const [x1, y1, x2, y2] of boxes) index.add(x1, y1, x2, y2);
  index.finish();
  return ([x1, y1, x2, y2]) => index.search(x1, y1, x2, y2);
}

/** Boxes of lines given as x1 y1 x2 y2 each. */
export function boxesOfLines(lines: Float64Array): readonly Box[] {
  return Array.from({ length: lines.length / 4 }, (_, i): Box => {
    const [a, b, c, d] = [lines[4 * i]!, lines[4 * i + 1]!, lines[4 * i + 2]!, lines[4 * i + 3]!];
    return [Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d)];
  });
}

/** Whether a place lies in a box, its edge included. */
export const inBox = (box: Box, x: number, y: number): boolean =>
  x >= box[0] && x <= box[2] && y >= box[1] && y <= box[3];
