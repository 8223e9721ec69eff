import type { Metres, Outline, Point } from "#engine";
import { millimetre } from "./plan-map.ts";

/** A part of one edge of a ring, counted from the edge's start. */
export interface Stretch {
  readonly edge: number;
  readonly from: Metres;
  readonly to: Metres;
}

/** Edges that differ by less than this in direction run on in one line (sine of half a degree). */
const straight = 0.0087;

/** Corners nearer than this are one. [m] */
const oneCorner: Metres = 5e-4;

/**
 * A ring some stretches of which were moved by a vector. A whole edge takes its neighbours along; where only a part moves, or
 * the neighbour runs on in the same line, new corners join the moved part to what stays. At most one stretch for an edge.
 */
export function withMoved(ring: Outline, stretches: readonly Stretch[], by: Point): Outline {
  const of = new Map(stretches.map((stretch) => [stretch.edge, stretch]));
  const moved = ([x, y]: Point): Point => [millimetre(x + by[0]), millimetre(y + by[1])];
  const next: Point[] = [];
  ring.forEach((corner, i) => {
    const before = (i - 1 + ring.length) % ring.length;
    const [edge, last] = [edgeOf(ring, i), edgeOf(ring, before)];
    const ends = endsAt(of.get(before), last.length);
    const own = of.get(i);
    const starts = own !== undefined && own.from <= oneCorner;
    const runsOn = Math.abs(last.way[0] * edge.way[1] - last.way[1] * edge.way[0]) < straight;
    if (ends || starts) {
      if (starts && !ends && runsOn) next.push(corner);
      next.push(moved(corner));
      if (ends && !starts && runsOn) next.push(corner);
    } else next.push(corner);
    if (!own) return;
    const at = (along: Metres): Point => [
      millimetre(corner[0] + edge.way[0] * along),
      millimetre(corner[1] + edge.way[1] * along),
    ];
    if (own.from > oneCorner) next.push(at(own.from), moved(at(own.from)));
    if (!endsAt(own, edge.length)) next.push(moved(at(own.to)), at(own.to));
  });
  return next.filter((point, i) => {
    const last = next[(i - 1 + next.length) % next.length] as Point;
    return Math.hypot(point[0] - last[0], point[1] - last[1]) > oneCorner;
  });
}

const endsAt = (stretch: Stretch | undefined, length: Metres): boolean =>
  stretch !== undefined && stretch.to >= length - oneCorner;

export function edgeOf(ring: Outline, index: number): { readonly length: Metres; readonly way: Point } {
  const a = ring[index] as Point;
  const b = ring[(index + 1) % ring.length] as Point;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return { length, way: length === 0 ? [0, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length] };
}
