import type { Metres, SquareMetres } from "../quantity/index.ts";
import type { Outline, Point, Region } from "./shapes.ts";

/** Smallest upright rectangle round something. */
export interface Bounds {
  readonly minX: Metres;
  readonly minY: Metres;
  readonly maxX: Metres;
  readonly maxY: Metres;
}

/**
 * Signed area of a ring: positive when it runs counter-clockwise.
 *
 * A = ½ Σ (xᵢ − x₀)(yᵢ₊₁ − y₀) − (xᵢ₊₁ − x₀)(yᵢ − y₀), measured from the first corner so that a far origin costs no digits.
 *
 * @param outline - Closed ring. [m]
 * @returns Signed area. [m²] 0 for fewer than three corners.
 * @example The unit square counter-clockwise: 1
 */
export function signedArea(outline: Outline): SquareMetres {
  const first = outline[0];
  if (!first) return 0;
  let sum = 0;
  for (let i = 1; i + 1 < outline.length; i++) {
    const b = outline[i] as Point;
    const c = outline[i + 1] as Point;
    sum += (b[0] - first[0]) * (c[1] - first[1]) - (c[0] - first[0]) * (b[1] - first[1]);
  }
  return sum / 2;
}

/** Area of a region. @param region - Any region. @returns [m²] @example A unit square with a hole of 0.25 m²: 0.75 */
export function areaOf(region: Region): SquareMetres {
  let sum = 0;
  for (const piece of region) {
    sum += Math.abs(signedArea(piece.outline));
    for (const hole of piece.holes) sum -= Math.abs(signedArea(hole));
  }
  return sum;
}

/**
 * Centre of area of a region.
 *
 * @param region - Any region with area. [m]
 * @returns Its centroid [m]; undefined where there is no area.
 * @example The unit square: (0.5, 0.5)
 */
export function centroidOf(region: Region): Point | undefined {
  const origin = region[0]?.outline[0];
  if (!origin) return undefined;
  let area = 0;
  let x = 0;
  let y = 0;
  for (const piece of region) {
    for (const [index, ring] of [piece.outline, ...piece.holes].entries()) {
      const sign = Math.sign(signedArea(ring)) * (index === 0 ? 1 : -1);
      for (let i = 0; i < ring.length; i++) {
        const p = ring[i] as Point;
        const q = ring[(i + 1) % ring.length] as Point;
        const [px, py, qx, qy] = [p[0] - origin[0], p[1] - origin[1], q[0] - origin[0], q[1] - origin[1]];
        const cross = sign * (px * qy - qx * py);
        area += cross;
        x += cross * (px + qx);
        y += cross * (py + qy);
      }
    }
  }
  return area === 0 ? undefined : [origin[0] + x / (3 * area), origin[1] + y / (3 * area)];
}

/** Smallest upright rectangle round rings. @param rings - At least one corner. @returns [m] @example The unit square: 0, 0, 1, 1 */
export function boundsOf(rings: readonly Outline[]): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings) {
    for (const [x, y] of ring) {
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  return { minX, minY, maxX, maxY };
}

/** All rings of a region, outer ones and holes. @example A square with a hole: two rings */
export const ringsOf = (region: Region): readonly Outline[] =>
  region.flatMap((piece) => [piece.outline, ...piece.holes]);

/** Distance between two points. @returns [m] @example (0, 0) and (3, 4): 5 */
export const distanceBetween = (a: Point, b: Point): Metres => Math.hypot(a[0] - b[0], a[1] - b[1]);

/**
 * Distance from a point to the segment between two others.
 *
 * @param point - The point. [m] @param segment - Ends of the segment. [m]
 * @returns Shortest distance. [m]
 * @example (0, 1) to the segment (−1, 0) … (1, 0): 1
 */
export function distanceToSegment(point: Point, segment: readonly [Point, Point]): Metres {
  const [a, b] = segment;
  const t = shareAlong(point, a, b);
  return Math.hypot(point[0] - a[0] - t * (b[0] - a[0]), point[1] - a[1] - t * (b[1] - a[1]));
}

/**
 * The place of a segment nearest to a point.
 *
 * @param point - The point. [m] @param segment - Ends of the segment; the same point twice for a single place. [m]
 * @returns An end, or the foot of the perpendicular. [m]
 * @example (0, 1) to the segment (−1, 0) … (1, 0): (0, 0)
 */
export function nearestOnSegment(point: Point, segment: readonly [Point, Point]): Point {
  const [a, b] = segment;
  const t = shareAlong(point, a, b);
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

/** The place of the edges of rings nearest to a point. @returns [m]; undefined without edges. @example 1 m outside a square: on its edge */
export function nearestOnRings(point: Point, rings: readonly Outline[]): Point | undefined {
  let nearest: readonly [Point, Point] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const ring of rings) {
    for (const [i, a] of ring.entries()) {
      const edge = [a, ring[(i + 1) % ring.length] as Point] as const;
      const distance = distanceToSegment(point, edge);
      if (distance < least) [least, nearest] = [distance, edge];
    }
  }
  return nearest && nearestOnSegment(point, nearest);
}

/** Where between two ends a point is nearest, 0 at the first, 1 at the second. */
function shareAlong(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  return square === 0
    ? 0
    : Math.min(1, Math.max(0, ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / square));
}

/** Distance from a point to the nearest edge of rings. @returns [m]; ∞ without edges. @example Centre of the unit square: 0.5 */
export function distanceToRings(point: Point, rings: readonly Outline[]): Metres {
  let least = Infinity;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i] as Point;
      const b = ring[(i + 1) % ring.length] as Point;
      least = Math.min(least, distanceToSegment(point, [a, b]));
    }
  }
  return least;
}
