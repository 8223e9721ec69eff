import { distanceToSegment, type Outline, outlineContains, type Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { FloorPiece } from "./site.ts";

/**
 * Height of the finished floor at a place, above the floor of its room.
 *
 * On a flight h = low + (high − low) · d₁ / (d₁ + d₂), with d₁ the distance to the line of the edge nearest `from`
 * and d₂ to that of the edge nearest `to`. Outside all pieces the floor is at 0. Where pieces overlap the highest counts: one stands on it.
 *
 * @param pieces - Floor pieces of one room.
 * @param at - Place on the plan. [m]
 * @returns Height above the room's floor. [m]
 * @source DERIVED-HERE
 * @example Half-way up a flight from 0 to 3 m the floor is at 1.5 m
 */
export function floorHeight(pieces: readonly FloorPiece[], at: Point): Metres {
  let height: Metres | undefined;
  for (const piece of pieces) {
    if (!outlineContains(piece.footprint, at)) continue;
    const here = heightOn(piece, at);
    height = height === undefined ? here : Math.max(height, here);
  }
  return height ?? 0;
}

/**
 * The edge of a flight at which one steps on it from below or from above.
 *
 * @param piece - A flight. @param end - Its lower or its upper end.
 * @returns The edge's two ends. [m]
 * @example The foot of a flight that starts at x = 2 runs along x = 2
 */
export function flightEdge(piece: FloorPiece, end: "foot" | "head"): readonly [Point, Point] {
  return edgeNearest(piece.footprint, end === "foot" ? piece.from : piece.to);
}

function heightOn(piece: FloorPiece, at: Point): Metres {
  if (piece.kind === "landing") return piece.high;
  const below = distanceToLine(flightEdge(piece, "foot"), at);
  const above = distanceToLine(flightEdge(piece, "head"), at);
  const way = below + above;
  return way === 0 ? piece.low : piece.low + ((piece.high - piece.low) * below) / way;
}

function edgeNearest(outline: Outline, to: Point): readonly [Point, Point] {
  let best: readonly [Point, Point] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, start] of outline.entries()) {
    const end = outline[(i + 1) % outline.length] as Point;
    const distance = distanceToSegment(to, [start, end]);
    if (distance < least) {
      least = distance;
      best = [start, end];
    }
  }
  if (!best) throw new Error("A flight needs a footprint with corners");
  return best;
}

function distanceToLine([a, b]: readonly [Point, Point], p: Point): Metres {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length === 0) return Math.hypot(p[0] - a[0], p[1] - a[1]);
  return Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length;
}
