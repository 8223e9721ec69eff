import type { Detector, Region } from "#engine";
import type { DeviceZones } from "../contract.ts";
import type { DrawnCoverage } from "./drawn-results.ts";
import { roomsOn } from "./pick.ts";
import type { Held, Painted } from "./picture.ts";
import { type Bounds, boundsOf } from "./view.ts";

/** Results of one storey that are painted, by the ids of their devices and rooms. */
export interface Results {
  readonly zones: ReadonlyMap<string, DeviceZones>;
  readonly rooms: ReadonlyMap<string, DrawnCoverage>;
}

/** Results of the part of a picture that a drag changes, or of the rest. Zones that overlap stay in one part. */
export function resultsOf(
  { site, storey, calculated, tried, held }: Painted,
  part: "still" | "held",
): Results {
  const here = roomsOn(site, storey);
  const zones = new Map<string, DeviceZones>();
  const rooms = new Map<string, DrawnCoverage>();
  const own = site.detectors.filter(({ room }) => here.has(room) && room !== tried?.room);
  for (const device of [...own, ...(tried?.devices ?? [])]) {
    const known = calculated.zones.get(device.id);
    if (known && isHeld(held, device) === (part === "held")) zones.set(device.id, known);
  }
  // A room that has no detector yet is not full of holes: it is not planned.
  const planned = new Set([...site.detectors, ...(tried?.devices ?? [])].flatMap(({ controls }) => controls));
  for (const id of here.keys()) {
    const known = planned.has(id) ? calculated.rooms.get(id) : undefined;
    if (known && (held?.rooms.has(id) ?? false) === (part === "held")) rooms.set(id, known);
  }
  return { zones, rooms };
}

const isHeld = (held: Held | undefined, { id, room }: Detector): boolean =>
  held !== undefined && (held.devices.has(id) || held.rooms.has(room));

/** Whether any result differs between two states. */
export const differ = (a: Results, b: Results): boolean =>
  changedIn(a.zones, b.zones).length > 0 || changedIn(a.rooms, b.rooms).length > 0;

/** Bounds of all results. */
export const boundsOfResults = ({ zones, rooms }: Results): Bounds | undefined =>
  joined([...[...zones.values()].map(boundsOfZones), ...[...rooms.values()].map(boundsOfRoom)]);

function changedIn<T>(a: ReadonlyMap<string, T>, b: ReadonlyMap<string, T>): T[] {
  const changed: T[] = [];
  for (const [id, value] of a) if (b.get(id) !== value) changed.push(value);
  for (const [id, value] of b) if (a.get(id) !== value) changed.push(value);
  return changed;
}

const zoneBounds = new WeakMap<DeviceZones, { readonly bounds: Bounds | undefined }>();
const roomBounds = new WeakMap<DrawnCoverage, { readonly bounds: Bounds | undefined }>();

function boundsOfZones(zones: DeviceZones): Bounds | undefined {
  const known = zoneBounds.get(zones) ?? { bounds: boundsOfRegions(Object.values(zones)) };
  zoneBounds.set(zones, known);
  return known.bounds;
}

function boundsOfRoom(room: DrawnCoverage): Bounds | undefined {
  const known = roomBounds.get(room) ?? {
    bounds: boundsOfRegions([...room.gaps, ...room.spill].map(({ region }) => region)),
  };
  roomBounds.set(room, known);
  return known.bounds;
}

const boundsOfRegions = (regions: readonly Region[]): Bounds | undefined =>
  boundsOf(regions.flatMap((region) => region.flatMap(({ outline }) => outline)));

function joined(all: readonly (Bounds | undefined)[]): Bounds | undefined {
  return boundsOf(
    all.flatMap((one): [number, number][] =>
      one
        ? [
            [one.left, one.bottom],
            [one.right, one.top],
          ]
        : [],
    ),
  );
}
