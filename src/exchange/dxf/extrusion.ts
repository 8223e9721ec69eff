import { identity, type Matrix } from "../plan/page/matrix.ts";

type Vector = readonly [number, number, number];

/**
 * Seen from above: the matrix from the plane that an entity is drawn on to the plan, for the direction that it is drawn
 * against. Straight up changes nothing; straight down mirrors x.
 *
 * The plane's x axis is the cross product of the world's y axis with the direction where the direction is nearly vertical,
 * otherwise of the world's z axis ("arbitrary axis algorithm" of the format).
 *
 * @param direction - Normal of the plane; need not have length 1. @param elevation - Height above the plane through the origin.
 * @source FROM-MEMORY
 */
export function planeOf(direction: Vector, elevation: number): Matrix {
  const length = Math.hypot(...direction);
  if (!(length > 0) || (direction[0] === 0 && direction[1] === 0 && direction[2] > 0)) return identity;
  const n: Vector = [direction[0] / length, direction[1] / length, direction[2] / length];
  const nearlyVertical = Math.abs(n[0]) < 1 / 64 && Math.abs(n[1]) < 1 / 64;
  const x = unit(cross(nearlyVertical ? [0, 1, 0] : [0, 0, 1], n));
  const y = unit(cross(n, x));
  return [x[0], x[1], y[0], y[1], n[0] * elevation + 0, n[1] * elevation + 0];
}

/** Cross product. */
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const unit = (v: Vector): Vector => {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
};
