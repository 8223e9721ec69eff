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

/** Lines of which those that have a box that touches a box are found: built once, asked by all that look at the same lines. */
export type LineSearch = (box: Box) => readonly number[];

/** Which of many lines, given as x1 y1 x2 y2 each, have a box that touches a box. */
export function lineSearch(lines: Float64Array): LineSearch {
  const count = lines.length / 4;
  if (count === 0) return () => [];
  const index = new Flatbush(count);
  for (let i = 0; i < lines.length; i += 4) {
    const x1 = lines[i]!;
    const y1 = lines[i + 1]!;
    const x2 = lines[i + 2]!;
    const y2 = lines[i + 3]!;
    index.add(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
  }
  index.finish();
  return ([x1, y1, x2, y2]) => index.search(x1, y1, x2, y2);
}

/** As lineSearch, for the lines of these numbers alone. */
export function someLines(lines: Float64Array, numbers: readonly number[]): LineSearch {
  if (numbers.length === 0) return () => [];
  const index = new Flatbush(numbers.length);
  for (const i of numbers) {
    const x1 = lines[4 * i]!;
    const y1 = lines[4 * i + 1]!;
    const x2 = lines[4 * i + 2]!;
    const y2 = lines[4 * i + 3]!;
    index.add(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
  }
  index.finish();
  return ([x1, y1, x2, y2]) => index.search(x1, y1, x2, y2).map((k) => numbers[k]!);
}

/** Whether a place lies in a box, its edge included. */
export const inBox = (box: Box, x: number, y: number): boolean =>
  x >= box[0] && x <= box[2] && y >= box[1] && y <= box[3];
