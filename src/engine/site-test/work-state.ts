import type { Problem } from "../check/index.ts";
import type { Site } from "../site/index.ts";
import { TESTER_AFTER, TESTER_BEFORE } from "./isolation.ts";
import { checkReading, type InstrumentRange } from "./reading.ts";
import { countedEntries, momentOf, type SiteEntry } from "./site-entry.ts";
import type { WorkOrder } from "./work-order.ts";
import { stepId, type WorkStep } from "./work-step.ts";

/** open: may be done · waiting: something before it is missing · part: some of its parts are done. */
export type StepStatus = "open" | "waiting" | "part" | "done" | "failed" | "not-applicable";

/** Where a step stands. */
export interface StepState {
  readonly step: WorkStep;
  readonly status: StepStatus;
  /** Parts without a result that counts. */
  readonly missing: readonly string[];
  /** When the first and the last of its counting entries were made. */
  readonly begun: string | undefined;
  readonly time: string | undefined;
}

/** Where the work stands. */
export interface WorkState {
  readonly order: WorkOrder;
  /** By id of the step. */
  readonly steps: ReadonlyMap<string, StepState>;
  /** Groups of circuits that are proved dead now. */
  readonly dead: ReadonlySet<string>;
  /** Groups of circuits with the power on, as ticked. */
  readonly live: ReadonlySet<string>;
}

/** May it be done now? If not, why not. */
export interface Permission {
  readonly allowed: boolean;
  readonly problems: readonly Problem[];
}

/**
 * Where the work stands by what was entered.
 *
 * Of every step and part the latest entry counts. A group is dead while every circuit was disconnected and locked, where it asks for it the neutral isolated and stored energy
 * released, and every detector then proved dead between a tester proved before and after, all later than the last power-up.
 *
 * @param order - The order of work. @param entries - All entries of the job, in any order.
 * @returns States of the steps, and which groups are dead or live.
 * @source EN-50110-1
 * @example Nothing entered: the first step open, all that need it waiting
 */
export function workState(order: WorkOrder, entries: readonly SiteEntry[]): WorkState {
  const latest = new Map<string, SiteEntry>();
  for (const entry of countedEntries(entries)) latest.set(keyOf(entry), entry);
  const own = new Map(order.steps.map((step) => [step.id, ownState(step, latest)]));
  const dead = new Set<string>();
  const live = new Set<string>();
  for (const { id } of order.groups) {
    const power = order.steps.find((step) => step.name === "power-up" && step.groups.includes(id));
    const powered = power && own.get(power.id);
    const since = powered?.status === "done" ? powered.time : undefined;
    if (isDead(order, { group: id, own, since })) dead.add(id);
    else if (since !== undefined) live.add(id);
  }
  const steps = new Map(
    order.steps.map((step): [string, StepState] => {
      const state = own.get(step.id) as StepState;
      const waits = state.status === "open" && step.needs.some((id) => !isBehind(own.get(id)));
      return [step.id, waits ? { ...state, status: "waiting" } : state];
    }),
  );
  return { order, steps, dead, live };
}

/**
 * Whether a step may be entered now (WO-1, WO-2, WO-6).
 *
 * @param state - Where the work stands. @param step - Id of the step; throws on another. @param site - For the names of detectors in sentences.
 * @returns Allowed, or the problems that stand against it.
 * @source EN-50110-1
 * @example Insulation before the circuit is proved dead: "step-needs-dead"
 */
export function mayEnter(state: WorkState, step: string, site: Site): Permission {
  const found = state.steps.get(step);
  if (!found) throw new Error(`No step ${step}`);
  if (found.step.name === "power-up") return mayPowerUp(state, found.step.groups[0] ?? "", site);
  const { groups, needs, name, about } = found.step;
  const values = { step: name, about: about.id };
  const missing = needs.filter((id) => !isBehind(state.steps.get(id)));
  const problems: Problem[] = [];
  if (missing.length > 0)
    problems.push({
      code: "step-out-of-order",
      values: { ...values, missing: missing.length },
      records: missing,
    });
  else if (found.step.state === "dead" && groups.some((group) => !state.dead.has(group)))
    problems.push({ code: "step-needs-dead", values });
  else if (found.step.state === "live" && groups.some((group) => !state.live.has(group)))
    problems.push({ code: "step-needs-power", values: {} });
  return { allowed: problems.length === 0, problems };
}

/**
 * Whether the power may come back (WO-2): every test link ticked as removed after it was put in, no dead test missing or failed, every detector fitted.
 *
 * @param state - Where the work stands. @param group - Id of the group of circuits. @param site - For the names of detectors in sentences.
 * @returns Allowed, or one problem for each reason against it.
 * @source EN-50110-1
 * @source OPEN-CONTACT
 * @example A link put in again after it was taken out: "power-refused-link"
 */
export function mayPowerUp(state: WorkState, group: string, site: Site): Permission {
  const steps = state.order.steps.filter((step) => step.groups.includes(group));
  const power = steps.find((step) => step.name === "power-up");
  if (!power) throw new Error(`No group ${group}`);
  const problems = power.needs.flatMap((id): readonly Problem[] => {
    const found = state.steps.get(id) as StepState;
    const { step, status } = found;
    const values = { step: step.name, about: step.about.id };
    if (step.name === "link-out") {
      const tag = site.detectors.find((one) => one.id === step.about.id)?.tag ?? step.about.id;
      const put = state.steps.get(stepId("link-in", step.about));
      const never = put?.status === "not-applicable";
      const isOut = status === "done" && momentOf(put?.time) <= momentOf(found.time);
      return never || isOut
        ? []
        : [{ code: "power-refused-link", values: { tag }, records: [step.about.id] }];
    }
    if (status === "failed") return [{ code: "power-refused-failed", values, records: [step.about.id] }];
    return isBehind(found) ? [] : [{ code: "power-refused-test", values, records: [step.about.id] }];
  });
  return { allowed: problems.length === 0, problems };
}

/**
 * A step's reading checked as it is entered.
 *
 * @param step - A step that asks for a reading; throws on another. @param value - In the reading's unit. @param instrument - Its range as set.
 * @returns As `checkReading`, against the step's own limit.
 * @source COMMON-PRACTICE
 * @example 0.8 MΩ at the step "insulation": fail
 */
export function checkStepReading(
  step: WorkStep,
  value: number | undefined,
  instrument?: InstrumentRange,
): ReturnType<typeof checkReading> {
  if (step.result.kind !== "reading") throw new Error(`The step ${step.id} asks for no reading`);
  return checkReading(step.result.reading, { value, limit: step.result.limit, instrument });
}

/**
 * Whether a reading says nothing until the tester has judged it "passed" or "failed": no limit is known, and it is unusual (WO-4).
 *
 * @param step - Any step. @param value - In the reading's unit.
 * @returns True until somebody judges it.
 * @source COMMON-PRACTICE
 * @example Continuity 4000 Ω: yes; 0.8 Ω: no
 */
export const needsJudgement = (step: WorkStep, value: number | undefined): boolean =>
  step.result.kind === "reading" &&
  step.result.limit === undefined &&
  checkStepReading(step, value).problems.some(({ code }) => code === "reading-unusual");

const keyOf = ({ step, about, part }: Pick<SiteEntry, "step" | "about" | "part">): string =>
  `${step}:${about.kind}:${about.id}:${part ?? ""}`;

/** Done, or said not to apply: what comes after may begin. */
const isBehind = (state: StepState | undefined): boolean =>
  state?.status === "done" || (state?.status === "not-applicable" && state.step.mayNotApply);

function ownState(step: WorkStep, latest: ReadonlyMap<string, SiteEntry>): StepState {
  const whole = latest.get(`${step.id}:`);
  if (whole?.outcome === "not-applicable" && step.mayNotApply)
    return { step, status: "not-applicable", missing: [], begun: whole.time, time: whole.time };
  if (step.result.kind === "stations") return stationsState(step, whole);
  const parts = step.parts.length === 0 ? [""] : step.parts;
  const found = parts.map((part) => ({ part, entry: latest.get(`${step.id}:${part}`) }));
  const times = found
    .flatMap(({ entry }) => (entry ? [entry.time] : []))
    .toSorted((a, b) => momentOf(a) - momentOf(b));
  const verdicts = found.map(({ part, entry }) => ({ part, verdict: entry && verdictOf(step, entry) }));
  const missing = verdicts.filter(({ verdict }) => verdict === undefined).map(({ part }) => part);
  const common = {
    step,
    missing: missing.filter((part) => part !== ""),
    begun: times[0],
    time: times.at(-1),
  };
  if (verdicts.some(({ verdict }) => verdict === "failed")) return { ...common, status: "failed" };
  if (missing.length === parts.length) return { ...common, status: "open" };
  if (missing.length > 0) return { ...common, status: "part" };
  const unproved = step.name === "prove-dead" ? outsideProof(found) : [];
  return unproved.length > 0
    ? { ...common, missing: unproved, status: "part" }
    : { ...common, status: "done" };
}

/** The stations' own verdict is not known here: the step is done when somebody closes it, by "passed" or "failed". */
function stationsState(step: WorkStep, whole: SiteEntry | undefined): StepState {
  const status = whole?.outcome === "failed" ? "failed" : whole?.outcome === "passed" ? "done" : "open";
  return { step, status, missing: [], begun: whole?.time, time: whole?.time };
}

/** Parts of a proof that lie outside its two proofs of the tester (WO-3). */
function outsideProof(
  found: readonly { readonly part: string; readonly entry: SiteEntry | undefined }[],
): readonly string[] {
  const timeOf = (part: string): number => momentOf(found.find((one) => one.part === part)?.entry?.time);
  const [before, after] = [timeOf(TESTER_BEFORE), timeOf(TESTER_AFTER)];
  const pairs = found.filter(({ part }) => part !== TESTER_BEFORE && part !== TESTER_AFTER);
  const early = pairs.filter(({ part }) => timeOf(part) < before).map(({ part }) => part);
  const isAfter = pairs.every(({ part }) => timeOf(part) <= after);
  return [...early, ...(isAfter && before <= after ? [] : [TESTER_AFTER])];
}

/** An entry as a result; undefined: it says nothing yet. */
function verdictOf(step: WorkStep, entry: SiteEntry): "done" | "failed" | undefined {
  if (entry.outcome === "failed") return "failed";
  if (step.result.kind === "reading") {
    if (entry.outcome === "passed") return step.result.limit ? undefined : "done";
    if (entry.outcome !== "read") return undefined;
    if (needsJudgement(step, entry.value)) return undefined;
    const { check, problems } = checkStepReading(step, entry.value);
    if (check.actual === undefined || problems.some(({ code }) => code === "reading-impossible"))
      return undefined;
    // Without a limit the figure is the result, and the tester's own "failed" speaks against it.
    return check.verdict === "fail" ? "failed" : "done";
  }
  if (step.result.kind === "verdict") return entry.outcome === "passed" ? "done" : undefined;
  return entry.outcome === "done" || entry.outcome === "passed" ? "done" : undefined;
}

/** What must have been done before a proof of being dead says anything. */
const ISOLATED_BY: ReadonlySet<WorkStep["name"]> = new Set([
  "disconnect",
  "isolate-neutral",
  "secure",
  "release-energy",
]);

function isDead(
  order: WorkOrder,
  question: {
    readonly group: string;
    readonly own: ReadonlyMap<string, StepState>;
    readonly since: string | undefined;
  },
): boolean {
  const { group, own, since } = question;
  const steps = order.steps.filter((step) => step.stage === "isolation" && step.groups.includes(group));
  const states = steps.map((step) => own.get(step.id) as StepState);
  // All parts must be of this time: one tick renewed does not renew the proof. Of a power-up whose time cannot be read nothing is surely later.
  const isLater = ({ begun }: StepState, than: string | undefined): boolean =>
    than === undefined || (Number.isFinite(momentOf(than)) && momentOf(begun) > momentOf(than));
  const off = states.filter(({ step }) => step.name !== "earth" && step.name !== "adjacent");
  if (off.length === 0 || !off.every((state) => state.status === "done" && isLater(state, since)))
    return false;
  const secured = Math.max(
    ...states.filter(({ step }) => ISOLATED_BY.has(step.name)).map(({ time }) => momentOf(time)),
  );
  // A lock that was put on after the proof says nothing of what the proof found.
  return states
    .filter(({ step }) => step.name === "prove-dead")
    .every((state) => momentOf(state.begun) >= secured);
}
