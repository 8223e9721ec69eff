import { type CatalogueEntry, catalogue, type ProblemCode } from "./catalogue/index.ts";
import type { Check } from "./check.ts";
import { english, type Said, type SaidValue } from "./said.ts";

export type { CatalogueEntry, Severity } from "./catalogue/entry.ts";

/** A user's mistake, or a finding about the plan, as data. */
export interface Problem {
  readonly code: ProblemCode;
  /** Fill the {names} of the catalogue's sentence. Numbers are already rounded for reading. */
  readonly values: Readonly<Record<string, SaidValue>>;
  /** Room id, where the problem belongs to one. */
  readonly room?: string;
  /** Ids of the records it speaks of. */
  readonly records?: readonly string[];
  /** Where on the plan. [m] */
  readonly at?: readonly [number, number];
  readonly evidence?: readonly Check[];
}

/** The catalogue's entry of a problem. */
export const entryOf = (problem: Problem): CatalogueEntry => catalogue[problem.code];

/** What is wrong and where, as something that can be said in any language. */
export const messageSaid = (problem: Pick<Problem, "code" | "values">): Said => ({
  text: catalogue[problem.code].message,
  values: problem.values,
});

/** How to mend a problem, in the same way. */
export const remedySaid = (problem: Pick<Problem, "code" | "values">): Said => ({
  text: catalogue[problem.code].remedy,
  values: problem.values,
});

/** The sentence of a problem: what is wrong and where. */
export const sentenceOf = (problem: Problem): string => english(messageSaid(problem));

/** How to mend a problem. */
export const remedyOf = (problem: Problem): string => english(remedySaid(problem));

/** Sentences of problems in another language by their codes, with the same {gaps}. */
export type Wording = Readonly<Partial<Record<string, Pick<CatalogueEntry, "message" | "remedy">>>>;
