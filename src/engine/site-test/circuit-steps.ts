import { type GroupCase, groupSubject, maker, type StepDraft } from "./group-case.ts";
import { isolationOf } from "./isolation-steps.ts";
import type { StepSubject } from "./site-entry.ts";
import { deadTests, liveTests } from "./test-steps.ts";
import { type StepName, stepId, type WorkStep } from "./work-step.ts";

/** Warm-up of a detector whose data sheet does not say. [s] @source COMMON-PRACTICE */
export const USUAL_WARM_UP = 45;

/** A measured height may be this far from the planned one. [m] @source COMMON-PRACTICE */
export const HEIGHT_OFF = 0.1;

/** What is looked at before any test. */
const INSPECTED = ["cable", "protective-conductor", "colours", "box", "cover", "water", "label"];
/** What is ticked when a detector goes up. */
const FITTED = ["device", "place", "turn", "mask", "settings"];
/** What every detector must do once the power is on. */
const FUNCTIONS = ["on-at-entry", "off-in-test"];

/**
 * Steps of one group of circuits, from disconnecting to functional tests.
 *
 * @param given - The group with its wiring and detectors.
 * @returns Steps in order; each needs those of the stage before it.
 * @source IEC-60364-6
 * @source EN-50110-1
 * @example See `workOrder`
 */
export function circuitSteps(given: GroupCase): readonly WorkStep[] {
  const isolation = isolationOf(given);
  const lastOf = (steps: readonly WorkStep[], ...names: readonly StepName[]): readonly string[] =>
    steps.filter(({ name }) => names.includes(name)).map(({ id }) => id);
  const ready = lastOf(isolation, "prove-dead", "adjacent");
  const { detectors } = given;
  const make = maker(given);
  const each = (draft: (one: GroupCase["detectors"][number]) => StepDraft): readonly WorkStep[] =>
    detectors.map((one) => make({ room: one.record.room, ...draft(one) }));
  const about = ({ record }: GroupCase["detectors"][number]): StepSubject => ({
    kind: "detector",
    id: record.id,
  });
  const inspection = each((one) => ({
    name: "inspection",
    stage: "inspection",
    about: about(one),
    parts: INSPECTED,
    result: { kind: "verdict" },
    state: "dead",
    needs: ready,
    source: "IEC-60364-6",
  }));
  const linkIn = detectors
    .filter(({ wired }) => wired.output !== undefined)
    .map((one) =>
      make({
        name: "link-in",
        stage: "dead-tests",
        about: about(one),
        room: one.record.room,
        state: "dead",
        mayNotApply: true,
        cautions: ["open-contact-trap", "link-still-in"],
        needs: [stepId("inspection", about(one))],
        source: "OPEN-CONTACT",
      }),
    );
  const tests = deadTests(given, [...lastOf(inspection, "inspection"), ...lastOf(linkIn, "link-in")]);
  const tested = tests.map(({ id }) => id);
  const linkOut = linkIn.map((step) =>
    make({
      name: "link-out",
      stage: "dead-tests",
      about: step.about,
      room: step.room,
      state: "dead",
      mayNotApply: true,
      cautions: ["link-still-in"],
      needs: [step.id, ...tested],
      source: "OPEN-CONTACT",
    }),
  );
  const fitting = detectors.flatMap((one) => {
    const { record } = one;
    const needs = [
      ...linkOut.filter((step) => step.about.id === record.id).map(({ id }) => id),
      ...(linkOut.some((step) => step.about.id === record.id) ? [] : tested),
    ];
    const common = { stage: "fitting", about: about(one), room: record.room, state: "dead" } as const;
    return [
      make({
        ...common,
        name: "fitting",
        needs,
        parts: record.masks.length > 0 ? FITTED : FITTED.filter((part) => part !== "mask"),
      }),
      make({
        ...common,
        name: "height",
        needs: [],
        state: "any",
        planned: record.height,
        result: {
          kind: "reading",
          reading: "height",
          limit: {
            least: record.height - HEIGHT_OFF,
            most: record.height + HEIGHT_OFF,
            source: "COMMON-PRACTICE",
          },
        },
      }),
    ];
  });
  const power = make({
    name: "power-up",
    stage: "power-up",
    about: groupSubject(given),
    state: "any",
    cautions: ["link-still-in", "live-work"],
    needs: [...tested, ...lastOf(linkOut, "link-out"), ...lastOf(fitting, "fitting")],
    source: "EN-50110-1",
  });
  const warmUp = each((one) => {
    const model = given.site.models.find(({ id }) => id === one.record.model);
    return {
      name: "warm-up",
      stage: "power-up",
      about: about(one),
      state: "live",
      wait: model?.warmUp ?? USUAL_WARM_UP,
      cautions: model?.warmUp === undefined ? ["warm-up-unknown"] : [],
      needs: [power.id],
    };
  });
  const live = liveTests(given, power.id);
  const functional = each((one) => ({
    name: "functional",
    stage: "functional",
    about: about(one),
    state: "live",
    parts: functionsOf(given, one.record.id),
    result: { kind: "verdict" },
    cautions: ["presence-is-no-safety"],
    needs: [stepId("warm-up", about(one)), ...live.map(({ id }) => id)],
    source: "IEC-60364-6",
  }));
  return [
    ...isolation,
    ...inspection,
    ...linkIn,
    ...tests,
    ...linkOut,
    ...fitting,
    power,
    ...warmUp,
    ...live,
    ...functional,
  ];
}

function functionsOf({ model }: GroupCase, id: string): readonly string[] {
  const wired = model.detectors.find((one) => one.id === id);
  const hasButton = model.buttons.some((button) => button.detectors.includes(id));
  const joined =
    wired?.role === "slave" ||
    model.detectors.some(
      (other) => other.id !== id && other.output !== undefined && other.output === wired?.output,
    );
  return [...FUNCTIONS, ...(hasButton ? ["button"] : []), ...(joined ? ["others-light-too"] : [])];
}
