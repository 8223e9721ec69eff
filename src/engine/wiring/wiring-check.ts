import type { Check, ProblemCode, Said, Verdict, Words } from "../check/index.ts";

/** A check of the wiring with the problem that it becomes when it fails, and the records that it speaks of. */
export interface WiringCheck extends Check {
  readonly code: ProblemCode;
  readonly name: Words;
  readonly room?: string;
  readonly records: readonly string[];
  /** What a person would have to enter, where the check is not proven. */
  readonly missing?: readonly Said[];
}

/**
 * Verdict of an upper limit.
 *
 * @param actual - What is there; undefined: unknown. @param limit - What may be there; undefined: unknown.
 * @returns Pass up to and including the limit, compared unrounded; "not-proven" where either is unknown or not a number.
 * @example 9 of 6.9 fails; unknown of 6.9 is not proven
 */
export const atMost = (actual: number | undefined, limit: number | undefined): Verdict =>
  actual === undefined || limit === undefined || Number.isNaN(actual) || Number.isNaN(limit)
    ? "not-proven"
    : actual <= limit
      ? "pass"
      : "fail";

/** A pass that rests on something nobody knows is not proven; a fail stays a fail. @param verdict - As computed. @param unknown - What nobody knows. @returns The honest verdict. @example pass with one doubt: not proven */
export const withDoubts = (verdict: Verdict, unknown: readonly Said[]): Verdict =>
  verdict === "pass" && unknown.length > 0 ? "not-proven" : verdict;
