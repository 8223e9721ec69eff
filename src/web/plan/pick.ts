import type { Point, Room, Site } from "#engine";
import type { RecordKind, RecordOf, RecordRef } from "../contract.ts";
import {
  distance,
  insideRing,
  insideRoom,
  nearestOn,
  openingShape,
  rimDistance,
  ringArea,
  turnedRectangle,
} from "./shapes.ts";
import { type Pixel, toPixel, toPoint, type View } from "./view.ts";

/** Kinds that hang or stand in a room and carry its id. */
export type PlacedKind =
  | "detectors"
  | "interference"
  | "ceilingThings"
  | "dwellPlaces"
  | "luminaires"
  | "switches"
  | "obstacles"
  | "floorPieces";

export const sameRef = (a: RecordRef | undefined, b: RecordRef | undefined): boolean =>
  a?.kind === b?.kind && a?.id === b?.id;

export const recordOf = <K extends RecordKind>(site: Site, kind: K, id: string): RecordOf<K> | undefined =>
  (site[kind] as readonly { readonly id: string }[]).find((record) => record.id === id) as
    | RecordOf<K>
    | undefined;

/** The rooms of a storey, by id. */
export const roomsOn = (site: Site, storey: string): ReadonlyMap<string, Room> =>
  new Map(site.rooms.filter((room) => room.storey === storey).map((room) => [room.id, room]));

/**
 * What lies under a pixel, the uppermost first: devices before what they hang over, small things before large ones.
 * @param reach How far beside a small thing one may touch, in pixels: more for fingers.
 */
export function picked(
  site: Site,
  storey: string,
  at: { view: View; pixel: Pixel; reach: number },
): RecordRef[] {
  const { view, pixel, reach } = at;
  const point = toPoint(view, pixel);
  const rooms = roomsOn(site, storey);
  const near = (place: Point): boolean => {
    const { px, py } = toPixel(view, place);
    return Math.hypot(px - pixel.px, py - pixel.py) <= reach;
  };
  const hits: RecordRef[] = [];
  const take = <K extends PlacedKind>(kind: K, test: (record: RecordOf<K>) => boolean): void => {
    const found = (site[kind] as readonly RecordOf<K>[]).filter(
      (record) => rooms.has(record.room) && test(record),
    );
    for (const record of found) hits.push({ kind, id: record.id });
  };
  take("detectors", (device) => near(device.at));
  take("interference", (source) =>
    source.to ? near(nearestOn(source.at, source.to, point)) : near(source.at),
  );
  take("ceilingThings", (thing) => near(thing.at));
  take("switches", (one) => near(one.at));
  take("dwellPlaces", (place) => near(place.at));
  take("luminaires", (one) => near(one.at) || insideRing(turnedRectangle(one.at, one), point));
  for (const opening of site.openings) {
    if (!opening.rooms.some((id) => id !== null && rooms.has(id))) continue;
    const { reveal } = openingShape(opening, rooms.get(opening.rooms[0]));
    if (insideRing(reveal, point) || rimDistance(reveal, point) * view.scale < reach / 3)
      hits.push({ kind: "openings", id: opening.id });
  }
  const obstacles = site.obstacles
    .filter(
      (obstacle) =>
        rooms.has(obstacle.room) &&
        (insideRing(obstacle.footprint, point) ||
          rimDistance(obstacle.footprint, point) * view.scale < reach / 4),
    )
    .sort((a, b) => Math.abs(ringArea(a.footprint)) - Math.abs(ringArea(b.footprint)));
  for (const { id } of obstacles) hits.push({ kind: "obstacles", id });
  take("floorPieces", (piece) => insideRing(piece.footprint, point));
  for (const room of rooms.values()) if (insideRoom(room, point)) hits.push({ kind: "rooms", id: room.id });
  return hits;
}

/** The room of a storey that a point lies in. */
export const roomAt = (site: Site, storey: string, point: Point): Room | undefined =>
  [...roomsOn(site, storey).values()].find((room) => insideRoom(room, point));

/** One point that stands for a record: where its label, its card and the keyboard find it. */
export function placeOf(site: Site, ref: RecordRef): Point | undefined {
  switch (ref.kind) {
    case "detectors":
    case "dwellPlaces":
    case "ceilingThings":
    case "luminaires":
    case "switches":
      return recordOf(site, ref.kind, ref.id)?.at;
    case "interference": {
      const source = recordOf(site, "interference", ref.id);
      return source?.to ? [(source.at[0] + source.to[0]) / 2, (source.at[1] + source.to[1]) / 2] : source?.at;
    }
    case "openings": {
      const opening = recordOf(site, "openings", ref.id);
      return opening && [(opening.from[0] + opening.to[0]) / 2, (opening.from[1] + opening.to[1]) / 2];
    }
    case "obstacles":
    case "floorPieces":
      return middle(recordOf(site, ref.kind, ref.id)?.footprint);
    case "rooms":
      return middle(recordOf(site, "rooms", ref.id)?.outline);
    case "storeys":
    case "models":
      return undefined;
  }
}

const middle = (ring: readonly Point[] | undefined): Point | undefined =>
  ring && ring.length > 0
    ? [
        ring.reduce((sum, [x]) => sum + x, 0) / ring.length,
        ring.reduce((sum, [, y]) => sum + y, 0) / ring.length,
      ]
    : undefined;

/** The piece of a room's rim nearest to a point. */
export function nearestWall(
  room: Room,
  point: Point,
): { readonly ring: readonly Point[]; readonly index: number; readonly at: Point; readonly away: number } {
  let best: { ring: readonly Point[]; index: number; at: Point; away: number } | undefined;
  for (const ring of [room.outline, ...room.holes])
    ring.forEach((from, index) => {
      const at = nearestOn(from, ring[(index + 1) % ring.length] as Point, point);
      const away = distance(at, point);
      if (!best || away < best.away) best = { ring, index, at, away };
    });
  if (!best) throw new Error(`Room ${room.id} has no outline`);
  return best;
}
