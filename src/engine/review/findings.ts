import type { Check, Problem, ProblemCode, Severity } from "../check/index.ts";
import type { RoomCoverage } from "../coverage/index.ts";

/** A problem or failed check as a person reads it. */
export interface Finding {
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly room: string | undefined;
  readonly records: readonly string[];
  readonly at: readonly [number, number] | undefined;
  /** Fill the {gaps} of its sentence in any language. */
  readonly values: Problem["values"];
  readonly message: string;
  readonly remedy: string;
  readonly evidence: readonly Check[];
}

export interface Review {
  readonly rooms: readonly RoomCoverage[];
  readonly findings: readonly Finding[];
}
