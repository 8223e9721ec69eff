import type { FaultCorrection } from "./correction.ts";
import type { FaultKnowledge } from "./knowledge-types.ts";
import type { FaultTest } from "./names.ts";
import { type NextTest, nextTests } from "./next-tests.ts";
import type { FaultCase } from "./rank.ts";

/** Questions of a call, the complaint itself counted: more than five nobody answers gladly. @source COMMON-PRACTICE */
export const MOST_QUESTIONS = 5;

/** What somebody in the room can try for us with the telephone in the hand. */
const byCaller: ReadonlySet<FaultTest> = new Set<FaultTest>(["press-button", "walk-in", "walk-beneath"]);

/**
 * The question that tells the causes apart best and that a caller can answer.
 *
 * @param found - The complaint, the plan's facts, and the answers so far. @param knowledge - Chances and descriptions.
 * @returns The next question; undefined: five were asked with the complaint, or none tells more.
 * @source SHANNON-1948
 * @example The light stays on, nothing asked yet: one of the questions by phone
 */
export function nextQuestion(found: FaultCase, knowledge: FaultKnowledge): NextTest | undefined {
  if (found.readings.length + 1 >= MOST_QUESTIONS) return undefined;
  return nextTests(found, knowledge).find(
    ({ test }) => knowledge.descriptions[test].where === "phone" || byCaller.has(test),
  );
}

/** What goes into the van. */
export type ToBring =
  | "detector"
  | "driver"
  | "contactor"
  | "base-load"
  | "suppressor"
  | "lens-mask"
  | "test-link";

/**
 * What to bring for the corrections of the likeliest causes.
 *
 * @param corrections - Of one or several causes. @returns Each thing once, in the order of the corrections.
 * @source COMMON-PRACTICE
 * @example A driver to be replaced: "driver"
 */
export function toBring(corrections: readonly FaultCorrection[]): readonly ToBring[] {
  return [...new Set(corrections.flatMap(thingsFor))];
}

function thingsFor(correction: FaultCorrection): readonly ToBring[] {
  switch (correction.kind) {
    case "replace":
      return correction.what === "contact" ? ["detector", "contactor"] : [correction.what];
    case "fit":
      return [correction.what === "base-load" ? "base-load" : "suppressor"];
    case "mask":
      return ["lens-mask"];
    case "move-or-add":
      return ["detector"];
    case "rewire":
    case "repair":
      return ["test-link"];
    default:
      return [];
  }
}
