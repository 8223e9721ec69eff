import { useEffect, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import {
  causeDescriptions,
  type FaultCause,
  type FaultTest,
  faultTests,
  nextTests,
  planFacts,
  type RankedCause,
  rankCauses,
  roomTitle,
  type SettingValues,
  type Symptom,
  shippedFaultKnowledge,
  symptomDescriptions,
  symptoms,
  type TestReading,
} from "#engine";
import { installationOf, type JobOpenPoint } from "#job";
import { faultLine } from "../calculate/fault-line.ts";
import type { FaultAnswer } from "../calculate/fault-protocol.ts";
import { isTrouble } from "../calculate/line.ts";
import type { OpenJob } from "../contract.ts";
import { More, Say } from "../fields/index.ts";
import { recordOf } from "../plan/pick.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { type TextKey, t } from "../texts/faults.ts";
import { percentText } from "../texts/index.ts";
import { Caution } from "../wire/index.ts";
import { correctionWords } from "./correction-words.ts";
import { enterFault } from "./enter.ts";
import "./site-test.css";

export interface FaultPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly room: string;
  readonly onClose: () => void;
}

/** Causes shown in full; the rest are behind one word. */
const shownCauses = 3;

/** From a complaint to its cause: what the plan says, one test after the other, and what mends it. */
export function FaultPanel({ job, store, room, onClose }: FaultPanelProps) {
  const [symptom, setSymptom] = useState<Symptom | undefined>();
  const [readings, setReadings] = useState<readonly TestReading[]>([]);
  const { known, trouble } = usePlanKnown(job, store, room);
  const found = useMemo(
    () => symptom && { symptom, facts: known && new Set(known.facts), readings },
    [symptom, known, readings],
  );
  const ranked = useMemo(() => found && rankCauses(found, shippedFaultKnowledge), [found]);
  const next = useMemo(() => found && nextTests(found, shippedFaultKnowledge), [found]);
  const title = roomTitle(recordOf(job.site, "rooms", room));
  return (
    <div className="stack test">
      <div className="row row-apart">
        <h2 className="panel-title">{title}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("fault.back")}
        </Button>
      </div>
      {trouble ? (
        <Say severity="must" live>
          {trouble}
        </Say>
      ) : null}
      {!symptom ? (
        <>
          <h3 className="test-stage">{t("fault.what")}</h3>
          <div>
            {symptoms.map((one) => (
              <Button key={one} className="line-button test-step-line" onPress={() => setSymptom(one)}>
                {symptomDescriptions[one]}
              </Button>
            ))}
          </div>
        </>
      ) : (
        <>
          <p className="row row-apart">
            <strong>{symptomDescriptions[symptom]}</strong>
            <Button
              className="button button-quiet"
              onPress={() => {
                setSymptom(undefined);
                setReadings([]);
              }}
            >
              {t("fault.other")}
            </Button>
          </p>
          {next?.[0] ? (
            <NextTest
              test={next[0].test}
              minutes={next[0].minutes}
              onOutcome={(outcome) =>
                setReadings([...readings, { test: next[0]!.test, outcome } as TestReading])
              }
            />
          ) : (
            <p>{t("fault.no-more")}</p>
          )}
          {readings.length > 0 ? (
            <Button className="button" onPress={() => setReadings(readings.slice(0, -1))}>
              {t("fault.take-back")}
            </Button>
          ) : null}
          <section aria-label={t("fault.causes")}>
            <h3 className="test-stage">{t("fault.causes")}</h3>
            {(ranked ?? []).slice(0, shownCauses).map((one) => (
              <Cause
                key={one.cause}
                job={job}
                ranked={one}
                known={known}
                onRecord={(text) => {
                  const point: JobOpenPoint = { id: job.newId("openPoints"), text, room, photos: [] };
                  enterFault(job, { room, symptom, cause: one.cause, readings, point });
                  store.set({ notice: t("fault.recorded") });
                  onClose();
                }}
              />
            ))}
            <More word={t("fault.others")}>
              <ul className="test-plain">
                {(ranked ?? []).slice(shownCauses, shownCauses + 7).map(({ cause, share }) => (
                  <li key={cause} className="hint">
                    {percentText(share)} {causeDescriptions[cause]}
                  </li>
                ))}
              </ul>
            </More>
          </section>
          <p className="hint">{t("fault.simulated")}</p>
        </>
      )}
    </div>
  );
}

/** What the plan says of a room, found out beside the screen. */
function usePlanKnown(
  job: OpenJob,
  store: Store<Workbench>,
  room: string,
): { readonly known: FaultAnswer | undefined; readonly trouble: string | undefined } {
  const settings = usePart(store, (bench) => ({ settings: bench.settings })).settings;
  const [answer, setAnswer] = useState<{ known?: FaultAnswer; trouble?: string }>({});
  const { site, kept } = job;
  const { boards, circuits } = kept;
  useEffect(() => {
    const line = faultLine();
    const planned = Object.fromEntries(
      (settings?.devices ?? []).map(({ context, settings: own }) => [
        context.device,
        Object.fromEntries(
          Object.entries(own).map(([name, { value }]) => [name, value]),
        ) as unknown as SettingValues,
      ]),
    );
    void line
      .ask({ site, room, found: installationOf({ boards, circuits }), settings: planned })
      .then((told) => {
        if (told) setAnswer(isTrouble(told) ? { trouble: told.sentence } : { known: told });
      });
    return line.stop;
  }, [site, boards, circuits, settings, room]);
  return { known: answer.known, trouble: answer.trouble };
}

function NextTest({
  test,
  minutes,
  onOutcome,
}: {
  readonly test: FaultTest;
  readonly minutes: number;
  readonly onOutcome: (outcome: string) => void;
}) {
  const { instruction, where } = shippedFaultKnowledge.descriptions[test];
  return (
    <section className="stack test-station" aria-label={t("fault.next")}>
      <p>
        <strong>{t("fault.next")}</strong>
        <span className="hint test-of">
          {t(`fault.where.${where}`)} · {t("fault.minutes", { minutes })}
        </span>
      </p>
      {where === "opened" ? <Caution /> : null}
      <p>{instruction}</p>
      <div className="fault-outcomes">
        {(faultTests[test] as readonly string[]).map((outcome) => (
          <Button key={outcome} className="button test-answer" onPress={() => onOutcome(outcome)}>
            {t(`fault.outcome.${outcome}` as TextKey)}
          </Button>
        ))}
      </div>
    </section>
  );
}

interface CauseProps {
  readonly job: OpenJob;
  readonly ranked: RankedCause;
  readonly known: FaultAnswer | undefined;
  readonly onRecord: (text: string) => void;
}

function Cause({ job, ranked, known, onRecord }: CauseProps) {
  const { cause, share } = ranked;
  const corrections = (known?.corrections.get(cause) ?? []).map((one) => correctionWords(job.site, one));
  const unique = [...new Set(corrections)];
  return (
    <div className="fault-cause">
      <p className="fault-cause-head">
        <span className="fault-share">{percentText(share)}</span>
        <span>{causeDescriptions[cause]}</span>
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
          {job.readOnly ? null : (
            <Button
              className="button"
              onPress={() => onRecord(`${causeDescriptions[cause as FaultCause]} ${unique[0] ?? ""}`.trim())}
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
              ? symptomDescriptions[about.symptom]
              : about.kind === "fact"
                ? about.holds
                  ? planFacts[about.fact]
                  : t("fault.not", { fact: planFacts[about.fact] })
                : `${shippedFaultKnowledge.descriptions[about.reading.test].instruction} ${t("fault.came-out", { outcome: t(`fault.outcome.${about.reading.outcome}` as TextKey) })}`;
          return <li key={text}>{text}</li>;
        })}
      </ul>
    </div>
  );
}
