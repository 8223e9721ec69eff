import { say, type Words } from "../check/index.ts";
import type { DetectorModel } from "../detector/index.ts";
import type {
  CeilingThing,
  Detector,
  DwellPlace,
  FloorPiece,
  Interference,
  Luminaire,
  Obstacle,
  Opening,
  Room,
  Site,
  Storey,
} from "./site.ts";

/** A site with its records at hand by id and by room. A plain value made once per snapshot and passed along. */
export interface SiteLookUp {
  readonly site: Site;
  readonly storeyById: ReadonlyMap<string, Storey>;
  readonly roomById: ReadonlyMap<string, Room>;
  readonly openingById: ReadonlyMap<string, Opening>;
  readonly modelById: ReadonlyMap<string, DetectorModel>;
  readonly detectorById: ReadonlyMap<string, Detector>;
  readonly openingsOf: (room: string) => readonly Opening[];
  readonly floorPiecesOf: (room: string) => readonly FloorPiece[];
  readonly obstaclesOf: (room: string) => readonly Obstacle[];
  readonly dwellPlacesOf: (room: string) => readonly DwellPlace[];
  readonly interferenceOf: (room: string) => readonly Interference[];
  readonly ceilingThingsOf: (room: string) => readonly CeilingThing[];
  readonly luminairesOf: (room: string) => readonly Luminaire[];
  /** Detectors that hang in the room. */
  readonly detectorsIn: (room: string) => readonly Detector[];
  /** Detectors that switch the room's light, wherever they hang. */
  readonly detectorsFor: (room: string) => readonly Detector[];
}

/**
 * The site's records by id and by room; of records that share an id the first counts.
 *
 * @param site - Snapshot of the job.
 * @returns Maps by id and lists by room; a room that nothing belongs to has empty lists.
 * @example lookUp(site).openingsOf("corridor") lists the doors on both sides of which the corridor lies
 */
export function lookUp(site: Site): SiteLookUp {
  return {
    site,
    storeyById: byId(site.storeys),
    roomById: byId(site.rooms),
    openingById: byId(site.openings),
    modelById: byId(site.models),
    detectorById: byId(site.detectors),
    openingsOf: listed(site.openings, (opening) => opening.rooms.filter((room) => room !== null)),
    floorPiecesOf: listed(site.floorPieces, (piece) => [piece.room]),
    obstaclesOf: listed(site.obstacles, (obstacle) => [obstacle.room]),
    dwellPlacesOf: listed(site.dwellPlaces, (place) => [place.room]),
    interferenceOf: listed(site.interference, (source) => [source.room]),
    ceilingThingsOf: listed(site.ceilingThings, (thing) => [thing.room]),
    luminairesOf: listed(site.luminaires, (luminaire) => [luminaire.room]),
    detectorsIn: listed(site.detectors, (detector) => [detector.room]),
    detectorsFor: listed(site.detectors, controlledRooms),
  };
}

/**
 * The rooms whose light a detector switches.
 *
 * @param detector - A detector of the site.
 * @returns Its `controls` list, or the room it hangs in where the list is empty.
 * @example A detector in "hall" with an empty list controls ["hall"]
 */
export function controlledRooms(detector: Pick<Detector, "room" | "controls">): readonly string[] {
  return detector.controls.length > 0 ? detector.controls : [detector.room];
}

/**
 * What a person calls a room: number and name.
 *
 * @param room - The room, or undefined where the id leads nowhere.
 * @returns Number and name, whichever exist; the id where neither does.
 * @example roomTitle({ number: "0.12", name: "Drying room" }) = "0.12 Drying room"
 */
export function roomTitle(room: Pick<Room, "id" | "number" | "name"> | undefined): string {
  if (!room) return "(deleted room)";
  return [room.number, room.name].filter((part) => part.trim() !== "").join(" ") || room.id;
}

/** The same inside a sentence, where the id may lead nowhere: what then stands in its place is said. @param room - The room, or undefined. @returns A name, or words. @example undefined: "(deleted room)" */
export const roomInSentence = (room: Pick<Room, "id" | "number" | "name"> | undefined): Words =>
  room ? roomTitle(room) : say`(deleted room)`;

function byId<Kind extends { readonly id: string }>(records: readonly Kind[]): ReadonlyMap<string, Kind> {
  const map = new Map<string, Kind>();
  for (const record of records) if (!map.has(record.id)) map.set(record.id, record);
  return map;
}

function listed<Kind>(
  records: readonly Kind[],
  roomsOf: (record: Kind) => readonly string[],
): (room: string) => readonly Kind[] {
  const lists = new Map<string, Kind[]>();
  for (const record of records) {
    for (const room of new Set(roomsOf(record))) {
      const list = lists.get(room);
      if (list) list.push(record);
      else lists.set(room, [record]);
    }
  }
  return (room) => lists.get(room) ?? [];
}
