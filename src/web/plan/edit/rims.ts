import type { Metres, Outline, Piece, Point, Region } from "#engine";
import { oriented } from "#engine";
import { distance, insideRing, rimDistance } from "../shapes.ts";

/** Booleans round to the grain; corners this near to a drawn one are that one. [m] */
const grain: Metres = 4e-5;

/** Pieces with corners as they were drawn, wherever a corner is one of these rings' own. Outer rings counter-clockwise, holes clockwise. */
export function asDrawn(region: Region, rings: readonly Outline[]): Region {
  const drawn = rings.flat();
  const own = (ring: Outline): Outline => {
    const which = ring.map((corner) => drawn.findIndex((point) => distance(point, corner) < grain));
    const corners = ring.map((corner, i) => drawn[which[i] as number] ?? corner);
    // A ring begins at the corner that was drawn first: one that did not change comes back as it was.
    const start = leastOf(which.map((index) => (index < 0 ? Infinity : index)));
    return [...corners.slice(start), ...corners.slice(0, start)];
  };
  return oriented(region).map((piece) => ({ outline: own(piece.outline), holes: piece.holes.map(own) }));
}

/** Distance to the floor of a piece: 0 inside. [m] */
export function toPiece({ outline, holes }: Piece, at: Point): Metres {
  const inHole = holes.find((hole) => insideRing(hole, at));
  if (inHole) return rimDistance(inHole, at);
  return insideRing(outline, at) ? 0 : rimDistance(outline, at);
}

/** Distance to the rim of a piece, from either side. [m] */
export const toRim = ({ outline, holes }: Piece, at: Point): Metres =>
  Math.min(...[outline, ...holes].map((ring) => rimDistance(ring, at)));

/** Index of the least of some figures. */
export const leastOf = (figures: readonly number[]): number =>
  figures.reduce((best, figure, i) => (figure < (figures[best] as number) ? i : best), 0);
