/** How sure a source is: read in the published text; read in another's account of it; remembered; derived here; or the trade's habit. */
export type Certainty = "read" | "secondary" | "from-memory" | "derived" | "common-practice";

/** One entry of the register of sources. */
export interface Source {
  readonly kind: "standard" | "handbook" | "paper" | "data" | "practice" | "derivation";
  readonly title: string;
  readonly edition?: string;
  readonly clause?: string;
  readonly certainty: Certainty;
  /** Printed beside every use as "verify". */
  readonly verify: boolean;
  readonly note?: string;
}
