import { boundsOf, type Outline, type Point } from "../geometry/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";
import type { Room } from "../site/index.ts";
import type { Ceiling, Refusal } from "./ceiling.ts";

/** Places that the search may choose from, and why the others were refused. */
export interface Candidates {
  readonly points: readonly Point[];
  readonly from: "ceiling-grid" | "free-grid" | "given";
  readonly refused: ReadonlyMap<Refusal, number>;
}

/** A place nearer to another one than this is the same place. [m] */
const SAME_PLACE: Metres = 1e-6;

/**
 * Places for devices: centres of the tiles of the ceiling grid; without one a free grid from the room's longest wall; or given points.
 *
 * The free grid has lines at whole multiples of the spacing from the longest wall and from its start, and the two middle lines of the room.
 *
 * @param ceiling - Where devices may be mounted.
 * @param options.spacing - Of the free grid. [m]
 * @param options.points - Given points; they replace both grids. [m]
 * @returns Allowed places, line by line.
 * @source COMMON-PRACTICE
 * @example A room 4 × 3 m at 1 m: 3 × 3 places, the middle line at y = 1.5 m included
 */
export function candidatesOf(
  ceiling: Ceiling,
  options: { readonly spacing: Metres; readonly points?: readonly Point[] },
): Candidates {
  const { room } = ceiling;
  const from =
    options.points !== undefined ? "given" : room.ceilingGrid !== undefined ? "ceiling-grid" : "free-grid";
  const places =
    options.points ??
    (room.ceilingGrid !== undefined ? tileCentres(room, room.ceilingGrid) : freeGrid(room, options.spacing));
  const refused = new Map<Refusal, number>();
  const points = places.filter((at) => {
    const why = ceiling.refusal(at);
    if (why !== undefined) refused.set(why, (refused.get(why) ?? 0) + 1);
    return why === undefined;
  });
  return { points, from, refused };
}

/**
 * Direction of the room's longest wall: devices that are not round are turned by quarters from it, and the free grid runs along it.
 *
 * @param room - The room. @returns Start of the wall [m] and its direction [rad]; of equal walls the first.
 * @example A rectangle 6 × 4 m drawn from its lower left corner: (0, 0) and 0
 */
export function longestWall(room: Room): { readonly start: Point; readonly turn: Radians } {
  let best = { start: room.outline[0] ?? ([0, 0] as Point), turn: 0, length: 0 };
  room.outline.forEach((a, index) => {
    const b = room.outline[(index + 1) % room.outline.length]!;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    // Walls of one length as drawn differ in the last places: the first of them stays.
    if (length > best.length * (1 + 1e-9) + 1e-9)
      best = { start: a, turn: Math.atan2(b[1] - a[1], b[0] - a[0]), length };
  });
  return best;
}

function tileCentres(room: Room, grid: NonNullable<Room["ceilingGrid"]>): Point[] {
  const frame = { start: grid.origin, turn: grid.turn };
  const { minX, minY, maxX, maxY } = boundsOf([room.outline.map((at) => intoFrame(at, frame))]);
  const [tx, ty] = grid.tile;
  if (!(tx > 0 && ty > 0)) return [];
  const centres = (low: number, high: number, tile: number): number[] => {
    const list: number[] = [];
    for (let i = Math.floor(low / tile); (i + 0.5) * tile < high; i++) list.push((i + 0.5) * tile);
    return list;
  };
  const xs = centres(minX, maxX, tx);
  return centres(minY, maxY, ty).flatMap((y) => xs.map((x) => outOfFrame([x, y], frame)));
}

function freeGrid(room: Room, spacing: Metres): Point[] {
  const frame = longestWall(room);
  const { minX, minY, maxX, maxY } = boundsOf([room.outline.map((at) => intoFrame(at, frame))]);
  const lines = (low: number, high: number): number[] => {
    const list = [(low + high) / 2];
    for (let i = Math.ceil(low / spacing); i * spacing < high; i++) list.push(i * spacing);
    return list
      .sort((a, b) => a - b)
      .filter((value, index) => index === 0 || value - list[index - 1]! > SAME_PLACE);
  };
  const xs = lines(minX, maxX);
  return lines(minY, maxY).flatMap((y) => xs.map((x) => outOfFrame([x, y], frame)));
}

interface Frame {
  readonly start: Point;
  readonly turn: Radians;
}

/** A plan point in a frame of its own. @param at - Plan point. [m] @param frame - Start and direction of the frame's x axis. @returns The point in the frame. [m] */
export function intoFrame(at: Point, frame: Frame): Point {
  const { start, turn } = frame;
  const [dx, dy] = [at[0] - start[0], at[1] - start[1]];
  return [Math.cos(turn) * dx + Math.sin(turn) * dy, -Math.sin(turn) * dx + Math.cos(turn) * dy];
}

/** The way back from `intoFrame`. @param at - Point in the frame. [m] @param frame - The frame. @returns The plan point. [m] @example The origin comes out at the frame's start */
export function outOfFrame(at: Point, frame: Frame): Point {
  const { start, turn } = frame;
  const [x, y] = at;
  return [
    start[0] + Math.cos(turn) * x - Math.sin(turn) * y,
    start[1] + Math.sin(turn) * x + Math.cos(turn) * y,
  ];
}

/** Corners of a room's rings. @param room - The room. @returns Outline and holes. */
export const ringsOfRoom = (room: Room): readonly Outline[] => [room.outline, ...room.holes];
