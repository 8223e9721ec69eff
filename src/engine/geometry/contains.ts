import { orient2d } from "robust-predicates";
import type { Outline, Point, Region } from "./shapes.ts";

/** Where a point lies with respect to a ring or region. */
export type Place = "inside" | "edge" | "outside";

/**
 * Where a point lies with respect to a ring; the sign that decides is exact.
 *
 * @param outline - Closed ring, either way round. [m] @param point - The point. [m]
 * @returns "edge" exactly on the ring.
 * @source SHEWCHUK-1997, orientation by adaptive exact arithmetic
 * @example (0.5, 0.5) in the unit square: inside
 */
export function placeInOutline(outline: Outline, point: Point): Place {
  const [x, y] = point;
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const a = outline[j] as Point;
    const b = outline[i] as Point;
    if (y < Math.min(a[1], b[1]) || y > Math.max(a[1], b[1])) continue;
    if (a[1] === b[1]) {
      if (x >= Math.min(a[0], b[0]) && x <= Math.max(a[0], b[0])) return "edge";
      continue;
    }
    const side = orient2d(a[0], a[1], b[0], b[1], x, y);
    if (side === 0) return "edge";
    // orient2d is negative for counter-clockwise triples.
    const [low, high] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
    if (y >= low && y < high && side < 0 === b[1] > a[1]) inside = !inside;
  }
  return inside ? "inside" : "outside";
}

/** Where a point lies with respect to a region. @returns "edge" exactly on a ring. @example In a hole: outside */
export function placeInRegion(region: Region, point: Point): Place {
  for (const piece of region) {
    const outer = placeInOutline(piece.outline, point);
    if (outer === "edge") return "edge";
    if (outer === "outside") continue;
    let place: Place = "inside";
    for (const hole of piece.holes) {
      const inner = placeInOutline(hole, point);
      if (inner === "edge") return "edge";
      if (inner === "inside") place = "outside";
    }
    if (place === "inside") return "inside";
  }
  return "outside";
}

/** Whether a point lies in a region or on its edge. @example A corner of the unit square: true */
export const contains = (region: Region, point: Point): boolean => placeInRegion(region, point) !== "outside";

/** Whether a point lies in a ring or on it. @example (2, 2) and the unit square: false */
export const outlineContains = (outline: Outline, point: Point): boolean =>
  placeInOutline(outline, point) !== "outside";
