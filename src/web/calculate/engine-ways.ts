import {
  type Detector,
  deviceZone,
  type Finding,
  type RoomCoverage,
  type Site,
  type ZoneKind,
} from "#engine";
import type { DeviceZones } from "../contract.ts";

const kinds: readonly ZoneKind[] = ["seated", "towards", "across", "sound"];

/** Zones of a device with the job's margins, doors as they are drawn. */
export function zonesOf(site: Site, device: Detector): DeviceZones {
  const model = site.models.find(({ id }) => id === device.model);
  if (!model) return {};
  const asked = { ...site, detectors: [...site.detectors.filter(({ id }) => id !== device.id), device] };
  return Object.fromEntries(
    kinds
      .filter((kind) => (model.zones[kind]?.length ?? 0) > 0)
      .map((kind) => [kind, deviceZone(asked, { device: device.id, kind, doors: "drawn" })]),
  );
}

export function coverageNow(_site: Site, room: string): RoomCoverage {
  return {
    room,
    demand: { room, standing: [], asked: [], bays: [], unreachable: [], dwell: [], problems: [] },
    demanded: { walk: 0, hold: 0, catch: 0 },
    covered: { walk: 0, hold: 0, catch: 0 },
    gaps: [],
    spill: [],
    interference: [],
    darkWalks: [],
    checks: [],
    problems: [],
  };
}

export function findingsOf(_site: Site, _rooms: readonly RoomCoverage[]): readonly Finding[] {
  return [];
}
