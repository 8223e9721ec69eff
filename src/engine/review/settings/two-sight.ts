import { deviceZone, roomDemand } from "../../coverage/index.ts";
import { areaOf, difference, intersection, type Region, union } from "../../geometry/index.ts";
import type { Room, SiteLookUp } from "../../site/index.ts";

/**
 * Whether each point of the floor of rooms is seen by two devices that switch: then one that fails leaves nobody in the dark.
 *
 * @param look - The site. @param rooms - Rooms that one load lights. @param switching - Ids of the devices whose contacts feed it:
 * where all others only signal to one of them, its failing leaves everybody in the dark.
 * @returns False with fewer than two of these in a room, or where more than the smallest gap that counts is seen by one alone.
 * @source DERIVED-HERE
 * @example Two devices side by side with joined contacts, each of which sees the whole room: true; a master and its slave: false
 */
export const seenByTwo = (
  look: SiteLookUp,
  { rooms, switching }: { readonly rooms: readonly Room[]; readonly switching: ReadonlySet<string> },
): boolean => rooms.length > 0 && rooms.every((room) => roomSeenByTwo(look, room, switching));

function roomSeenByTwo(look: SiteLookUp, room: Room, switching: ReadonlySet<string>): boolean {
  const detectors = look.detectorsFor(room.id).filter(({ id }) => switching.has(id));
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
