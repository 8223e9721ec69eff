import type { DetectorModel } from "../detector/index.ts";
import {
  areaOf,
  contains,
  difference,
  distanceToRings,
  intersection,
  type Region,
  regionOf,
  ringsOf,
  union,
} from "../geometry/index.ts";
import type { SquareMetres } from "../quantity/index.ts";
import { controlledRooms, type Detector, floorOf, isUsableOutline, revealOf } from "../site/index.ts";
import type { PreparedRoom } from "./prepared-room.ts";
import type { Spill } from "./results.ts";
import { partAt } from "./scene.ts";
import { spillFarthest, spillZone } from "./spill-zone.ts";
import { deviceOf } from "./watchers.ts";

/** Less spill than this is a sliver along a jamb in which nobody stands. [m²] */
const LEAST_SPILL: SquareMetres = 0.02;

/**
 * What the detectors of a room see of other rooms, and of outside, with the doors open.
 *
 * A room is spilled into when the device does not switch its light. What lies in no room and no reveal counts as outside.
 *
 * @param prepared - The prepared room. @param detectors - Devices that hang in it.
 * @returns One entry for each room, and one with room null for outside; largest first.
 * @source SIGHT-GEOMETRY
 * @example A detector opposite an open door 0.9 m wide spills a wedge into the corridor
 */
export function spillOf(prepared: PreparedRoom, detectors: readonly Detector[]): readonly Spill[] {
  const found = new Map<string | null, { regions: Region[]; devices: string[] }>();
  const note = (room: string | null, region: Region, device: string): void => {
    if (areaOf(region) < LEAST_SPILL) return;
    const entry = found.get(room) ?? { regions: [], devices: [] };
    entry.regions.push(region);
    entry.devices.push(device);
    found.set(room, entry);
  };
  const { look, room } = prepared;
  const scene = prepared.open();
  const others = scene.site.rooms
    .filter((other) => other.id !== room.id && other.storey === room.storey && isUsableOutline(other.outline))
    .map((other) => ({ id: other.id, floor: floorOf(other) }));
  const reveals = scene.site.openings.flatMap((opening): Region => {
    const first = look.roomById.get(opening.rooms[0]);
    return first && first.storey === room.storey && isUsableOutline(first.outline)
      ? regionOf(revealOf(opening, first).outline)
      : [];
  });
  const own = prepared.standing?.floor ?? [];
  /** A look leaves the room through an open reveal alone: from where none lies within its reach, none does. */
  const staysWithin = (detector: Detector, model: DetectorModel): boolean => {
    const found = partAt(scene, detector.at);
    if (found?.room.id !== room.id || !contains(own, detector.at)) return false;
    const ways = found.part.reveals.flatMap(({ region }) => ringsOf(region));
    return (
      ways.length === 0 ||
      distanceToRings(detector.at, ways) > spillFarthest(scene, deviceOf(detector, model))
    );
  };
  const indoors = union([...others.map((other) => other.floor), reveals, own]);
  for (const detector of detectors) {
    const model = look.modelById.get(detector.model);
    if (!model || staysWithin(detector, model)) continue;
    const zone = difference(spillZone(scene, deviceOf(detector, model)), own);
    if (areaOf(zone) < LEAST_SPILL) continue;
    const lit = new Set(controlledRooms(detector));
    for (const other of others) {
      if (!lit.has(other.id)) note(other.id, intersection(zone, other.floor), detector.id);
    }
    note(null, difference(zone, indoors), detector.id);
  }
  return [...found]
    .map(([other, { regions, devices }]) => {
      const region = union(regions);
      return { room: other, region, area: areaOf(region), devices };
    })
    .toSorted((a, b) => b.area - a.area);
}
