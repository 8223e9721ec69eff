import { orient2d } from "robust-predicates";
import type { Point } from "./shapes.ts";

/**
 * On which side of the line a → b a point lies; the sign is exact.
 *
 * @param a - Start of the line. [m] @param b - Another point of it. [m] @param p - The point. [m]
 * @returns Above 0: to the left; below 0: to the right; 0: exactly on it. The size is twice the triangle's area, rounded. [m²]
 * @source SHEWCHUK-1997
 * @example side((0, 0), (1, 0), (0, 1)) = 1
 */
export const side = (a: Point, b: Point, p: Point): number => -orient2d(a[0], a[1], b[0], b[1], p[0], p[1]);
