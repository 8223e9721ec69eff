import { distanceToSegment } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import { clearanceOf, type Detector, type Interference } from "../site/index.ts";
import type { PreparedRoom } from "./prepared-room.ts";
import type { InterferenceSeen } from "./results.ts";
import { seesSource } from "./spill-zone.ts";
import { deviceOf } from "./watchers.ts";

/** A source that hangs closer to a detector than it may. */
export interface ClearanceBroken {
  readonly source: Interference;
  readonly device: Detector;
  /** Distance in plan. [m] */
  readonly distance: Metres;
  readonly limit: Metres;
}

/**
 * Sources of false triggering that the detectors of a room look at, with the doors open.
 *
 * @param prepared - The prepared room. @param detectors - Devices that hang in it.
 * @returns One entry for each pair of source and device; nearest first.
 * @source SIGHT-GEOMETRY
 * @example A heater 3 m away in plain view of a detector that reaches 4 m
 */
export function interferenceSeen(
  prepared: PreparedRoom,
  detectors: readonly Detector[],
): readonly InterferenceSeen[] {
  const scene = prepared.open();
  return scene.site.interference
    .flatMap((source) =>
      detectors.flatMap((detector) => {
        const model = prepared.look.modelById.get(detector.model);
        const seen = model && seesSource(scene, { device: deviceOf(detector, model), source });
        return seen ? [{ source: source.id, device: detector.id, distance: seen.distance }] : [];
      }),
    )
    .toSorted((a, b) => a.distance - b.distance);
}

/**
 * Detectors of a room that hang too near a source in it.
 *
 * @param prepared - The prepared room. @param detectors - Devices that hang in it.
 * @returns Pairs whose distance in plan is below the source's own clearance, or the job's figure for its kind.
 * @source COMMON-PRACTICE
 * @example An air outlet 1.0 m from a detector, 1.5 m needed
 */
export function clearancesBroken(
  prepared: PreparedRoom,
  detectors: readonly Detector[],
): readonly ClearanceBroken[] {
  const { look, room } = prepared;
  return look.interferenceOf(room.id).flatMap((source) => {
    const limit = clearanceOf(source, look.site.defaults);
    return detectors.flatMap((device) => {
      const distance = distanceToSegment(device.at, [source.at, source.to ?? source.at]);
      return distance < limit ? [{ source, device, distance, limit }] : [];
    });
  });
}
