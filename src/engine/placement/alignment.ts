import { boundsOf, type Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Room } from "../site/index.ts";
import { intoFrame, longestWall } from "./candidates.ts";

/** Places on one line to the eye. [m] */
const IN_LINE: Metres = 0.01;

/**
 * How well devices hang in line: share of their coordinates, along and across the longest wall, that another device shares or that lie on a middle line of the room.
 *
 * @param room - The room. @param places - Where its devices hang. [m]
 * @returns 0 … 1; 1 without devices.
 * @source COMMON-PRACTICE
 * @example One device in the middle of a rectangle: 1; halfway along it, but nearer to one side: 0.5
 */
export function alignmentOf(room: Room, places: readonly Point[]): number {
  if (places.length === 0) return 1;
  const frame = longestWall(room);
  const inFrame = places.map((at) => intoFrame(at, frame));
  const middle = middleLines(room);
  let shared = 0;
  for (const axis of [0, 1] as const) {
    const values = inFrame.map((place) => place[axis]).sort((a, b) => a - b);
    const near = (a: number, b: number | undefined): boolean => b !== undefined && Math.abs(a - b) < IN_LINE;
    values.forEach((value, i) => {
      if (near(value, middle[axis]) || near(value, values[i - 1]) || near(value, values[i + 1])) shared++;
    });
  }
  return shared / (2 * places.length);
}

/** Middle of the room along and across its longest wall, in that wall's frame. @param room - The room. @returns Two coordinates. [m] @example A rectangle 6 × 4 m: 3 and 2 */
export function middleLines(room: Room): Point {
  const frame = longestWall(room);
  const { minX, minY, maxX, maxY } = boundsOf([room.outline.map((at) => intoFrame(at, frame))]);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}
