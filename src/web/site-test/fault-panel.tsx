import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import {
  causeDescriptions,
  nextTests,
  rankCauses,
  roomTitle,
  type Symptom,
  shippedFaultKnowledge,
  symptomDescriptions,
  symptoms,
  type TestReading,
} from "#engine";
import type { JobOpenPoint } from "#job";
import type { OpenJob } from "../contract.ts";
import { More, Say } from "../fields/index.ts";
import { recordOf } from "../plan/pick.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { t } from "../texts/faults.ts";
import { percentText, spoken } from "../texts/index.ts";
import { enterFault } from "./enter.ts";
import { Cause } from "./fault-cause.tsx";
import { NextTest } from "./next-test.tsx";
import { usePlanKnown } from "./plan-known.ts";
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
                {spoken(symptomDescriptions[one])}
              </Button>
            ))}
          </div>
        </>
      ) : (
        <>
          <p className="row row-apart">
            <strong>{spoken(symptomDescriptions[symptom])}</strong>
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
              heading={t("fault.next")}
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
                    {percentText(share)} {spoken(causeDescriptions[cause])}
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
