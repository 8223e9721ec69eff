import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import {
  causeDescriptions,
  MOST_QUESTIONS,
  nextQuestion,
  type RankedCause,
  rankCauses,
  roomTitle,
  type Symptom,
  shippedFaultKnowledge,
  symptomDescriptions,
  symptoms,
  type TestReading,
  toBring,
} from "#engine";
import type { JobOpenPoint } from "#job";
import type { OpenJob } from "../contract.ts";
import { Say, TextBox } from "../fields/index.ts";
import { recordOf } from "../plan/pick.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { enterFault } from "../site-test/enter.ts";
import { Cause } from "../site-test/fault-cause.tsx";
import { NextTest } from "../site-test/next-test.tsx";
import { usePlanKnown } from "../site-test/plan-known.ts";
import { t } from "../texts/after.ts";
import { percentText, spoken } from "../texts/index.ts";
import "../site-test/site-test.css";

export interface CallBackPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly onClose: () => void;
}

/** Causes that are shown and kept; less than this nobody drives for. */
const shownCauses = 3;
const leastShare = 0.02;

/** Somebody calls: five questions, causes ranked before anybody drives, kept as an open point. */
export function CallBackPanel({ job, store, onClose }: CallBackPanelProps) {
  const { site } = job;
  const [room, setRoom] = useState<string | undefined>();
  const watched = new Set(site.detectors.flatMap(({ room: own, controls }) => [own, ...controls]));
  return (
    <div className="stack test">
      <div className="row row-apart">
        <h2 className="panel-title">{t("after.call")}</h2>
        <Button
          className="button button-quiet"
          onPress={() => (room === undefined ? onClose() : setRoom(undefined))}
        >
          {t("after.back")}
        </Button>
      </div>
      {room === undefined ? (
        <>
          <p className="hint">{t("after.call.what")}</p>
          <h3 className="test-stage">{t("after.call.room")}</h3>
          <div>
            {site.rooms
              .filter(({ id }) => watched.has(id))
              .map((one) => (
                <Button key={one.id} className="line-button test-step-line" onPress={() => setRoom(one.id)}>
                  {roomTitle(one)}
                </Button>
              ))}
          </div>
        </>
      ) : (
        <Call key={room} job={job} store={store} room={room} onClose={onClose} />
      )}
    </div>
  );
}

function Call({ job, store, room, onClose }: CallBackPanelProps & { readonly room: string }) {
  const [symptom, setSymptom] = useState<Symptom | undefined>();
  const [readings, setReadings] = useState<readonly TestReading[]>([]);
  const { known, trouble } = usePlanKnown(job, store, room);
  const found = useMemo(
    () => symptom && { symptom, facts: known && new Set(known.facts), readings },
    [symptom, known, readings],
  );
  const ranked = useMemo(
    () =>
      found
        ? rankCauses(found, shippedFaultKnowledge)
            .slice(0, shownCauses)
            .filter(({ share }, i) => i === 0 || share >= leastShare)
        : [],
    [found],
  );
  const next = useMemo(() => found && nextQuestion(found, shippedFaultKnowledge), [found]);
  const bring = toBring(ranked.flatMap(({ cause }) => known?.corrections.get(cause) ?? [])).map((thing) =>
    t(`after.call.bring.${thing}`),
  );
  const title = roomTitle(recordOf(job.site, "rooms", room));
  if (!symptom)
    return (
      <>
        <h3 className="test-stage">
          {title} · {t("after.call.question", { number: 1, most: MOST_QUESTIONS })}
        </h3>
        <p>{t("after.call.complaint")}</p>
        <div>
          {symptoms.map((one) => (
            <Button key={one} className="line-button test-step-line" onPress={() => setSymptom(one)}>
              {spoken(symptomDescriptions[one])}
            </Button>
          ))}
        </div>
      </>
    );
  const takeBack = (): void => {
    if (readings.length > 0) setReadings(readings.slice(0, -1));
    else setSymptom(undefined);
  };
  const keep = (who: string): void => {
    const point: JobOpenPoint = {
      id: job.newId("openPoints"),
      text: pointText({ symptom, ranked, bring, who }),
      room,
      origin: "call-back",
      photos: [],
    };
    enterFault(job, { room, symptom, readings, point });
    store.set({ notice: t("after.call.kept") });
    onClose();
  };
  return (
    <>
      <p>
        <strong>{title}</strong>
        <span className="hint test-of">{spoken(symptomDescriptions[symptom])}</span>
      </p>
      {trouble ? (
        <Say severity="must" live>
          {trouble}
        </Say>
      ) : null}
      {next ? (
        <NextTest
          heading={t("after.call.question", { number: readings.length + 2, most: MOST_QUESTIONS })}
          test={next.test}
          minutes={next.minutes}
          onOutcome={(outcome) => setReadings([...readings, { test: next.test, outcome } as TestReading])}
        />
      ) : (
        <p role="status">
          {readings.length + 1 >= MOST_QUESTIONS
            ? t("after.call.asked", { count: readings.length + 1 })
            : t("after.call.enough")}
        </p>
      )}
      <Button className="button" onPress={takeBack}>
        {t("after.call.back")}
      </Button>
      <section aria-label={t("after.call.causes")}>
        <h3 className="test-stage">{t("after.call.causes")}</h3>
        {ranked.map((one) => (
          <Cause key={one.cause} job={job} ranked={one} known={known} />
        ))}
      </section>
      {bring.length > 0 ? (
        <p>
          <strong>{t("after.call.bring")}</strong> {bring.join(", ")}
        </p>
      ) : null}
      <p className="hint">{t("after.call.simulated")}</p>
      {job.readOnly ? null : <Keep onKeep={keep} />}
    </>
  );
}

function Keep({ onKeep }: { readonly onKeep: (who: string) => void }) {
  const [who, setWho] = useState("");
  return (
    <>
      <TextBox label={t("after.call.who")} value={who} onChange={setWho} />
      <Button className="button button-first wide-button" onPress={() => onKeep(who)}>
        {t("after.call.keep")}
      </Button>
    </>
  );
}

/** The call in one paragraph: it is read in the van. */
function pointText(of: {
  readonly symptom: Symptom;
  readonly ranked: readonly RankedCause[];
  readonly bring: readonly string[];
  readonly who: string;
}): string {
  const causes = of.ranked
    .map(({ cause, share }) =>
      t("after.call.cause", {
        share: percentText(share),
        cause: spoken(causeDescriptions[cause]).replace(/\.$/, ""),
      }),
    )
    .join("; ");
  return [
    t("after.call.point", { complaint: spoken(symptomDescriptions[of.symptom]), causes }),
    of.bring.length > 0 ? t("after.call.point.bring", { things: of.bring.join(", ") }) : "",
    of.who === "" ? "" : t("after.call.point.who", { who: of.who }),
  ]
    .filter(Boolean)
    .join(" ");
}
