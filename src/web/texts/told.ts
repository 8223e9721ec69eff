import { type Finding, filled } from "#engine";
import { spokenProblems } from "./language.ts";

/** A problem that was put into words, in English, where it was found. */
export type Told = Pick<Finding, "code" | "values" | "message" | "remedy">;

/**
 * What is wrong and how to mend it, in the language that is spoken. Unlike a problem as data it brings its English words along,
 * so that a page that shows only such needs no catalogue of problems.
 */
export function inWords(told: Told): { readonly message: string; readonly remedy: string } {
  const spoken = spokenProblems()?.[told.code];
  if (!spoken) return told;
  return { message: filled(spoken.message, told.values), remedy: filled(spoken.remedy, told.values) };
}

/** The same in one line. */
export const oneLine = (told: Told): string => {
  const { message, remedy } = inWords(told);
  return `${message} ${remedy}`;
};
