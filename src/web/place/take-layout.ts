import type { Detector, Layout, Room, Site } from "#engine";
import type { EditStep } from "../contract.ts";

/** A layout that a person chose for a room, with the demands it was placed for. */
export interface Taken {
  readonly room: string;
  readonly layout: Layout;
  readonly demand: Room["demand"];
}

/** The site with the demand that was chosen for this run; undefined: each room is placed for its own. */
export function siteAsked(site: Site, rooms: readonly string[], demand: Room["demand"] | undefined): Site {
  if (demand === undefined) return site;
  const asked = (room: Room): Room => (rooms.includes(room.id) ? { ...room, demand } : room);
  return { ...site, rooms: site.rooms.map(asked) };
}

/**
 * The steps that put layouts into the job: pinned detectors stay as they are, the room's others give way,
 * new ones get ids of their own and the next free tags.
 */
export function stepsToTake(site: Site, taken: readonly Taken[], newId: () => string): readonly EditStep[] {
  const rooms = new Set(taken.map(({ room }) => room));
  const staying = site.detectors.filter(({ room, pinned }) => pinned || !rooms.has(room));
  const stays = new Set(staying.map(({ id }) => id));
  const tags = new Set(staying.map(({ tag }) => tag));
  const removals = site.detectors
    .filter(({ id }) => !stays.has(id))
    .map(({ id }): EditStep => ({ do: "remove", kind: "detectors", id }));
  const additions: EditStep[] = [];
  for (const { room, layout, demand } of taken) {
    const before = site.rooms.find(({ id }) => id === room);
    if (before !== undefined && !sameDemand(before.demand, demand))
      additions.push({ do: "set", kind: "rooms", id: room, fields: { demand } });
    for (const device of layout.devices) {
      if (stays.has(device.id)) continue;
      const tag = nextTag(site, room, tags);
      tags.add(tag);
      const record: Detector = { ...device, id: newId(), tag, room };
      additions.push({ do: "put", kind: "detectors", record });
    }
  }
  return [...removals, ...additions];
}

/** B, the storey's place in the building from below, and a running number: B1.04. */
export function nextTag(site: Site, room: string, taken: ReadonlySet<string>): string {
  const storey = site.rooms.find(({ id }) => id === room)?.storey;
  const order = site.storeys.toSorted((a, b) => a.elevation - b.elevation);
  const level =
    Math.max(
      0,
      order.findIndex(({ id }) => id === storey),
    ) + 1;
  for (let number = 1; ; number += 1) {
    const tag = `B${level}.${String(number).padStart(2, "0")}`;
    if (!taken.has(tag)) return tag;
  }
}

/** Detectors with fresh tags, in their order: for a site that has none yet. */
export function tagged(site: Site, devices: readonly Detector[]): readonly Detector[] {
  const tags = new Set(site.detectors.map(({ tag }) => tag));
  return devices.map((device) => {
    const tag = nextTag(site, device.room, tags);
    tags.add(tag);
    return { ...device, tag };
  });
}

/** New tags for detectors that share theirs with another; everything else stays as it is. */
export function stepsForTags(site: Site, detectors: readonly string[]): readonly EditStep[] {
  const tags = new Set(site.detectors.map(({ tag }) => tag));
  return detectors.flatMap((id): readonly EditStep[] => {
    const detector = site.detectors.find((one) => one.id === id);
    if (detector === undefined) return [];
    const tag = nextTag(site, detector.room, tags);
    tags.add(tag);
    return [{ do: "set", kind: "detectors", id, fields: { tag } }];
  });
}

const sameDemand = (a: Room["demand"], b: Room["demand"]): boolean =>
  a.catch === b.catch && a.walk === b.walk && a.hold === b.hold;
