import type { Share } from "../quantity/index.ts";
import type { SourceId } from "../source/index.ts";

/** Time limits of codes are kept as they are printed. [min] */
export type Minutes = number;

/** What a code has verified of one device. */
export type CodeCheck =
  | "status-indicator"
  | "off-in-time"
  | "on-at-entry"
  | "only-by-hand"
  | "not-by-neighbours"
  | "not-by-air"
  | "sensitivity"
  | "partial-on"
  | "partial-off";

/** How a code samples devices, as data. */
export interface SamplingRule {
  readonly id: "iecc" | "title-24";
  readonly source: SourceId;
  /** Jobs with no more devices than this are tested whole. */
  readonly allUpTo: number;
  readonly least:
    | { readonly kind: "share"; readonly share: Share }
    | { readonly kind: "groups"; readonly size: number };
  readonly escalation: { readonly kind: "share"; readonly share: Share } | { readonly kind: "any-in-group" };
  /** What is verified; limits in the code's own unit. */
  readonly verified: readonly {
    readonly check: CodeCheck;
    readonly least?: Share;
    readonly most?: Minutes | Share;
    readonly unit: "min" | "" | "of full light";
  }[];
}

/**
 * Sampling rules of two public codes.
 *
 * How obtained: IECC from the published code; Title 24 from memory, its groups seen in the wording of a neighbouring section. Certainty and "verify" stand in the
 * register of sources.
 * @source IECC-C408
 * @source TITLE-24-NA7
 */
export const samplingRules: Readonly<Record<SamplingRule["id"], SamplingRule>> = {
  iecc: {
    id: "iecc",
    source: "IECC-C408",
    allUpTo: 7,
    least: { kind: "share", share: 0.1 },
    escalation: { kind: "share", share: 0.3 },
    verified: [
      { check: "status-indicator", unit: "" },
      { check: "off-in-time", unit: "" },
      { check: "on-at-entry", unit: "" },
      { check: "only-by-hand", unit: "" },
      { check: "not-by-neighbours", unit: "" },
      { check: "not-by-air", unit: "" },
    ],
  },
  "title-24": {
    id: "title-24",
    source: "TITLE-24-NA7",
    allUpTo: 7,
    least: { kind: "groups", size: 7 },
    escalation: { kind: "any-in-group" },
    verified: [
      { check: "off-in-time", most: 20, unit: "min" },
      { check: "not-by-neighbours", unit: "" },
      { check: "not-by-air", unit: "" },
      { check: "sensitivity", unit: "" },
      { check: "status-indicator", unit: "" },
      { check: "on-at-entry", unit: "" },
      { check: "partial-on", least: 0.5, most: 0.7, unit: "of full light" },
      { check: "partial-off", most: 0.5, unit: "of full light" },
    ],
  },
};
