import {
  coverageOf,
  type Detector,
  deviceZone,
  type Finding,
  findingsOf,
  orderedFindings,
  type PreparedRoom,
  prepareRoom,
  type RoomCoverage,
  reviewPlan,
  type Site,
  type ZoneKind,
} from "#engine";
import type { DeviceZones } from "../contract.ts";
import { groundParts, sameParts } from "./room-key.ts";

const kinds: readonly ZoneKind[] = ["seated", "towards", "across", "sound"];

/** Zones of a device with the job's margins, doors as they are drawn. */
export function zonesOf(site: Site, device: Detector): DeviceZones {
  const model = site.models.find(({ id }) => id === device.model);
  if (!model || !site.rooms.some(({ id }) => id === device.room)) return {};
  const others = site.detectors.filter(({ id }) => id !== device.id);
  const asked = { ...site, detectors: [...others, device] };
  const zones: Partial<Record<ZoneKind, DeviceZones[ZoneKind]>> = {};
  for (const kind of kinds)
    if ((model.zones[kind]?.length ?? 0) > 0)
      zones[kind] = deviceZone(asked, { device: device.id, kind, doors: "drawn" });
  // Without a figure of its own for walking across, the one for walking towards counts: the zone is the same.
  if (!zones.across && zones.towards) zones.across = zones.towards;
  return zones as DeviceZones;
}

/** Rooms as they were last prepared: what costs time stays while only detectors move. */
export function roomKeeper(): {
  readonly coverage: (site: Site, room: string) => RoomCoverage;
  readonly forget: () => void;
} {
  const kept = new Map<string, { readonly parts: readonly unknown[]; readonly prepared: PreparedRoom }>();
  return {
    coverage: (site, room) => {
      const parts = groundParts(site, room);
      const known = kept.get(room);
      const prepared = known && sameParts(known.parts, parts) ? known.prepared : prepareRoom(site, room);
      if (prepared !== known?.prepared) kept.set(room, { parts, prepared });
      return coverageOf(prepared, site.detectors);
    },
    forget: () => kept.clear(),
  };
}

/** All findings of the job, from the plan itself and from its rooms, in reading order. */
export const allFindings = (site: Site, rooms: readonly RoomCoverage[]): readonly Finding[] =>
  orderedFindings(site, [...reviewPlan(site), ...rooms.flatMap(({ problems }) => findingsOf(problems))]);
