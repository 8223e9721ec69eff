import type { Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import { floorHeight } from "./floor.ts";
import type { SiteLookUp } from "./look-up.ts";
import type { Detector } from "./site.ts";

/**
 * Height of a lens above the floor at a place, in its own room or in another of its storey.
 *
 * @param look - The site. @param detector - Its height counts from the floor below it. @param place - Place and its room; null: outside, taken as high as the detector's room.
 * @returns Below 0 where that floor lies above the lens. [m]
 * @source DERIVED-HERE
 * @example 2.5 m above a landing at 1.5 m, seen from the room's floor: 4 m
 */
export function lensOver(
  look: SiteLookUp,
  detector: Pick<Detector, "room" | "at" | "height">,
  place: { readonly room: string | null; readonly at: Point },
): Metres {
  const own = look.roomById.get(detector.room);
  const other = place.room === null ? undefined : look.roomById.get(place.room);
  const below = (own?.floor ?? 0) + floorHeight(look.floorPiecesOf(detector.room), detector.at);
  const there = other ? other.floor + floorHeight(look.floorPiecesOf(other.id), place.at) : (own?.floor ?? 0);
  return below + detector.height - there;
}
