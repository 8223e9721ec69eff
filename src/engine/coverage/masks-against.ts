import { type LensMask, maskForSource, masksForFloor } from "../detector/index.ts";
import { contains, type Region, ringsOf } from "../geometry/index.ts";
import { type Detector, type Interference, lensOver, type SiteLookUp } from "../site/index.ts";

/**
 * Masks that blind a detector for people on a piece of floor, wherever that floor lies above or below its own.
 *
 * @param look - The site. @param detector - The detector. @param floor - What is to be blinded, of one room; null: outside. [m]
 * @returns As `masksForFloor`; undefined where all of it lies above the lens, too.
 * @source MASK-GEOMETRY
 * @example A corridor 0.5 m lower than the room: by a lens that hangs 0.5 m higher
 */
export function masksAgainstFloor(
  look: SiteLookUp,
  detector: Detector,
  floor: { readonly room: string | null; readonly region: Region },
): readonly LensMask[] | undefined {
  const { room, region } = floor;
  const steps = room === null ? [] : look.floorPiecesOf(room).flatMap(({ footprint }) => footprint);
  const heights = [...ringsOf(region).flat(), ...steps.filter((at) => contains(region, at))].map((at) =>
    lensOver(look, detector, { room, at }),
  );
  if (heights.length === 0) return undefined;
  return masksForFloor(
    { ...detector, height: Math.min(...heights), overLowest: Math.max(...heights) },
    region,
  );
}

/** Mask that blinds a detector for a source of false triggering, wherever the floor below it lies. @param look - The site. @param detector - The detector. @param source - The source. @returns As `maskForSource`. @source MASK-GEOMETRY @example A heater on a landing 1.5 m up: by a lens that hangs 1.5 m lower */
export const maskAgainstSource = (
  look: SiteLookUp,
  detector: Detector,
  source: Interference,
): LensMask | undefined => maskForSource({ ...detector, height: lensOver(look, detector, source) }, source);
