import {
  areaOf,
  contains,
  difference,
  inset,
  intersection,
  outset,
  type Point,
  type Region,
  regionOf,
  union,
} from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import {
  faceOf,
  floorOf,
  isUsableOutline,
  isWalkable,
  type Obstacle,
  type Opening,
  revealOf,
  type SiteLookUp,
} from "../site/index.ts";

/** An obstacle that begins lower than this and ends higher than a step keeps people out of its footprint. [m] @source COMMON-PRACTICE */
const HEAD_ROOM: Metres = 1.9;
const STEP: Metres = 0.1;
/** The inset goes round corners in arcs; chords this deep under them make the area larger, never smaller, and the same however the plan is turned. [m] */
const ARC_CHORD: Metres = 2e-3;
/** Strips reach this far into the inset area, so that the two join and no rounding parts them. [m] */
const JOIN: Metres = 2e-3;

/** Where people come in from an opening. */
export interface Entrance {
  readonly opening: Opening;
  /** Room on the other side; null: outside. */
  readonly other: string | null;
  /** Middle of the opening on the wall face of this room. [m] */
  readonly at: Point;
  /** Unit vector into the room. */
  readonly inward: Point;
  /** Strip between the jambs less a body radius, from the wall face to the inset area. */
  readonly strip: Region;
  /** False where something stands in the way, or the opening is too narrow for a body. */
  readonly free: boolean;
}

/** The floor on which people can stand, by what a door leads to. */
export interface StandingArea {
  readonly floor: Region;
  readonly reached: Region;
  readonly unreached: Region;
  readonly entrances: readonly Entrance[];
}

/**
 * Where the middle of a standing body can be in a room.
 *
 * Floor less blocking footprints (base < 1.9 m and top > 0.1 m), drawn in by the body radius, and at each walkable opening the strip between
 * its jambs less a body radius, from the wall face to that area. Parts that no opening leads to are kept apart; a room without walkable
 * opening counts its largest part as reached.
 *
 * @param look - The site's records at hand. @param roomId - Id of a room with a usable outline.
 * @returns Regions [m] and the ways in.
 * @source COMMON-PRACTICE
 * @example A room 4 × 3 m, body radius 0.2 m, one door 0.9 m wide: 3.6 × 2.6 + 0.5 × 0.2 = 9.46 m²
 */
export function standingArea(look: SiteLookUp, roomId: string): StandingArea {
  const room = look.roomById.get(roomId);
  if (!room) throw new Error(`No room ${roomId}`);
  const radius = look.site.defaults.bodyRadius;
  const floor = floorOf(room);
  const blocked = union(
    look
      .obstaclesOf(roomId)
      .filter(isBlocking)
      .map((obstacle) => regionOf(obstacle.footprint)),
  );
  const keptOff = outset(blocked, radius, ARC_CHORD);
  const free = inset(difference(floor, blocked), radius, ARC_CHORD);
  const entrances = look
    .openingsOf(roomId)
    .filter((opening) => isWalkable(opening.kind))
    .flatMap((opening) => entranceOf({ opening, roomId, look, floor, keptOff, free }));
  const parts = union([free, ...entrances.map((entrance) => entrance.strip)]);
  const isReached =
    entrances.length > 0
      ? (part: Region[number]) => entrances.some((entrance) => meets(entrance, part))
      : (part: Region[number]) => part === largest(parts);
  return {
    floor,
    reached: parts.filter(isReached),
    unreached: parts.filter((part) => !isReached(part)),
    entrances,
  };
}

/** Whether an obstacle keeps people out of its footprint. @example A duct under the ceiling does not */
export const isBlocking = (obstacle: Obstacle): boolean =>
  obstacle.base < HEAD_ROOM && obstacle.top > STEP && isUsableOutline(obstacle.footprint);

/** Whether people can stand, or sit, under an obstacle that ends above a height. @example A wall cupboard from 1.4 m hides the hands on the desk below it */
export const coversPlace = (obstacle: Obstacle, sightHeight: Metres): boolean =>
  obstacle.base < HEAD_ROOM && obstacle.top > sightHeight && isUsableOutline(obstacle.footprint);

interface EntranceQuestion {
  readonly opening: Opening;
  readonly roomId: string;
  readonly look: SiteLookUp;
  readonly floor: Region;
  readonly keptOff: Region;
  readonly free: Region;
}

function entranceOf({ opening, roomId, look, floor, keptOff, free }: EntranceQuestion): Entrance[] {
  const first = look.roomById.get(opening.rooms[0]);
  if (!first || ![...opening.from, ...opening.to, opening.thickness].every(Number.isFinite)) return [];
  const isFirst = opening.rooms[0] === roomId;
  const { jambs, inward } = faceOf(revealOf(opening, first), isFirst ? "first" : "second");
  const [a, b] = jambs;
  const width = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const radius = look.site.defaults.bodyRadius;
  const entrance = {
    opening,
    other: isFirst ? opening.rooms[1] : opening.rooms[0],
    at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as Point,
    inward,
  };
  if (width <= 2 * radius) return [{ ...entrance, strip: [], free: false }];
  const [ux, uy] = [(b[0] - a[0]) / width, (b[1] - a[1]) / width];
  const place = (along: Metres, deep: Metres): Point => [
    a[0] + along * ux + deep * inward[0],
    a[1] + along * uy + deep * inward[1],
  ];
  const depth = radius + JOIN;
  const quad = [
    place(radius, 0),
    place(width - radius, 0),
    place(width - radius, depth),
    place(radius, depth),
  ];
  const strip = difference(intersection(regionOf(quad), floor), keptOff);
  return [{ ...entrance, strip, free: areaOf(intersection(strip, free)) > 0 }];
}

function meets({ strip }: Entrance, part: Region[number]): boolean {
  return (
    strip.some((piece) => piece.outline.some((corner) => contains([part], corner))) ||
    areaOf(intersection(strip, [part])) > 0
  );
}

function largest(parts: Region): Region[number] | undefined {
  return parts.toSorted((a, b) => areaOf([b]) - areaOf([a]))[0];
}
