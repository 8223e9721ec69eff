import type { Detector, Site } from "../site/index.ts";
import type { WiredDetector, WiringModel } from "../wiring/index.ts";
import type { IsolationGroup } from "./isolation.ts";
import type { StepSubject } from "./site-entry.ts";
import { stepId, type WorkStep } from "./work-step.ts";

/** What the steps of a group are made from. */
export interface GroupCase {
  readonly group: IsolationGroup;
  readonly model: WiringModel;
  readonly site: Site;
  /** Detectors of the plan that hang on the group, with what is known of their wiring. */
  readonly detectors: readonly { readonly record: Detector; readonly wired: WiredDetector }[];
}

/** What differs between steps; the rest is ordinary. */
export type StepDraft = Pick<WorkStep, "name" | "stage" | "about"> & Partial<WorkStep>;

/** Makes steps from what differs. @param common - What these steps share. @example A step with nothing but name, stage and subject is ticked as done */
export const stepMaker =
  (common: Pick<WorkStep, "groups"> & Partial<WorkStep>) =>
  (draft: StepDraft): WorkStep => ({
    id: stepId(draft.name, draft.about),
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
    ...common,
    ...draft,
  });

/** Makes steps of one group. @example Every step is of this group */
export const maker = ({ group }: GroupCase) => stepMaker({ groups: [group.id] });

/** What a step of the whole group is about: its first circuit, or the job where no circuit is known. @example One circuit: that one */
export const groupSubject = ({ group }: GroupCase): StepSubject =>
  group.circuits[0] === undefined
    ? { kind: "job", id: group.id }
    : { kind: "circuit", id: group.circuits[0] };

/** What steps of each circuit of a group are about; of the group where no circuit is known. @param given - The group. @example Two circuits: both */
export const circuitSubjects = (given: GroupCase): readonly StepSubject[] =>
  given.group.circuits.length === 0
    ? [groupSubject(given)]
    : given.group.circuits.map((id) => ({ kind: "circuit", id }));
