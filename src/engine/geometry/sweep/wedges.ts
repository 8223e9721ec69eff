import type { Metres } from "../../quantity/index.ts";
import type { Point } from "../shapes.ts";
import { directionKey, indexOf } from "./direction-key.ts";

/** Lines of a sweep by number: the points p with p × (dx, dy) = c, and how each edge acts. */
export interface SweepLines {
  readonly keys: Float64Array;
  readonly ux: Float64Array;
  readonly uy: Float64Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly startR: Float64Array;
  readonly endR: Float64Array;
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  readonly c: Float64Array;
  readonly effect: Int8Array;
}

/** What is seen round an eye: wedges counter-clockwise, each with intervals of distance between two lines. */
export interface Wedges {
  readonly eye: Point;
  readonly lines: SweepLines;
  /** Direction in which each wedge begins, rising; the last may reach past a whole turn. */
  readonly keys: Float64Array;
  /** First interval of each wedge; one more entry at the end. */
  readonly first: Int32Array;
  /** Line at which each interval begins (-1: at the eye) and ends. */
  readonly near: readonly number[];
  readonly far: readonly number[];
  /** Four distances an interval: near and far at the wedge's first ray, near and far at its last. [m] */
  readonly r: readonly number[];
}

/**
 * Whether a point lies in what an eye sees, edges included.
 *
 * @param wedges - Result of a sweep. @param x - [m] @param y - [m]
 * @returns By halving the list of directions: O(log n).
 * @source DERIVED-HERE
 * @example The eye of an open zone itself: true
 */
export function wedgesHave(wedges: Wedges, x: Metres, y: Metres): boolean {
  const { keys, first, near, far, lines } = wedges;
  const count = keys.length;
  if (count === 0) return false;
  const px = x - wedges.eye[0];
  const py = y - wedges.eye[1];
  let key = directionKey(px, py);
  if (key < (keys[0] as number)) key += 4;
  const wedge = indexOf(keys, key);
  const until = first[wedge + 1] as number;
  for (let i = first[wedge] as number; i < until; i++) {
    const a = near[i] as number;
    const b = far[i] as number;
    if (a >= 0 && px * (lines.dy[a] as number) - py * (lines.dx[a] as number) < (lines.c[a] as number))
      continue;
    if (px * (lines.dy[b] as number) - py * (lines.dx[b] as number) <= (lines.c[b] as number)) return true;
  }
  return false;
}
