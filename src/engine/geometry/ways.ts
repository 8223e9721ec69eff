import type { Metres } from "../quantity/index.ts";
import { contains } from "./contains.ts";
import { distanceToRings, distanceToSegment, ringsOf } from "./measure.ts";
import type { Point, Region } from "./shapes.ts";
import { side } from "./side.ts";
import { type SightGrid, sightGrid, WAY_SKIN } from "./way-sight.ts";

/** A region prepared for finding shortest ways in it. */
export interface Ways {
  readonly region: Region;
  /** Corners of every ring, with the corners before and after them. */
  readonly corners: readonly WayCorner[];
  /** Corners round which a shortest way can bend: those where the region's inner angle is above π. */
  readonly bends: readonly WayCorner[];
  readonly sight: SightGrid;
}

export interface WayCorner {
  readonly at: Point;
  readonly before: Point;
  readonly after: Point;
}

/** A shortest way: straight pieces from the start to the goal. */
export interface Way {
  readonly path: readonly Point[];
  readonly length: Metres;
}

/** All shortest ways from one start. */
export interface WaysFrom {
  readonly ways: Ways;
  readonly start: Point;
  /** For each bend the length of the way to it; infinite where none leads. [m] */
  readonly lengths: Float64Array;
  /** For each bend the bend before it; -1: straight from the start. */
  readonly previous: Int32Array;
}

/**
 * Prepares a region for shortest ways: its bends, and a grid that answers whether two places see each other inside it.
 *
 * @param region - Where one may walk; its edge belongs to it. [m]
 * @returns The prepared region, to be passed to `waysFrom`.
 * @example A square room has no bend; an L-shaped one has one
 */
export function prepareWays(region: Region): Ways {
  const corners = region.flatMap((piece) =>
    [piece.outline, ...piece.holes].flatMap((ring) =>
      ring.map((at, i) => ({
        at,
        before: ring[(i + ring.length - 1) % ring.length] as Point,
        after: ring[(i + 1) % ring.length] as Point,
      })),
    ),
  );
  const bends = corners.filter((corner) => side(corner.before, corner.at, corner.after) < 0);
  return { region, corners, bends, sight: sightGrid(region) };
}

/**
 * All shortest ways from a start inside a region, by Dijkstra's search over the taut edges of its visibility graph.
 *
 * A way can only bend round a corner that bulges into the region, and only so that it hugs that corner; every other edge is left out before its sight is tested.
 *
 * @param ways - The prepared region. @param start - Where the ways begin, in the region or within its skin. [m]
 * @returns Lengths and predecessors for `wayTo`; infinite where the region is not connected.
 * @source DIJKSTRA-1959, LOZANO-PEREZ-WESLEY-1979
 * @example In an L of two 1 m wide arms the way from end to end bends once, at the inner corner
 */
export function waysFrom(ways: Ways, start: Point): WaysFrom {
  const { bends, sight } = ways;
  const lengths = new Float64Array(bends.length).fill(Number.POSITIVE_INFINITY);
  const previous = new Int32Array(bends.length).fill(-1);
  const open = bends.map((_, index) => index);
  const relax = (from: Point, base: Metres, parent: number): void => {
    for (const index of open) {
      const bend = bends[index] as WayCorner;
      const length = base + Math.hypot(bend.at[0] - from[0], bend.at[1] - from[1]);
      if (length >= (lengths[index] as number) || !isTaut(bend, from)) continue;
      if (parent >= 0 && !isTaut(bends[parent] as WayCorner, bend.at)) continue;
      if (!sight.clear(from, bend.at)) continue;
      lengths[index] = length;
      previous[index] = parent;
    }
  };
  relax(start, 0, -1);
  while (open.length > 0) {
    let best = 0;
    for (let i = 1; i < open.length; i++) {
      if ((lengths[open[i] as number] as number) < (lengths[open[best] as number] as number)) best = i;
    }
    const settled = open[best] as number;
    if (lengths[settled] === Number.POSITIVE_INFINITY) break;
    open[best] = open[open.length - 1] as number;
    open.pop();
    relax((bends[settled] as WayCorner).at, lengths[settled] as number, settled);
  }
  return { ways, start, lengths, previous };
}

/**
 * The shortest way to a goal.
 *
 * @param from - Result of `waysFrom`. @param goal - In the region or within its skin. [m]
 * @returns The way, or undefined where none leads.
 * @example In an empty room it is the straight line, and its length the distance
 */
export function wayTo(from: WaysFrom, goal: Point): Way | undefined {
  const { ways, start, lengths } = from;
  if (isStraight(ways, [start, goal])) {
    return { path: [start, goal], length: Math.hypot(goal[0] - start[0], goal[1] - start[1]) };
  }
  const lastBends: { readonly index: number; readonly length: Metres }[] = [];
  for (const [index, bend] of ways.bends.entries()) {
    const known = lengths[index] as number;
    if (known === Number.POSITIVE_INFINITY || !isTaut(bend, goal)) continue;
    lastBends.push({ index, length: known + Math.hypot(goal[0] - bend.at[0], goal[1] - bend.at[1]) });
  }
  lastBends.sort((a, b) => a.length - b.length);
  const last = lastBends.find(({ index }) => ways.sight.clear((ways.bends[index] as WayCorner).at, goal));
  return last && { path: [start, ...pathThrough(from, last.index), goal], length: last.length };
}

/** Whether the straight line between two places stays inside; two places on the edge may also be joined by a line that stays outside. */
function isStraight(ways: Ways, [start, goal]: readonly [Point, Point]): boolean {
  if (!ways.sight.clear(start, goal)) return false;
  const middle: Point = [(start[0] + goal[0]) / 2, (start[1] + goal[1]) / 2];
  return contains(ways.region, middle) || distanceToRings(middle, ringsOf(ways.region)) <= WAY_SKIN;
}

function pathThrough({ ways, previous }: WaysFrom, last: number): Point[] {
  const path: Point[] = [];
  for (let index = last; index >= 0; index = previous[index] as number)
    path.unshift((ways.bends[index] as WayCorner).at);
  return path;
}

/**
 * Whether a way between a place and a corner can hug the corner: both neighbours lie on one side of the line. A place on one of the
 * corner's own edges hugs it, on whichever side of that edge the grain has put it.
 */
function isTaut(corner: WayCorner, other: Point): boolean {
  const before = side(other, corner.at, corner.before);
  const after = side(other, corner.at, corner.after);
  if (!((before > 0 && after < 0) || (before < 0 && after > 0))) return true;
  return [corner.before, corner.after].some(
    (neighbour) => distanceToSegment(other, [corner.at, neighbour]) <= WAY_SKIN,
  );
}
