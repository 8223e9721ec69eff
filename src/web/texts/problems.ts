import { remedyOf as englishRemedy, sentenceOf as englishSentence, type Problem } from "#engine";
import { inWords } from "./told.ts";

const inEnglish = (problem: Problem) => ({
  ...problem,
  message: englishSentence(problem),
  remedy: englishRemedy(problem),
});

/** The sentence of a problem in the language that is spoken. */
export const sentenceOf = (problem: Problem): string => inWords(inEnglish(problem)).message;

/** How to mend a problem, in the language that is spoken. */
export const remedyOf = (problem: Problem): string => inWords(inEnglish(problem)).remedy;
