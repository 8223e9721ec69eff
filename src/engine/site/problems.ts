import type { Problem } from "../check/index.ts";
import { lookUp } from "./look-up.ts";
import { detectorProblems } from "./problems/detectors.ts";
import { openingProblems } from "./problems/openings.ts";
import { outlineProblems } from "./problems/outlines.ts";
import { recordProblems } from "./problems/records.ts";
import { roomProblems } from "./problems/rooms.ts";
import { thingProblems } from "./problems/things.ts";
import type { Site } from "./site.ts";

/**
 * Everything that is wrong with a plan as it was drawn, read or merged.
 *
 * @param site - Snapshot of the job; any content is accepted, nothing throws.
 * @returns Problems in the order records, outlines, rooms, openings, things, detectors; empty where the plan is sound.
 * @example A detector whose room was deleted on another phone comes out as "detector-in-deleted-room"
 */
export function siteProblems(site: Site): readonly Problem[] {
  const look = lookUp(site);
  return [
    ...recordProblems(look),
    ...outlineProblems(look),
    ...roomProblems(look),
    ...openingProblems(look),
    ...thingProblems(look),
    ...detectorProblems(look),
  ];
}
