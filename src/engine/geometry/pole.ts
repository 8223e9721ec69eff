import type { Metres } from "../quantity/index.ts";
import { contains } from "./contains.ts";
import { areaOf, boundsOf, distanceToRings, ringsOf } from "./measure.ts";
import type { Outline, Piece, Point } from "./shapes.ts";

/**
 * The point of a piece that lies farthest from its edge (pole of inaccessibility), to within a precision.
 *
 * Square cells are halved as long as the best distance in them, d(centre) + half diagonal, may still beat the best found. What is found
 * first are the middles of chords across the piece: of a sliver kilometres long, which would have cells without end, one of those is
 * taken when so many places were looked at.
 *
 * @param piece - The piece. [m] @param precision - How much farther another point may at most be, except in such a sliver. [m]
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
  let looks = 0;
  let cells: { readonly at: Point; readonly half: Metres; readonly reach: Metres }[] = [];
  const look = (at: Point, half: Metres): void => {
    const distance = depth(at);
    looks++;
    if (distance > best.distance) best = { at, distance };
    if (half > 0) cells.push({ at, half, reach: distance + half * Math.SQRT2 });
  };
  for (const at of middlesOfChords(rings, maxX - minX >= maxY - minY ? 0 : 1)) look(at, 0);
  for (let x = minX; x < maxX; x += size) {
    for (let y = minY; y < maxY; y += size) look([x + size / 2, y + size / 2], size / 2);
  }
  while (cells.length > 0) {
    const promising = cells.filter((cell) => cell.reach > best.distance + precision);
    if (looks + 4 * promising.length > MOST_LOOKS) break;
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

/** Places that are looked at, at most: rooms and corridors need some thousands. */
const MOST_LOOKS = 20_000;

/** Chords across a piece. */
const CHORDS = 9;

/** The middle of the longest stretch inside on each of some lines across the longer axis. */
function middlesOfChords(rings: readonly Outline[], axis: 0 | 1): readonly Point[] {
  const other = axis === 0 ? 1 : 0;
  const corners = rings.flat();
  const [low, high] = [Math.min, Math.max].map((end) =>
    corners.reduce((value, corner) => end(value, corner[axis]), corners[0]![axis]),
  ) as [Metres, Metres];
  return Array.from({ length: CHORDS }, (_, k) => {
    const at = low + ((k + 0.5) * (high - low)) / CHORDS;
    const cuts = rings
      .flatMap((ring) =>
        ring.flatMap((a, i) => {
          const b = ring[(i + 1) % ring.length]!;
          if (a[axis] > at === b[axis] > at) return [];
          return [a[other] + ((at - a[axis]) / (b[axis] - a[axis])) * (b[other] - a[other])];
        }),
      )
      .sort((p, q) => p - q);
    let [longest, middle] = [-1, 0];
    for (let i = 0; i + 1 < cuts.length; i += 2)
      if (cuts[i + 1]! - cuts[i]! > longest)
        [longest, middle] = [cuts[i + 1]! - cuts[i]!, (cuts[i]! + cuts[i + 1]!) / 2];
    return longest < 0 ? [] : [axis === 0 ? ([at, middle] as const) : ([middle, at] as const)];
  }).flat();
}
