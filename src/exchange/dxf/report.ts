import type { Problem } from "#engine";
import type { Linework } from "../linework/linework.ts";
import type { LineworkReport } from "../linework/report.ts";

/** What was read of a drawing and what was not, and why. */
export interface DxfReport extends LineworkReport {
  readonly format: "dxf";
  /** "R2000" … "R2018", "unknown". */
  readonly release: string;
  readonly binary: boolean;
  /** Code page of its texts as the file names it, or "UTF-8". */
  readonly codePage: string;
  /** Entities that were read, by type; those of a block once, if the block is used. */
  readonly read: readonly { readonly what: string; readonly count: number }[];
  readonly blocks: number;
}

/** Either the lines with their report, or the problems that stopped the reading. */
export type DxfResult =
  | { readonly linework: Linework; readonly report: DxfReport }
  | { readonly problems: readonly Problem[] };
