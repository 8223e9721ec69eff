import type { ReadingReport } from "../survey.ts";
import type { Linework } from "./linework.ts";

/** What was read of a plan as lines. */
export interface LineworkReport extends ReadingReport {
  readonly format: Linework["format"];
  readonly lines: number;
  readonly arcs: number;
  readonly texts: number;
}
