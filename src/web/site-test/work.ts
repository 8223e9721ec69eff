import {
  type SetForTest,
  type Site,
  type StepState,
  stagesOf,
  type WorkOrder,
  type WorkStage,
  type WorkState,
  wiringOfSite,
  workOrder,
  workState,
} from "#engine";
import { installationOf, standingEntries } from "#job";
import type { SettingsKnown } from "../calculate/set-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { remembering } from "../plan/remembering.ts";

/** The order of work of the open job; the same as long as plan, wiring and settings are. */
export function workOf(): (job: OpenJob, settings: SettingsKnown | undefined) => WorkState {
  const order = remembering(
    (
      site: Site,
      boards: OpenJob["kept"]["boards"],
      circuits: OpenJob["kept"]["circuits"],
      settings: SettingsKnown | undefined,
    ): WorkOrder =>
      workOrder(site, wiringOfSite(site, installationOf({ boards, circuits })).model, {
        settings: settingsForTest(settings),
      }),
  );
  const state = remembering(
    (
      known: WorkOrder,
      testEntries: OpenJob["kept"]["testEntries"],
      swaps: OpenJob["kept"]["swaps"],
      detectors: OpenJob["file"]["detectors"],
    ): WorkState => workState(known, standingEntries({ testEntries, swaps, detectors })),
  );
  return ({ site, kept, file }, settings) =>
    state(order(site, kept.boards, kept.circuits, settings), kept.testEntries, kept.swaps, file.detectors);
}

/** What is set on each detector, as far as the test needs it. */
function settingsForTest(known: SettingsKnown | undefined): ReadonlyMap<string, SetForTest> {
  return new Map(
    (known?.devices ?? []).map(({ context, settings }) => [
      context.device,
      { offDelay: settings.offDelay.value, threshold: settings.threshold.value },
    ]),
  );
}

/** What one works on in one go: a group of circuits that are dead together, or a room with the power on. */
export type WorkPlace =
  | { readonly kind: "group"; readonly id: string }
  | { readonly kind: "room"; readonly id: string };

/** Its steps, in their order, by stage. */
export function stepsAt(
  { order, steps }: WorkState,
  place: WorkPlace,
): readonly { readonly stage: WorkStage; readonly steps: readonly StepState[] }[] {
  return stagesOf(order, place.kind === "room" ? { room: place.id } : { group: place.id })
    .filter(({ stage }) => roomStages.has(stage) === (place.kind === "room"))
    .map(({ stage, steps: own }) => ({ stage, steps: own.flatMap(({ id }) => steps.get(id) ?? []) }));
}

/** Stages that are gone through room by room, with the power on. */
const roomStages: ReadonlySet<WorkStage> = new Set(["walk-test", "readings", "emergency"]);

/** How far one is: steps, those that are behind, and whether one failed. */
export function progressAt(
  state: WorkState,
  place: WorkPlace,
): { readonly all: number; readonly behind: number; readonly failed: number } {
  const all = stepsAt(state, place).flatMap(({ steps }) => steps);
  return {
    all: all.length,
    behind: all.filter(({ status }) => status === "done" || status === "not-applicable").length,
    failed: all.filter(({ status }) => status === "failed").length,
  };
}

/** The step that comes next; undefined when nothing is left. */
export const nextAt = (state: WorkState, place: WorkPlace): StepState | undefined => {
  const all = stepsAt(state, place).flatMap(({ steps }) => steps);
  return (
    all.find(({ status }) => status === "open" || status === "part") ??
    all.find(({ status }) => status === "failed" || status === "waiting")
  );
};
