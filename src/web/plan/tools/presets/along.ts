import type { Metres, Point, Radians, Room } from "#engine";
import { insideRoom, nearestOn, rimDistance } from "../../shapes.ts";
import { millimetres, type Span } from "./ground.ts";

/** A row's own axes: u along it, v across it towards the open side of the room. */
export interface Along {
  readonly length: Metres;
  readonly turn: Radians;
  /** A place of the row in the plan, to the millimetre. */
  readonly at: (u: Metres, v: Metres) => Point;
  /** Rectangle between two places of the row, counter-clockwise. */
  readonly box: (u1: Metres, v1: Metres, u2: Metres, v2: Metres) => Point[];
  readonly ring: (places: readonly Point[]) => Point[];
}

/** Nearer to a wall than this a row stands at the wall. [m] */
const atWall = 0.25;

/**
 * Axes of a row of a depth that is drawn from one end to the other. A row that is drawn along a wall stands at the wall
 * and faces the room; one in the open has its depth to the left of the way it was drawn. Shorter than `least` it is made so long.
 */
export function along(
  span: Span,
  row: { readonly room: Room; readonly depth: Metres; readonly least: Metres },
): Along {
  const { room, depth, least } = row;
  const [dx, dy] = [span.to[0] - span.from[0], span.to[1] - span.from[1]];
  const drawn = Math.hypot(dx, dy);
  const way: Point = drawn < 1e-6 ? [1, 0] : [dx / drawn, dy / drawn];
  const length = Math.max(drawn, least);
  const left: Point = [-way[1], way[0]];
  const middle: Point = [span.from[0] + (way[0] * length) / 2, span.from[1] + (way[1] * length) / 2];
  const room_ = (side: 1 | -1): Metres => {
    const there: Point = [middle[0] + side * left[0] * depth, middle[1] + side * left[1] * depth];
    return insideRoom(room, there) ? rimDistance(room.outline, there) : -1;
  };
  const side = room_(1) >= room_(-1) - 1e-9 || rimDistance(room.outline, middle) > atWall + depth ? 1 : -1;
  const across: Point = [left[0] * side, left[1] * side];
  const shift = wallShift(room, middle, across);
  const at = (u: Metres, v: Metres): Point =>
    millimetres([
      span.from[0] + way[0] * u + across[0] * (v + shift),
      span.from[1] + way[1] * u + across[1] * (v + shift),
    ]);
  const ring = (places: readonly Point[]): Point[] => {
    const placed = places.map(([u, v]) => at(u, v));
    return side === 1 ? placed : placed.reverse();
  };
  return {
    length,
    turn: Math.atan2(way[1], way[0]),
    at,
    ring,
    box: (u1, v1, u2, v2) =>
      ring([
        [u1, v1],
        [u2, v1],
        [u2, v2],
        [u1, v2],
      ]),
  };
}

/** How far a row moves across to stand at the wall that it was drawn along. */
function wallShift(room: Room, middle: Point, across: Point): Metres {
  let best = 0;
  let least = atWall;
  room.outline.forEach((a, index) => {
    const b = room.outline[(index + 1) % room.outline.length] as Point;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    const parallel = Math.abs(((b[0] - a[0]) * across[0] + (b[1] - a[1]) * across[1]) / length) < 0.02;
    if (!parallel) return;
    const on = nearestOn(a, b, middle);
    const away = (on[0] - middle[0]) * across[0] + (on[1] - middle[1]) * across[1];
    const off = Math.hypot(on[0] - middle[0], on[1] - middle[1]);
    if (off < least + 1e-9 && Math.abs(off - Math.abs(away)) < 1e-6) {
      least = off;
      best = away;
    }
  });
  return best;
}
