import type { Metres } from "../quantity/index.ts";
import type { Detector, Room } from "../site/index.ts";

/** Least height of the tops of zones 1 and 2. [m] */
export const ZONE_TOP: Metres = 2.25;

/**
 * Zones of a bath or shower in which the detectors of a room hang, as far as that is known.
 *
 * What somebody measured counts first. Above the tops of the zones is outside, wherever that is in the room: the tops are 2.25 m or
 * the highest fixed outlet, whichever is higher, so that without the outlet's height nothing follows from the height of a ceiling.
 *
 * @param room - Its highest outlet above the floor. [m] @param detectors - All of the site; height above the local floor. [m]
 * @returns Zone by id of the detector; absent where nobody knows.
 * @source IEC-60364-7-701
 * @example Outlet at 2.1 m, detector at 2.5 m: outside; outlet at 2.6 m: absent
 */
export function wetZones(
  room: Pick<Room, "id" | "highestOutlet">,
  detectors: readonly Pick<Detector, "id" | "room" | "height" | "wetZone">[],
): Readonly<Record<string, 0 | 1 | 2 | "outside">> {
  const { highestOutlet } = room;
  const top = highestOutlet === undefined ? undefined : Math.max(ZONE_TOP, highestOutlet);
  return Object.fromEntries(
    detectors
      .filter((one) => one.room === room.id)
      .flatMap((one): (readonly [string, 0 | 1 | 2 | "outside"])[] => {
        if (one.wetZone !== undefined) return [[one.id, zoneOf[one.wetZone]]];
        return top !== undefined && one.height > top ? [[one.id, "outside"]] : [];
      }),
  );
}

const zoneOf = { "0": 0, "1": 1, "2": 2, outside: "outside" } as const;
