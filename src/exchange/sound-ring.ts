import { type Outline, type Point, selfCrossing } from "#engine";
import { pieceArea, ringArea, unionOf } from "./region.ts";
import { tidy } from "./tidy.ts";

/**
 * A ring on the grid of files, without repeated corners; where it crosses itself there, the largest part of what it goes round.
 *
 * Corners that lie closer to one another than the grid, and what a neck loses when it is simplified, make a ring cross itself
 * that did not before.
 *
 * @param ring - Corners of an outline or a hole. [m]
 * @returns Corners in the same direction. [m]
 */
export function soundRing(ring: Outline): Outline {
  const rounded = ring.map(([x, y]): Point => [tidy(x), tidy(y)]);
  const apart = rounded.filter(([x, y], i) => {
    const [p, q] = rounded[(i + rounded.length - 1) % rounded.length]!;
    return x !== p || y !== q;
  });
  if (apart.length < 3 || selfCrossing(apart) === undefined) return apart;
  const [largest] = unionOf([apart]).toSorted((a, b) => pieceArea(b) - pieceArea(a));
  if (!largest) return apart;
  const part = largest.outline.map(([x, y]): Point => [tidy(x), tidy(y)]);
  return ringArea(apart) < 0 ? part.toReversed() : part;
}
