import { deviceZone, roomDemand } from "../../coverage/index.ts";
import { areaOf, difference, intersection, type Region, union } from "../../geometry/index.ts";
import type { Room, SiteLookUp } from "../../site/index.ts";

/**
 * Whether each point of the floor of rooms is seen by two devices: then one that fails leaves nobody in the dark.
 *
 * @param look - The site. @param rooms - Rooms that one load lights.
 * @returns False with fewer than two devices in a room, or where more than the smallest gap that counts is seen by one alone.
 * @source DERIVED-HERE
 * @example Two devices side by side, each of which sees the whole room: true
 */
export const seenByTwo = (look: SiteLookUp, rooms: readonly Room[]): boolean =>
  rooms.length > 0 && rooms.every((room) => roomSeenByTwo(look, room));

function roomSeenByTwo(look: SiteLookUp, room: Room): boolean {
  const detectors = look.detectorsFor(room.id);
  if (detectors.length < 2) return false;
  const floor = roomDemand(look.site, room.id).standing;
  const zones = detectors.map(({ id, model }) => {
    const zoned = look.modelById.get(model)?.zones;
    const kind = zoned?.towards ? "towards" : "across";
    return intersection(deviceZone(look.site, { device: id, kind, doors: "closed" }), floor);
  });
  let once: Region = [];
  let twice: Region = [];
  for (const zone of zones) {
    twice = union([twice, intersection(once, zone)]);
    once = union([once, zone]);
  }
  return areaOf(floor) > 0 && areaOf(difference(floor, twice)) <= look.site.defaults.gapArea;
}
