import { sources, sourceTitle } from "#engine";
import { Say } from "../../fields/index.ts";
import { VerifyMark } from "../../findings/evidence.tsx";
import { spoken } from "../../texts/index.ts";
import { t } from "../../texts/visit.ts";
import type { Question } from "./questions.ts";

/** What should be looked at again; the reading stays as it was typed. */
export function Questions({ questions }: { readonly questions: readonly Question[] }) {
  if (questions.length === 0) return null;
  return (
    <Say severity="should" live>
      {questions.map(({ word, values, source }) => (
        <p key={word}>
          {t(word, values)} <span className="hint">{spoken(sourceTitle(source))}</span>{" "}
          {sources[source].verify ? <VerifyMark /> : null}
        </p>
      ))}
    </Say>
  );
}
