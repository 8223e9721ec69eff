import type { Seconds } from "../quantity/index.ts";
import type { SourceId } from "../source/index.ts";
import type { IsolationStep } from "./isolation.ts";
import type { ReadingKind, ReadingLimit } from "./reading.ts";
import type { StepSubject } from "./site-entry.ts";

/** Parts of the order of work, in their order. */
export const workStages = [
  "isolation",
  "inspection",
  "dead-tests",
  "fitting",
  "power-up",
  "live-tests",
  "functional",
  "walk-test",
  "readings",
  "emergency",
] as const;
export type WorkStage = (typeof workStages)[number];

export type StepName =
  | IsolationStep
  | "isolate-neutral"
  | "inspection"
  | "link-in"
  | "continuity"
  | "insulation"
  | "polarity"
  | "link-out"
  | "fitting"
  | "height"
  | "power-up"
  | "warm-up"
  | "loop-impedance"
  | "earth-resistance"
  | "rcd-time"
  | "rcd-button"
  | "functional"
  | "walk-test"
  | "brightness"
  | "delay"
  | "empty-room"
  | "afterglow"
  | "emergency";

/** What is shown beside a step because the work can hurt, or the test can lie. */
export type Caution =
  | "licensed-persons"
  | "every-supply"
  | "several-supplies"
  | "supply-unknown"
  | "shared-neutral"
  | "isolator-breaks-neutral"
  | "contact-is-no-isolation"
  | "dark-lamp-proves-nothing"
  | "tester-proved-before-and-after"
  | "stored-energy"
  | "emergency-battery"
  | "back-feed"
  | "open-contact-trap"
  | "electronics-disconnected"
  | "link-still-in"
  | "live-work"
  | "warm-up-unknown"
  | "presence-is-no-safety";

/** What a step asks for. parts: each is entered on its own. */
export type StepResult =
  | { readonly kind: "done" }
  | { readonly kind: "verdict" }
  | { readonly kind: "reading"; readonly reading: ReadingKind; readonly limit: ReadingLimit | undefined }
  /** The stations of the walk test carry the result. */
  | { readonly kind: "stations" };

/** One step of the order of work. Its words are found by its name. */
export interface WorkStep {
  /** Permanent: name, kind and id of what it is about. */
  readonly id: string;
  readonly name: StepName;
  readonly stage: WorkStage;
  readonly about: StepSubject;
  /** Groups of circuits that are dead, or live, together; see `IsolationGroup`. */
  readonly groups: readonly string[];
  readonly room: string | undefined;
  readonly parts: readonly string[];
  readonly result: StepResult;
  readonly cautions: readonly Caution[];
  /** Ids of steps that come before. */
  readonly needs: readonly string[];
  /** dead: only while proved dead · live: only with power on. */
  readonly state: "any" | "dead" | "live";
  /** It may be said not to apply, with a remark. */
  readonly mayNotApply: boolean;
  /** Waiting, by the clock. [s] */
  readonly wait: Seconds | undefined;
  /** What is expected, where nothing is a limit: the planned height, the set delay. In the reading's unit. */
  readonly planned: number | undefined;
  readonly source: SourceId;
}

/** Id of a step. @param name - Of the step. @param about - What it is about. @example "insulation:circuit:c1" */
export const stepId = (name: StepName, about: StepSubject): string => `${name}:${about.kind}:${about.id}`;
