import { orient2d } from "robust-predicates";
import type { Outline, Point } from "./shapes.ts";

/**
 * Convex hull of points: the ring that a rubber band round them would take.
 *
 * @param points - Any points. [m]
 * @returns Counter-clockwise ring without corners on its edges; fewer than three corners where all lie in one line.
 * @source ANDREW-1979, monotone chain
 * @example The corners of an L: five corners
 */
export function convexHull(points: readonly Point[]): Outline {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length >= 2 && !turnsLeft(chain.at(-2) as Point, chain.at(-1) as Point, p)) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

const turnsLeft = (a: Point, b: Point, c: Point): boolean => orient2d(a[0], a[1], b[0], b[1], c[0], c[1]) < 0;
