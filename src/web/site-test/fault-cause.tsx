import { Button } from "react-aria-components";
import {
  causeDescriptions,
  planFacts,
  type RankedCause,
  shippedFaultKnowledge,
  symptomDescriptions,
} from "#engine";
import type { FaultAnswer } from "../calculate/fault-protocol.ts";
import type { OpenJob } from "../contract.ts";
import { More } from "../fields/index.ts";
import { type TextKey, t } from "../texts/faults.ts";
import { percentText, spoken } from "../texts/index.ts";
import { correctionWords } from "./correction-words.ts";

interface CauseProps {
  readonly job: OpenJob;
  readonly ranked: RankedCause;
  readonly known: FaultAnswer | undefined;
  /** Absent: nothing is recorded from here. */
  readonly onRecord?: (text: string) => void;
}

/** A cause with its share of belief, what speaks for and against it, and what mends it. */
export function Cause({ job, ranked, known, onRecord }: CauseProps) {
  const { cause, share } = ranked;
  const corrections = (known?.corrections.get(cause) ?? []).map((one) => correctionWords(job.site, one));
  const unique = [...new Set(corrections)];
  return (
    <div className="fault-cause">
      <p className="fault-cause-head">
        <span className="fault-share">{percentText(share)}</span>
        <span>{spoken(causeDescriptions[cause])}</span>
      </p>
      <More word={t("fault.why")}>
        <div className="stack">
          <Arguments word={t("fault.for")} of={ranked.for} />
          <Arguments word={t("fault.against")} of={ranked.against} />
          {unique.length > 0 ? (
            <div>
              <p className="field-label">{t("fault.mends")}</p>
              <ul className="test-plain">
                {unique.map((one) => (
                  <li key={one}>{one}</li>
                ))}
              </ul>
            </div>
          ) : null}
          {job.readOnly || !onRecord ? null : (
            <Button
              className="button"
              onPress={() => onRecord(`${spoken(causeDescriptions[cause])} ${unique[0] ?? ""}`.trim())}
            >
              {t("fault.record")}
            </Button>
          )}
        </div>
      </More>
    </div>
  );
}

function Arguments({ word, of }: { readonly word: string; readonly of: RankedCause["for"] }) {
  if (of.length === 0) return null;
  return (
    <div>
      <p className="field-label">{word}</p>
      <ul className="test-plain">
        {of.slice(0, 4).map(({ about }) => {
          const text =
            about.kind === "symptom"
              ? spoken(symptomDescriptions[about.symptom])
              : about.kind === "fact"
                ? about.holds
                  ? spoken(planFacts[about.fact])
                  : t("fault.not", { fact: spoken(planFacts[about.fact]) })
                : `${spoken(shippedFaultKnowledge.descriptions[about.reading.test].instruction)} ${t("fault.came-out", { outcome: t(`fault.outcome.${about.reading.outcome}` as TextKey) })}`;
          return <li key={text}>{text}</li>;
        })}
      </ul>
    </div>
  );
}
