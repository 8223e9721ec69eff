import { day, type Finding, type Words, worded } from "#engine";
import { spokenProblems, spokenTongue } from "./language.ts";

/** What the engine says, in the language that is spoken. */
export const spoken = (said: Words): string => worded(said, spokenTongue());

/** A day, YYYY-MM-DD, as the language that is spoken writes it. */
export const dayText = (text: string): string => spoken(day(text));

/** A problem that was put into words, in English, where it was found. */
export type Told = Pick<Finding, "code" | "values" | "message" | "remedy">;

/**
 * What is wrong and how to mend it, in the language that is spoken. Unlike a problem as data it brings its English words along,
 * so that a page that shows only such needs no catalogue of problems.
 */
export function inWords(told: Told): { readonly message: string; readonly remedy: string } {
  const own = spokenProblems()?.[told.code];
  if (!own) return told;
  const { values } = told;
  return { message: spoken({ text: own.message, values }), remedy: spoken({ text: own.remedy, values }) };
}

/** The same in one line. */
export const oneLine = (told: Told): string => {
  const { message, remedy } = inWords(told);
  return `${message} ${remedy}`;
};
