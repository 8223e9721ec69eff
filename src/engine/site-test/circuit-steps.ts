import type { Detector, Site } from "../site/index.ts";
import type { SourceId } from "../source/index.ts";
import {
  type Circuit,
  largestEarthResistance,
  largestLoopReading,
  type ProtectiveDevice,
  type Supply,
  type WiredDetector,
  type WiringModel,
} from "../wiring/index.ts";
import {
  deadPairs,
  type IsolationGroup,
  type IsolationStep,
  isolationSteps,
  TESTER_AFTER,
  TESTER_BEFORE,
} from "./isolation.ts";
import type { ReadingLimit } from "./reading.ts";
import type { StepSubject } from "./site-entry.ts";
import { type Caution, type StepName, stepId, type WorkStep } from "./work-step.ts";

/** Warm-up of a detector whose data sheet does not say. [s] @source COMMON-PRACTICE */
export const USUAL_WARM_UP = 45;

/** A measured height may be this far from the planned one. [m] @source COMMON-PRACTICE */
const HEIGHT_OFF = 0.1;

/** What is looked at before any test. */
const INSPECTED = ["cable", "protective-conductor", "colours", "box", "cover", "water", "label"];
/** What is ticked when a detector goes up. */
const FITTED = ["device", "place", "turn", "mask", "settings"];
/** What every detector must do once the power is on. */
const FUNCTIONS = ["on-at-entry", "off-in-test"];

/** What the steps of a group are made from. */
export interface GroupCase {
  readonly group: IsolationGroup;
  readonly model: WiringModel;
  readonly site: Site;
  /** Detectors of the plan that hang on the group, with what is known of their wiring. */
  readonly detectors: readonly { readonly record: Detector; readonly wired: WiredDetector }[];
}

type Draft = Pick<WorkStep, "name" | "stage" | "about"> & Partial<WorkStep>;

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
  const each = (draft: (one: GroupCase["detectors"][number]) => Draft): readonly WorkStep[] =>
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

const maker =
  ({ group }: GroupCase) =>
  (draft: Draft): WorkStep => ({
    id: stepId(draft.name, draft.about),
    groups: [group.id],
    room: undefined,
    parts: [],
    result: { kind: "done" },
    cautions: [],
    needs: [],
    state: "any",
    mayNotApply: false,
    wait: undefined,
    planned: undefined,
    source: "COMMON-PRACTICE",
    ...draft,
  });

/** What a step of the whole group is about: its first circuit, or the job where no circuit is known. */
const groupSubject = ({ group }: GroupCase): StepSubject =>
  group.circuits[0] === undefined
    ? { kind: "job", id: group.id }
    : { kind: "circuit", id: group.circuits[0] };

function isolationOf(given: GroupCase): readonly WorkStep[] {
  const { group } = given;
  const make = maker(given);
  const source: SourceId = group.supply.region === "US" ? "OSHA-1910" : "EN-50110-1";
  const each: readonly StepSubject[] =
    group.circuits.length === 0
      ? [groupSubject(given)]
      : group.circuits.map((id) => ({ kind: "circuit", id }));
  const whole: Caution[] = [
    "licensed-persons",
    "every-supply",
    "contact-is-no-isolation",
    ...(group.circuits.length > 1 ? (["several-supplies"] as const) : []),
    ...(group.circuits.length === 0 ? (["supply-unknown"] as const) : []),
    ...(group.sharedNeutral ? (["shared-neutral"] as const) : []),
    ...(group.neutralOpen ? (["isolator-breaks-neutral"] as const) : []),
  ];
  const steps: WorkStep[] = [];
  let before: readonly string[] = [];
  for (const name of isolationSteps(group.supply.region)) {
    const own = isolationStep(given, { name, each, cautions: whole }).map((draft) =>
      make({ needs: before, source, ...draft }),
    );
    steps.push(...own);
    // What may be said not to apply is no condition of what comes after; its own entry still counts.
    before = own.map(({ id }) => id);
  }
  return steps;
}

function isolationStep(
  given: GroupCase,
  step: {
    readonly name: IsolationStep;
    readonly each: readonly StepSubject[];
    readonly cautions: readonly Caution[];
  },
): readonly Draft[] {
  const { name, each, cautions } = step;
  const { group, detectors } = given;
  const stage = "isolation" as const;
  const whole = groupSubject(given);
  switch (name) {
    case "disconnect":
      return [
        ...each.map((about): Draft => ({ name, stage, about, cautions })),
        ...(group.neutralOpen
          ? [{ name: "isolate-neutral", stage, about: whole, cautions: ["isolator-breaks-neutral"] } as const]
          : []),
      ];
    case "secure":
      return each.map(
        (about): Draft => ({ name, stage, about, parts: ["lock", "tag"], cautions: ["every-supply"] }),
      );
    case "prove-dead":
      return detectors.map(
        ({ record, wired }): Draft => ({
          name,
          stage,
          about: { kind: "detector", id: record.id },
          room: record.room,
          parts: [TESTER_BEFORE, ...deadPairs({ hasOutput: wired.output !== undefined }), TESTER_AFTER],
          result: { kind: "verdict" },
          cautions: ["tester-proved-before-and-after", "dark-lamp-proves-nothing", "contact-is-no-isolation"],
        }),
      );
    case "earth":
      return [
        { name, stage, about: whole, mayNotApply: true, cautions: group.mayBackFeed ? ["back-feed"] : [] },
      ];
    case "adjacent":
      return [{ name, stage, about: whole, mayNotApply: true }];
    case "release-energy":
      return [{ name, stage, about: whole, cautions: ["stored-energy"] }];
    case "prepare":
    case "shut-down":
      return [{ name, stage, about: whole, cautions: name === "prepare" ? cautions : [] }];
  }
}

/** Continuity, insulation, polarity, in this order, for each circuit; of the group where no circuit is known. */
function deadTests(given: GroupCase, needs: readonly string[]): readonly WorkStep[] {
  const make = maker(given);
  const { group } = given;
  const subjects: readonly StepSubject[] =
    group.circuits.length === 0
      ? [groupSubject(given)]
      : group.circuits.map((id) => ({ kind: "circuit", id }));
  return subjects.flatMap((about) => {
    const common = { stage: "dead-tests", about, state: "dead" } as const;
    const continuity = make({
      ...common,
      name: "continuity",
      needs,
      result: { kind: "reading", reading: "continuity", limit: continuityLimit() },
      source: "IEC-60364-6",
    });
    const insulation = make({
      ...common,
      name: "insulation",
      needs: [continuity.id],
      result: { kind: "reading", reading: "insulation", limit: insulationLimit(group.supply) },
      cautions: ["open-contact-trap", "electronics-disconnected"],
      source: "IEC-60364-6-INSULATION",
    });
    const polarity = make({
      ...common,
      name: "polarity",
      needs: [insulation.id],
      result: { kind: "verdict" },
      source: "IEC-60364-6",
    });
    return [continuity, insulation, polarity];
  });
}

/** No code prints one value: the tester judges, beside what is usual. */
const continuityLimit = (): ReadingLimit | undefined => undefined;

const insulationLimit = (supply: Supply): ReadingLimit | undefined =>
  supply.region === "US"
    ? undefined
    : {
        least: 1,
        source: "IEC-60364-6-INSULATION",
        assumptions: ["500 V direct voltage", "Test links in, loads disconnected or line and neutral joined"],
      };

function liveTests(given: GroupCase, power: string): readonly WorkStep[] {
  const make = maker(given);
  const { group, model } = given;
  if (group.supply.region === "US") return [];
  return group.circuits.flatMap((id) => {
    const circuit = model.circuits.find((one) => one.id === id) as Circuit;
    const device = model.devices.find((one) => one.id === circuit.device);
    const common = {
      stage: "live-tests",
      about: { kind: "circuit", id },
      state: "live",
      needs: [power],
      cautions: ["live-work"],
    } as const;
    const rcd = device?.rcd === undefined || device.rcd === "none" ? undefined : device.rcd;
    const isEarth = group.supply.system === "TT";
    return [
      isEarth
        ? make({
            ...common,
            name: "earth-resistance",
            result: {
              kind: "reading",
              reading: "earth-resistance",
              limit: rcd && {
                most: largestEarthResistance(rcd.residual),
                source: "IEC-60364-4-41",
                assumptions: ["RA · IΔn ≤ 50 V", "Above 200 Ω it may not be steady"],
              },
            },
            source: "IEC-60364-4-41",
          })
        : make({
            ...common,
            name: "loop-impedance",
            result: { kind: "reading", reading: "loop-impedance", limit: loopLimit(group.supply, device) },
            source: "IEC-60364-6",
          }),
      // Where nobody has looked for an RCD the step may be said not to apply.
      ...(device?.rcd === "none"
        ? []
        : [
            make({
              ...common,
              name: "rcd-time",
              mayNotApply: rcd === undefined,
              result: {
                kind: "reading",
                reading: "rcd-time",
                limit: {
                  most: 300,
                  source: "IEC-61008-TIME",
                  assumptions: ["At the rated residual current, general type"],
                },
              },
              source: "IEC-61008-TIME",
            }),
            make({
              ...common,
              name: "rcd-button",
              mayNotApply: rcd === undefined,
              result: { kind: "verdict" },
            }),
          ]),
    ];
  });
}

/** The measured-value rule of the job: four fifths where the supply is reckoned with 0.95, two thirds otherwise. */
function loopLimit(supply: Supply, device: ProtectiveDevice | undefined): ReadingLimit | undefined {
  if (!device || device.rating === undefined || device.type === "unknown" || device.type === "fuse-gG")
    return undefined;
  const isFourFifths = supply.voltageFactor < 1;
  return {
    most: largestLoopReading(
      {
        voltage: supply.voltage,
        type: device.type,
        rating: device.rating,
        voltageFactor: supply.voltageFactor,
      },
      isFourFifths ? "four-fifths" : "two-thirds",
    ),
    source: isFourFifths ? "BS-7671-LOOP" : "IEC-60364-6-LOOP",
    assumptions: ["Measured with cold conductors"],
  };
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
