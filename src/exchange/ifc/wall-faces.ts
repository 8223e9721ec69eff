import type { Metres, Outline, Point } from "#engine";
import type { PlanBox } from "./plan-box.ts";
import type { ReadRoom } from "./rooms.ts";

/** A straight part of a room's outline beside an opening. `s` runs along the opening from its middle, `t` across it. */
export interface WallFace {
  readonly room: ReadRoom;
  /** Which way from the wall the room lies, along the opening's normal. */
  readonly side: 1 | -1;
  /** Where the face crosses the opening's middle line, across. [m] */
  readonly t: Metres;
  /** Part of the face in front of the opening. [m] */
  readonly from: Metres;
  readonly to: Metres;
  /** The outline's own corners, so that ends can be put exactly on it. */
  readonly a: Point;
  readonly b: Point;
}

/** An opening's frame in plan: middle, direction along the wall, size along, size across. */
export interface OpeningFrame {
  readonly centre: Point;
  readonly along: Point;
  readonly length: Metres;
  readonly depth: Metres;
  readonly low: Metres;
  readonly high: Metres;
}

/** The two ways in which a box can sit in a wall: its longer side along the wall, or across it. */
export function framesOf(box: PlanBox): readonly [OpeningFrame, OpeningFrame] {
  const { centre, along, length, width, low, high } = box;
  return [
    { centre, along, length, depth: width, low, high },
    { centre, along: [-along[1], along[0]], length: width, depth: length, low, high },
  ];
}

/** A wall is plastered, clad or furred at most this much beyond the opening's own body. [m] */
const reach = 0.6;

/** Least stretch of a face in front of an opening that counts. [m] */
const leastStretch = 0.1;

/** Faces of rooms on both sides of an opening, the nearest first. */
export function facesBeside(frame: OpeningFrame, rooms: readonly ReadRoom[]): readonly WallFace[] {
  const [x, y] = frame.centre;
  const size = frame.length / 2 + frame.depth / 2 + reach;
  const faces: WallFace[] = [];
  for (const room of rooms) {
    const { box } = room;
    if (x < box[0] - size || x > box[2] + size || y < box[1] - size || y > box[3] + size) continue;
    const shared =
      Math.min(frame.high, room.level + room.room.ceilingHeight) - Math.max(frame.low, room.level);
    if (shared < Math.min(0.3, (frame.high - frame.low) / 2)) continue;
    for (const ring of [room.piece.outline, ...room.piece.holes]) faces.push(...ringFaces(frame, room, ring));
  }
  return faces.sort((p, q) => Math.abs(p.t) - Math.abs(q.t));
}

const ringFaces = (frame: OpeningFrame, room: ReadRoom, ring: Outline): WallFace[] => {
  const { centre, along: u, length, depth } = frame;
  const n: Point = [-u[1], u[0]];
  const faces: WallFace[] = [];
  const least = Math.min(leastStretch, length / 2);
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[i + 1 < ring.length ? i + 1 : 0]!;
    const sa = (a[0] - centre[0]) * u[0] + (a[1] - centre[1]) * u[1];
    const sb = (b[0] - centre[0]) * u[0] + (b[1] - centre[1]) * u[1];
    const from = Math.max(-length / 2, Math.min(sa, sb));
    const to = Math.min(length / 2, Math.max(sa, sb));
    if (to - from < least) continue;
    // The room lies to the left of each edge of its outline, and of its holes.
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const across = (-dy * n[0] + dx * n[1]) / Math.sqrt(dx * dx + dy * dy);
    if (!(Math.abs(across) > parallel)) continue;
    const side = across > 0 ? 1 : -1;
    const middle = (from + to) / 2;
    const [ta, tb] = [
      (a[0] - centre[0]) * n[0] + (a[1] - centre[1]) * n[1],
      (b[0] - centre[0]) * n[0] + (b[1] - centre[1]) * n[1],
    ];
    const t = ta + ((middle - sa) / (sb - sa)) * (tb - ta);
    if (side * t < -depth / 2 - 0.1 || side * t > depth / 2 + reach) continue;
    faces.push({ room, side, t, from, to, a, b });
  }
  return faces;
};

/** Cosine of the most that a face may be turned against the opening: 10°. */
const parallel = 0.985;
