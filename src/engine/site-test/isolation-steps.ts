import type { SourceId } from "../source/index.ts";
import { circuitSubjects, type GroupCase, groupSubject, maker, type StepDraft } from "./group-case.ts";
import { deadPairs, type IsolationStep, isolationSteps, TESTER_AFTER, TESTER_BEFORE } from "./isolation.ts";
import type { StepSubject } from "./site-entry.ts";
import type { Caution, WorkStep } from "./work-step.ts";

/**
 * Steps that make a group dead, in the order of its region, each needing those before it.
 *
 * @param given - The group.
 * @returns Steps in order.
 * @source EN-50110-1
 * @source OSHA-1910
 * @example One circuit, one detector: disconnect, secure, prove dead, earth, adjacent
 */
export function isolationOf(given: GroupCase): readonly WorkStep[] {
  const { group } = given;
  const make = maker(given);
  const source: SourceId = group.supply.region === "US" ? "OSHA-1910" : "EN-50110-1";
  const each = circuitSubjects(given);
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
    // Where a step may be said not to apply, that entry counts like one that it was done.
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
): readonly StepDraft[] {
  const { name, each, cautions } = step;
  const { group, detectors } = given;
  const stage = "isolation" as const;
  const whole = groupSubject(given);
  switch (name) {
    case "disconnect":
      return [
        ...each.map((about): StepDraft => ({ name, stage, about, cautions })),
        ...(group.neutralOpen
          ? [{ name: "isolate-neutral", stage, about: whole, cautions: ["isolator-breaks-neutral"] } as const]
          : []),
      ];
    case "secure":
      return each.map(
        (about): StepDraft => ({ name, stage, about, parts: ["lock", "tag"], cautions: ["every-supply"] }),
      );
    case "prove-dead":
      return detectors.map(
        ({ record, wired }): StepDraft => ({
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
