import type { Said } from "../../check/index.ts";
import type { SourceId } from "../../source/index.ts";
import type { FaultCause, FaultTest, Symptom } from "./names.ts";
import type { PlanFact } from "./plan-facts.ts";

/** Chances of outcomes in their order, in percent; brought to a sum of 1 where they are used. */
export type Percentages = readonly number[];

/** Chances of outcomes by cause: the usual ones, and those of causes that differ. */
export interface ChanceTable {
  readonly usual: Percentages;
  readonly given: Readonly<Partial<Record<FaultCause, Percentages>>>;
}

/** What a test asks of the tester. */
export interface TestDescription {
  /** Time it takes, waiting included. [min] */
  readonly minutes: number;
  /** phone: asked before driving · room: in the room, nothing opened · opened: a cover is opened, so everything is made dead first where it can be. */
  readonly where: "phone" | "room" | "opened";
  /** Complaints with which it says something. */
  readonly symptoms: readonly Symptom[];
  /** What to ask or do, in one sentence. */
  readonly instruction: Said;
}

/** All that the ranking reasons with. A firm may keep its own: every part is data. */
export interface FaultKnowledge {
  /** How common a cause is before anything is known, in any unit. */
  readonly commonness: Readonly<Record<FaultCause, number>>;
  readonly symptoms: ChanceTable;
  readonly facts: Readonly<Record<PlanFact, ChanceTable>>;
  readonly tests: Readonly<Record<FaultTest, ChanceTable>>;
  readonly descriptions: Readonly<Record<FaultTest, TestDescription>>;
  /** Where the chances come from, and where the commonness does. */
  readonly source: { readonly chances: SourceId; readonly commonness: SourceId };
}
