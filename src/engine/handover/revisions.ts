import { type Difference, differencesOf } from "./differences.ts";
import type { HandedState } from "./handed-state.ts";

/** A state of a job that was handed over, as the job keeps it. */
export interface HandedRevision {
  readonly id: string;
  /** "A", "B", … */
  readonly letter: string;
  readonly date: string;
  readonly by?: string | undefined;
  readonly reason: string;
  /** Absent where an older program kept none. */
  readonly state?: HandedState | undefined;
}

/** A revision with what it changed against the one before. */
export interface RevisionRecord {
  readonly letter: string;
  readonly date: string;
  readonly by: string;
  readonly reason: string;
  /** undefined: the first one, or nobody kept what was handed over then. */
  readonly differences: readonly Difference[] | undefined;
}

/**
 * Each revision with what it changed, and what was changed since the last of them.
 *
 * @param revisions - What was handed over, the earliest first. @param now - The job as it stands.
 * @returns Differences against the revision before; unknown where one of the two has no state.
 * @source COMMON-PRACTICE
 * @example One revision and nothing changed: no differences since
 */
export function revisionRecords(
  revisions: readonly HandedRevision[],
  now: HandedState,
): { readonly revisions: readonly RevisionRecord[]; readonly since: readonly Difference[] | undefined } {
  const between = (
    before: HandedState | undefined,
    after: HandedState | undefined,
  ): readonly Difference[] | undefined => (before && after ? differencesOf(before, after) : undefined);
  return {
    revisions: revisions.map(({ letter, date, by = "", reason, state }, i) => ({
      letter,
      date,
      by,
      reason,
      differences: between(revisions[i - 1]?.state, state),
    })),
    since: between(revisions.at(-1)?.state, now),
  };
}

/**
 * The letter of the next revision: the one after the highest that was given.
 *
 * @param letters - Letters given so far; others than A to Z are passed over. @returns "A" where none was given.
 * @source COMMON-PRACTICE
 * @example After "A" and "B": "C"; after "Z": "AA"
 */
export function nextLetter(letters: readonly string[]): string {
  const given = letters
    .map((letter) => letter.trim().toUpperCase())
    .filter((letter) => /^[A-Z]{1,3}$/.test(letter));
  return letterOf(Math.max(0, ...given.map(numberOf)) + 1);
}

/** Letters as a number to the base of 26 without a nought. */
const numberOf = (letters: string): number =>
  [...letters].reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0);

const letterOf = (number: number): string =>
  number <= 0 ? "" : letterOf(Math.floor((number - 1) / 26)) + String.fromCharCode(65 + ((number - 1) % 26));
