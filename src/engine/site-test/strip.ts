import { distanceBetween, type Point, type Region, regionOf } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";

/**
 * A thin strip along a straight line: a line as a region.
 *
 * @param line - Its ends. [m] @param half - Half its width. [m]
 * @returns A rectangle; empty where both ends are one. [m]
 * @example From (0, 0) to (1, 0), half 0.1: y from −0.1 to 0.1
 */
export function stripAlong(line: readonly [Point, Point], half: Metres): Region {
  const [a, b] = line;
  const length = distanceBetween(a, b);
  if (length === 0) return [];
  const [nx, ny] = [(-(b[1] - a[1]) / length) * half, ((b[0] - a[0]) / length) * half];
  return regionOf([
    [a[0] - nx, a[1] - ny],
    [b[0] - nx, b[1] - ny],
    [b[0] + nx, b[1] + ny],
    [a[0] + nx, a[1] + ny],
  ]);
}
