import type { ProblemCode, Said, Verdict, Words } from "../../check/index.ts";
import type { SourceId } from "../../source/index.ts";
import type { WiringModel } from "../model.ts";

/** W-01 to W-24, two digits. */
export type RuleId = `W-${number}`;

/** One place where a rule is broken, or cannot be judged. A place that keeps it is not listed. */
export interface RuleHit {
  readonly verdict: Exclude<Verdict, "pass">;
  /** Name of the thing it speaks of, as it stands on the plan. */
  readonly name: Words;
  /** What is wrong, or what is not known, in a few words. */
  readonly detail: Said;
  readonly room?: string;
  readonly records: readonly string[];
  /** Where one rule has two ways to be broken: the other one's code. */
  readonly code?: ProblemCode;
  /** Where the region has a rule of its own. */
  readonly source?: SourceId;
}

/** A wiring rule as data with its evaluator. Its severity, sentence and remedy stand in the catalogue under its code. */
export interface WiringRule {
  readonly id: RuleId;
  readonly code: ProblemCode;
  readonly title: Said;
  readonly source: SourceId;
  readonly evaluate: (model: WiringModel) => readonly RuleHit[];
}

/** A yes/no question of a rule: "no" breaks it, "unknown" leaves it unproven. @param known - The answer. @param about - Name, records, and the words for either case. @returns Nothing for "yes". @example unknown → one hit, not proven */
export function mustBe(
  known: "yes" | "no" | "unknown" | undefined,
  about: {
    readonly name: Words;
    readonly room?: string;
    readonly records: readonly string[];
    readonly code?: ProblemCode;
    readonly no: Said;
    readonly unknown: Said;
  },
): readonly RuleHit[] {
  if (known === "yes") return [];
  const { no, unknown, ...rest } = about;
  return [
    known === "no"
      ? { ...rest, verdict: "fail", detail: no }
      : { ...rest, verdict: "not-proven", detail: unknown },
  ];
}
