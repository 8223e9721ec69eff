import type { SourceId } from "../source/index.ts";
import type { Said } from "./said.ts";

/** "not-proven" never counts as a pass. */
export type Verdict = "pass" | "fail" | "not-proven";

/** A verdict with its evidence. Compare unrounded; round for display only. */
export interface Check {
  readonly verdict: Verdict;
  /** What was checked, in the words of the trade. */
  readonly what: Said;
  readonly actual: number | undefined;
  readonly limit: number | undefined;
  /** Unit of actual and limit: "m", "m²", "s", "" … */
  readonly unit: string;
  readonly source: SourceId;
  readonly assumptions: readonly Said[];
}
