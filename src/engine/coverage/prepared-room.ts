import { type Point, prepareWays, type Region, simplified, type Ways } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import {
  calculable,
  lookUp,
  type Obstacle,
  type Opening,
  type Room,
  type Site,
  type SiteLookUp,
} from "../site/index.ts";
import { demandOf } from "./demand.ts";
import type { RoomDemand } from "./results.ts";
import { type RoomWays, waysThrough } from "./room-ways.ts";
import { type Scene, sceneOf } from "./scene.ts";
import type { StandingArea } from "./standing-area.ts";

/** Corners of ways are thinned to chords this deep: a shortest way changes by less than a millimetre a corner. [m] */
const WAY_CHORD: Metres = 5e-3;

/** What stays the same in a room while its detectors move. */
export interface PreparedRoom {
  /** Records of the surroundings that can be calculated with, at hand. */
  readonly look: SiteLookUp;
  readonly room: Room;
  readonly demand: RoomDemand;
  /** Absent where the outline cannot be calculated with. */
  readonly standing: StandingArea | undefined;
  readonly obstacles: readonly Obstacle[];
  /** Doors closed. */
  readonly closed: () => Scene;
  /** All doors open: for spill and nuisance. */
  readonly open: () => Scene;
  /** One opening open and all others closed. */
  readonly withOpen: (opening: string) => Scene;
  /** Ways from each entrance to each goal. */
  readonly ways: () => readonly RoomWays[];
}

/**
 * Prepares a room, so that moving its detectors only costs what depends on them.
 *
 * Scenes hold the room, the rooms next to it, those in which its detectors hang, and whatever passages join to these. They and the ways are made at the first use and kept.
 *
 * @param site - Snapshot of the job. @param roomId - Id of a room of the site; throws on another.
 * @returns The prepared room, to be passed to `coverageOf`; prepare again when anything but detectors changes.
 * @example `coverageOf(prepareRoom(site, "hall"), site.detectors)` equals `roomCoverage(site, "hall")`
 */
export function prepareRoom(site: Site, roomId: string): PreparedRoom {
  const whole = lookUp(site);
  const room = whole.roomById.get(roomId);
  if (!room) throw new Error(`No room ${roomId}`);
  const near = calculable(siteAround(whole, roomId));
  const look = lookUp(near);
  const { demand, standing } = demandOf(room, look);
  const scenes = new Map<string, Scene>();
  return {
    look,
    room,
    demand,
    standing,
    obstacles: look.obstaclesOf(roomId),
    closed: once(() => sceneOf(near, { storey: room.storey, doors: "closed" })),
    open: once(() => sceneOf(near, { storey: room.storey, doors: "open" })),
    withOpen: (opening) => {
      const known = scenes.get(opening);
      if (known) return known;
      const scene = sceneOf(withOneOpen(near, opening), { storey: room.storey, doors: "drawn" });
      scenes.set(opening, scene);
      return scene;
    },
    ways: once(() =>
      standing ? waysThrough({ standing, demand, look, ways: waysOf(demand.standing) }) : [],
    ),
  };
}

/**
 * A site in which one opening is drawn open and every other door closed.
 *
 * @param site - Any site. @param opening - Id of the opening that is open.
 * @returns The same site with other door states.
 * @example The door just opened, seen from the room it leads into
 */
export function withOneOpen(site: Site, opening: string): Site {
  return {
    ...site,
    openings: site.openings.map((one) => ({ ...one, state: one.id === opening ? "open" : "closed" })),
  };
}

const waysOf = (standing: Region): Ways => prepareWays(simplified(standing, WAY_CHORD));

/** The part of the site that sight from or into the room can involve. */
function siteAround(look: SiteLookUp, roomId: string): Site {
  const rooms = new Set<string>([roomId]);
  for (const detector of look.detectorsFor(roomId)) rooms.add(detector.room);
  for (const room of [...rooms]) for (const other of othersOf(look, room, () => true)) rooms.add(other);
  for (const room of rooms)
    for (const other of othersOf(look, room, (opening) => opening.kind === "passage")) rooms.add(other);
  const here = (record: { readonly room: string }): boolean => rooms.has(record.room);
  const { site } = look;
  return {
    ...site,
    rooms: site.rooms.filter((room) => rooms.has(room.id)),
    openings: site.openings.filter((opening) =>
      opening.rooms.some((room) => room !== null && rooms.has(room)),
    ),
    floorPieces: site.floorPieces.filter(here),
    obstacles: site.obstacles.filter(here),
    luminaires: site.luminaires.filter(here),
    interference: site.interference.filter(here),
    ceilingThings: site.ceilingThings.filter(here),
    dwellPlaces: site.dwellPlaces.filter(here),
  };
}

function othersOf(look: SiteLookUp, room: string, wanted: (opening: Opening) => boolean): string[] {
  return look
    .openingsOf(room)
    .filter(wanted)
    .flatMap((opening) =>
      opening.rooms.filter((other) => other !== null && other !== room && look.roomById.has(other)),
    )
    .filter((other) => other !== null);
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** A place given as plain numbers, for problems. @example [1, 2] */
export const plainPoint = (at: Point): readonly [number, number] => [at[0], at[1]];
