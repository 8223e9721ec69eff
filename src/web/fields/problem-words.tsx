import type { Problem } from "#engine";
import { remedyOf, sentenceOf } from "../texts/problems.ts";

/** What is wrong and how to mend it, in one line. */
export const wordsOf = (problem: Problem): string => `${sentenceOf(problem)} ${remedyOf(problem)}`;

/** What is wrong, and below it how to mend it. */
export const ProblemWords = ({ of }: { readonly of: readonly Problem[] }) =>
  of.map((problem) => (
    <div key={wordsOf(problem)}>
      <p>{sentenceOf(problem)}</p>
      <p className="hint">{remedyOf(problem)}</p>
    </div>
  ));
