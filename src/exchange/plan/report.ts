import type { Metres, Problem } from "#engine";
import type { Linework } from "../linework/linework.ts";
import type { LineworkReport } from "../linework/report.ts";

/** What was read of a plan and what was not, and why. */
export interface PlanReport extends LineworkReport {
  readonly pages: number;
  /** The page that was read, from 1. */
  readonly page: number;
  /** Size of the sheet of paper. */
  readonly paper: { readonly width: Metres; readonly height: Metres };
}

/** Either the lines with their report, or the problems that stopped the reading. */
export type PlanResult =
  | { readonly linework: Linework; readonly report: PlanReport }
  | { readonly problems: readonly Problem[] };
