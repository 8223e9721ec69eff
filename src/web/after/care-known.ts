import {
  type CarePoint,
  type CareQuestion,
  type CareState,
  careDue,
  careOccasions,
  careOfJob,
  carePoints,
  careStates,
  type Occasion,
  type SetForTest,
} from "#engine";
import { installationOf, type JobTestEntry, standingEntries, stationReadings } from "#job";
import type { SettingsKnown } from "../calculate/set-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { localDay } from "../site-test/local-time.ts";

/** All that the screen knows of what comes after hand-over. */
export interface CareKnown {
  /** Day of the first hand-over; undefined: none yet. */
  readonly handedOver: string | undefined;
  readonly today: string;
  readonly occasions: readonly Occasion[];
  readonly due: ReturnType<typeof careDue>;
  /** Rooms that a visit looks at, in the order of the plan. */
  readonly rooms: (occasion: Occasion) => readonly string[];
  /** Points of a room, or of the job where no room is named, each with where it stands. */
  readonly states: (occasion: Occasion, room?: string) => readonly CareState<JobTestEntry>[];
}

/** Visits of the open job. @param settings - As derived; delays cannot be asked for before they are known. */
export function careKnown(job: OpenJob, settings: SettingsKnown | undefined, now = new Date()): CareKnown {
  const { site, kept, file } = job;
  const { testEntries } = kept;
  const handedOver = kept.revisions[0]?.date;
  const today = localDay(now);
  const found = installationOf(file);
  const question: CareQuestion = {
    settings: settingsForCare(settings),
    found,
    entries: standingEntries({ testEntries, swaps: kept.swaps, detectors: file.detectors }),
    readings: (room) => stationReadings(testEntries, room),
  };
  const due = careDue(handedOver, {
    entries: testEntries,
    luminaires: site.luminaires.flatMap(({ id, emergency }) => (emergency ? [id] : [])),
    years: file.details.inspectionYears,
  });
  const begun = new Set(testEntries.flatMap(({ occasion }) => occasion ?? []));
  const pointsOf = (occasion: Occasion, room: string | undefined): readonly CarePoint[] =>
    room === undefined
      ? careOfJob(site, { occasion, found, inspection: due.inspection })
      : carePoints(site, room, { occasion, question });
  return {
    handedOver,
    today,
    occasions: careOccasions(handedOver, { today, begun }),
    due,
    rooms: (occasion) => site.rooms.filter(({ id }) => pointsOf(occasion, id).length > 0).map(({ id }) => id),
    states: (occasion, room) => careStates(pointsOf(occasion, room), occasion.id, testEntries),
  };
}

const settingsForCare = (known: SettingsKnown | undefined): ReadonlyMap<string, SetForTest> =>
  new Map(
    (known?.devices ?? []).map(({ context, settings }) => [
      context.device,
      {
        offDelay: settings.offDelay.value,
        threshold: settings.threshold.value,
        ...(context.longestDelay ? { longestDelay: context.longestDelay.delay } : {}),
      },
    ]),
  );

/** How far one is: points, those that were looked at, those that failed. */
export const progressOfCare = (
  states: readonly CareState[],
): { readonly all: number; readonly looked: number; readonly failed: number } => ({
  all: states.length,
  looked: states.filter(({ entry }) => entry).length,
  failed: states.filter(({ check }) => check.verdict === "fail").length,
});
