import type { Metres } from "../quantity/index.ts";
import type { Detector, DwellPlace, Room } from "../site/index.ts";
import type { SourceId } from "../source/index.ts";

/** Least height of the tops of zones 1 and 2. [m] */
export const ZONE_TOP: Metres = 2.25;

/** How far zones reach on the floor: zone 2 beside a tub or tray, zone 1 round the outlet of a shower without one. [m] */
export const zoneExtent = {
  rows: { besideTub: 0.6, roundOutlet: 1.2 },
  source: "IEC-60364-7-701-EXTENT",
} as const satisfies { readonly rows: object; readonly source: SourceId };

/** Half the diagonal of a large tub or tray: where a person entered less, the place on the plan is that of a person and not of the tub. Common practice, no source. [m] */
const largestHalf = { bath: 0.95, shower: 0.7 } as const;

/** Zone of a bath or shower; "1 or 2" where nobody knows whether a shower has a tray. */
export type WetZone = 0 | 1 | 2 | "1 or 2" | "outside";

/** The zone that a device hangs in, with what that rests on: measured, its height, or how far it hangs from baths and showers on the plan. */
export interface ZoneOfDevice {
  readonly zone: WetZone;
  readonly from: "measured" | "height" | "extent";
}

/**
 * Zones of a bath or shower in which the detectors of a room hang, as far as that is known.
 *
 * What somebody measured counts first. Above the tops of the zones is outside, wherever that is in the room: the tops are 2.25 m or
 * the highest fixed outlet, whichever is higher, so that without the outlet's height nothing follows from the height of a ceiling.
 * Below them, or where the outlet is unknown, the distance from the baths and showers on the plan counts; walls between are left out,
 * which never calls a place outside that is not. A shower may have a tray or none: between what both would say nobody knows.
 *
 * @param room - Its highest outlet above the floor. [m] @param detectors - All of the site; height above the local floor. [m] @param places - Dwell places of the site; a bath or shower with the radius of its tub or tray. [m]
 * @returns Zone by id of the detector; absent where nobody knows.
 * @source IEC-60364-7-701, IEC-60364-7-701-EXTENT
 * @example Outlet at 2.1 m, detector at 2.5 m: outside; outlet at 2.6 m, no shower on the plan: absent; 2 m beside a shower: outside
 */
export function wetZones(
  room: Pick<Room, "id" | "highestOutlet">,
  detectors: readonly Pick<Detector, "id" | "room" | "at" | "height" | "wetZone">[],
  places: readonly Pick<DwellPlace, "room" | "kind" | "at" | "radius">[],
): Readonly<Record<string, ZoneOfDevice>> {
  const { highestOutlet } = room;
  const top = highestOutlet === undefined ? undefined : Math.max(ZONE_TOP, highestOutlet);
  const baths = places.filter(
    (place) => place.room === room.id && (place.kind === "bath" || place.kind === "shower"),
  );
  return Object.fromEntries(
    detectors
      .filter((one) => one.room === room.id)
      .flatMap((one): (readonly [string, ZoneOfDevice])[] => {
        if (one.wetZone !== undefined) return [[one.id, { zone: zoneOf[one.wetZone], from: "measured" }]];
        if (top !== undefined && one.height > top) return [[one.id, { zone: "outside", from: "height" }]];
        const zone = worstOf(baths.map((bath) => zoneBeside(bath, one)));
        if (zone === undefined) return [];
        // How high the zones reach is not known: inside their extent it may still hang above them.
        return zone === "outside" || top !== undefined || one.height <= ZONE_TOP
          ? [[one.id, { zone, from: "extent" }]]
          : [];
      }),
  );
}

const zoneOf = { "0": 0, "1": 1, "2": 2, outside: "outside" } as const;

/** By its distance from one bath or shower; undefined where it depends on a tray that nobody entered. */
function zoneBeside(
  { kind, at: middle, radius }: Pick<DwellPlace, "kind" | "at" | "radius">,
  { at }: Pick<Detector, "at">,
): WetZone | undefined {
  const { besideTub, roundOutlet } = zoneExtent.rows;
  const away = Math.hypot(at[0] - middle[0], at[1] - middle[1]);
  if (away <= radius) return 1;
  const inside = away <= radius + besideTub;
  const shower = kind === "shower";
  if (inside && !shower) return 2;
  if (inside && away <= roundOutlet) return "1 or 2";
  const beyond =
    away > Math.max(radius, largestHalf[shower ? "shower" : "bath"]) + besideTub &&
    (!shower || away > roundOutlet);
  return beyond ? "outside" : undefined;
}

/** Of several the one that asks for most; one of which nobody knows keeps the others from saying outside. */
function worstOf(zones: readonly (WetZone | undefined)[]): WetZone | undefined {
  if (zones.length === 0) return undefined;
  for (const zone of [0, 1, "1 or 2", 2] as const) if (zones.includes(zone)) return zone;
  return zones.includes(undefined) ? undefined : "outside";
}
