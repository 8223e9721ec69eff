import type { Problem } from "#engine";
import type { Linework } from "../linework/linework.ts";
import type { LeftOut } from "../survey.ts";

/** What was read of a drawing and what was not, and why. */
export interface DxfReport {
  readonly file: string;
  readonly format: "dxf";
  /** "R2000" … "R2018", "unknown". */
  readonly release: string;
  readonly binary: boolean;
  /** Code page of its texts as the file names it, or "UTF-8". */
  readonly codePage: string;
  /** Entities that were read, by type; those of a block once, if the block is used. */
  readonly read: readonly { readonly what: string; readonly count: number }[];
  readonly lines: number;
  readonly arcs: number;
  readonly texts: number;
  readonly blocks: number;
  readonly leftOut: readonly LeftOut[];
  /** Read, but worth a look. */
  readonly notes: readonly Problem[];
}

/** Either the lines with their report, or the problems that stopped the reading. */
export type DxfResult =
  | { readonly linework: Linework; readonly report: DxfReport }
  | { readonly problems: readonly Problem[] };
