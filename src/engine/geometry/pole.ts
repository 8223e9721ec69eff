import type { Metres } from "../quantity/index.ts";
import { contains } from "./contains.ts";
import { areaOf, boundsOf, distanceToRings, ringsOf } from "./measure.ts";
import type { Piece, Point } from "./shapes.ts";

/**
 * The point of a piece that lies farthest from its edge (pole of inaccessibility), to within a precision.
 *
 * Square cells are halved as long as the best distance in them, d(centre) + half diagonal, may still beat the best found.
 *
 * @param piece - The piece. [m] @param precision - How much farther another point may at most be. [m]
 * @returns The point and its distance from the edge. [m]
 * @source GARCIA-2007, pole of inaccessibility by a search over a grid
 * @example A rectangle 4 × 2 m: its distance is 1 m
 */
export function poleOf(
  piece: Piece,
  precision: Metres = 0.01,
): { readonly at: Point; readonly distance: Metres } {
  const rings = ringsOf([piece]);
  const depth = (at: Point): Metres => distanceToRings(at, rings) * (contains([piece], at) ? 1 : -1);
  const { minX, minY, maxX, maxY } = boundsOf(rings);
  const size = Math.max(Math.min(maxX - minX, maxY - minY), Math.max(maxX - minX, maxY - minY) / 64);
  let best = { at: [(minX + maxX) / 2, (minY + maxY) / 2] as Point, distance: -Infinity };
  if (!(size > 0) || areaOf([piece]) === 0) return { at: best.at, distance: 0 };
  let cells: { readonly at: Point; readonly half: Metres; readonly reach: Metres }[] = [];
  const look = (at: Point, half: Metres): void => {
    const distance = depth(at);
    if (distance > best.distance) best = { at, distance };
    cells.push({ at, half, reach: distance + half * Math.SQRT2 });
  };
  for (let x = minX; x < maxX; x += size) {
    for (let y = minY; y < maxY; y += size) look([x + size / 2, y + size / 2], size / 2);
  }
  while (cells.length > 0) {
    const promising = cells.filter((cell) => cell.reach > best.distance + precision);
    cells = [];
    for (const { at, half } of promising) {
      const quarter = half / 2;
      for (const [dx, dy] of [
        [-1, -1],
        [1, -1],
        [-1, 1],
        [1, 1],
      ] as const)
        look([at[0] + dx * quarter, at[1] + dy * quarter], quarter);
    }
  }
  return best;
}
