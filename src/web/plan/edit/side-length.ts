import type { Metres, Point, Room, Site } from "#engine";
import type { EditStep } from "../../contract.ts";
import { applied } from "../../jobs/apply.ts";
import { recordOf } from "../pick.ts";
import { insideRing, middleOf, rimDistance } from "../shapes.ts";
import { facing, ringsOfRoom } from "./faces.ts";
import { edgeOf } from "./stretch.ts";
import { movedWallWholly } from "./wall.ts";

/** A side stands square to the next one within half a degree (cosine). */
const square = 0.0087;

/** An opening further from the walls of its room has lost them. [m] */
const offWall: Metres = 0.05;

/** Rooms that overlap by less than this may be drawn so. [m] */
const overlapSlack: Metres = 0.02;

/** Why a side cannot have a length: no square wall beside it, its room would be crossed, a door lose its wall, two rooms overlap. */
export type SideRefusal = "slanted" | "crossing" | "opening" | "overlap";

/**
 * Steps that give one side of a room a length: a wall beside it, square to it, moves along, with the rooms behind that wall.
 * Of two such walls the one without a room behind it moves; where both or neither have one, that at the side's end. Where it
 * cannot go so far, the other one does.
 *
 * @returns The steps, and the side's place in the outline afterwards; or why no wall can move so.
 */
export function sideLengthSteps(
  site: Site,
  room: Room,
  to: { readonly index: number; readonly length: Metres },
): { readonly steps: readonly EditStep[]; readonly index: number } | { readonly refused: SideRefusal } {
  const { outline } = room;
  const side = edgeOf(outline, to.index);
  const by = to.length - side.length;
  if (Math.abs(by) < 5e-4) return { steps: [], index: to.index };
  const walls = [(to.index + 1) % outline.length, (to.index - 1 + outline.length) % outline.length]
    .map((index, before) => {
      const { way } = edgeOf(outline, index);
      const cross = side.way[0] * way[1] - side.way[1] * way[0];
      const turn = before === 0 ? cross : -cross;
      return {
        index,
        // Where the outline turns inwards, longer is into the room.
        by: turn > 0 ? by : -by,
        isSquare: Math.abs(side.way[0] * way[0] + side.way[1] * way[1]) < square,
        isFree: facing(site, { room, ring: 0, edge: index }).length === 0,
      };
    })
    .filter(({ isSquare }) => isSquare)
    .sort((a, b) => Number(b.isFree) - Number(a.isFree));
  let refused: SideRefusal = "slanted";
  for (const wall of walls) {
    const steps = movedWallWholly(site, room.id, wall);
    const trouble = steps ? troubleOf(site, steps) : "crossing";
    if (steps && !trouble) return { steps, index: sameSide(applied(site, steps), room, to) };
    if (refused === "slanted" && trouble) refused = trouble;
  }
  return { refused };
}

/** What steps would break that was whole before. */
function troubleOf(site: Site, steps: readonly EditStep[]): SideRefusal | undefined {
  const after = applied(site, steps);
  const changed = after.rooms.filter((room) => recordOf(site, "rooms", room.id) !== room);
  const lost = (of: Site): ReadonlySet<string> =>
    new Set(of.openings.filter((opening) => !isInWall(of, opening)).map(({ id }) => id));
  const before = lost(site);
  if ([...lost(after)].some((id) => !before.has(id))) return "opening";
  const overlaps = (of: Site): ReadonlySet<string> =>
    new Set(
      changed.flatMap(({ id }) => {
        const room = recordOf(of, "rooms", id) as Room;
        return of.rooms
          .filter((other) => other.id !== id && other.storey === room.storey && overlap(room, other))
          .map((other) => `${id} ${other.id}`);
      }),
    );
  const known = overlaps(site);
  return [...overlaps(after)].some((pair) => !known.has(pair)) ? "overlap" : undefined;
}

/** Whether both ends of an opening are on a wall of its first room. */
function isInWall(site: Site, opening: Site["openings"][number]): boolean {
  const room = recordOf(site, "rooms", opening.rooms[0]);
  return (
    !room ||
    [opening.from, opening.to].every((at) =>
      ringsOfRoom(room).some((ring) => rimDistance(ring, at) < offWall),
    )
  );
}

/** Whether two outlines cross, or one lies in the other. */
function overlap({ outline: one }: Room, { outline: other }: Room): boolean {
  const edges = (ring: readonly Point[]) =>
    ring.map((a, i) => [a, ring[(i + 1) % ring.length] as Point] as const);
  if (edges(one).some((a) => edges(other).some((b) => crossed(a, b)))) return true;
  const deepIn = (ring: readonly Point[], at: Point): boolean =>
    insideRing(ring, at) && rimDistance(ring, at) > overlapSlack;
  return (
    one.some((at) => deepIn(other, at)) ||
    other.some((at) => deepIn(one, at)) ||
    (deepIn(other, middleOf(one)) && insideRing(one, middleOf(one)))
  );
}

/** Whether two lines cross, each with more than the slack on both sides of the other. */
function crossed([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  const apart = (p: Point, q: Point, r: Point): Metres =>
    ((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])) /
    (Math.hypot(q[0] - p[0], q[1] - p[1]) || 1);
  const parted = (one: Metres, other: Metres): boolean =>
    Math.min(one, other) < -overlapSlack && Math.max(one, other) > overlapSlack;
  return parted(apart(a, b, c), apart(a, b, d)) && parted(apart(c, d, a), apart(c, d, b));
}

/** Where in the outline the side is afterwards: new corners may have come before it. */
function sameSide(
  after: Site,
  { id, outline }: Room,
  to: { readonly index: number; readonly length: Metres },
): number {
  const { way } = edgeOf(outline, to.index);
  const start = outline[to.index] as Point;
  const now = (recordOf(after, "rooms", id) as Room).outline;
  const off = now.map((corner, index) => {
    const edge = edgeOf(now, index);
    const against = 1 - (edge.way[0] * way[0] + edge.way[1] * way[1]);
    const aside = Math.abs((corner[0] - start[0]) * way[1] - (corner[1] - start[1]) * way[0]);
    return against + aside + Math.abs(edge.length - to.length);
  });
  return off.indexOf(Math.min(...off));
}
