import type { Metres } from "../quantity/index.ts";
import { unreachable } from "../quantity/index.ts";
import type { Interference, PlanningDefaults } from "./site.ts";

/**
 * How far a detector must stay from a source.
 *
 * @param source - The source. @param defaults - The job's planning numbers.
 * @returns Its own clearance where one is entered; else that of its kind. A sunlit window has none: only its being seen counts. [m]
 * @source COMMON-PRACTICE
 * @example An air outlet: 1.5 m
 */
export function clearanceOf(source: Interference, defaults: PlanningDefaults): Metres {
  if (source.clearance !== undefined) return source.clearance;
  switch (source.kind) {
    case "heater":
    case "door-curtain":
      return defaults.clearances.heater;
    case "machine":
      // Its warmth and movement matter like those of a heater.
      return defaults.clearances.heater;
    case "air-outlet":
      return defaults.clearances.airOutlet;
    case "sunlit-window":
      return 0;
    default:
      return unreachable(source.kind);
  }
}
