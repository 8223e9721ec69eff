import { useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import {
  inside,
  mayEnter,
  type Site,
  type StepName,
  type StepState,
  stageTitles,
  stepTitles,
  type WorkState,
} from "#engine";
import type { OpenJob } from "../contract.ts";
import { Say, SeverityShape } from "../fields/index.ts";
import { nameOf } from "../plan/names.ts";
import type { Actions } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { t } from "../texts/test.ts";
import { Caution } from "../wire/index.ts";
import { useAwake } from "./awake.ts";
import { Countdown } from "./countdown.tsx";
import { StepEntry } from "./step-entry.tsx";
import { aboutWords, placeName, stepDeed, stepTitle } from "./step-words.ts";
import { nextAt, stepsAt, type WorkPlace, workOf } from "./work.ts";
import "./site-test.css";
import { spoken } from "../texts/index.ts";
import { remedyOf, sentenceOf } from "../texts/problems.ts";

export interface WorkPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly at: WorkPlace;
  readonly onClose: () => void;
}

/** The order of work at one group of circuits, or in one room: the next step large, all of them below. */
export function WorkPanel({ job, store, at, onClose }: WorkPanelProps) {
  useAwake();
  const settings = usePart(store, (bench) => ({ settings: bench.settings })).settings;
  const [work] = useState(workOf);
  const [chosen, setChosen] = useState<string | undefined>();
  const state = work(job, settings);
  const stages = stepsAt(state, at);
  const current = (chosen === undefined ? undefined : state.steps.get(chosen)) ?? nextAt(state, at);
  const dead = at.kind === "group" && state.dead.has(at.id);
  const live = at.kind === "group" && state.live.has(at.id);
  return (
    <div className="stack test">
      <div className="row row-apart">
        <h2 className="panel-title">{placeName(job, state, at)}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("test.back")}
        </Button>
      </div>
      {at.kind === "group" ? (
        <>
          <p className={`test-power test-power-${dead ? "dead" : live ? "live" : "unknown"}`} role="status">
            <SeverityShape severity={dead ? "note" : "must"} />
            {t(dead ? "test.power.dead" : live ? "test.power.live" : "test.power.unknown")}
          </p>
          <Caution />
        </>
      ) : null}
      {current ? (
        <StepCard
          key={`${current.step.id} ${job.kept.testEntries.length}`}
          job={job}
          state={state}
          current={current}
          onEntered={() => setChosen(undefined)}
          onWalk={(room) => store.set({ panel: { kind: "walk", room } })}
        />
      ) : (
        <p>{t("test.work.done")}</p>
      )}
      {stages.map(({ stage, steps }) => (
        <section key={stage} aria-label={spoken(stageTitles[stage])}>
          <h3 className="test-stage">{spoken(stageTitles[stage])}</h3>
          {steps.map((one) => (
            <Button
              key={one.step.id}
              className="line-button test-step-line"
              {...(one === current ? { "aria-current": "step" as const } : {})}
              onPress={() => setChosen(one.step.id)}
            >
              <span>
                {stepTitle(one.step)}
                <span className="hint test-of">{aboutWords(job, one.step)}</span>
              </span>
              <span className={`test-word test-status-${one.status}`}>{t(`test.status.${one.status}`)}</span>
            </Button>
          ))}
        </section>
      ))}
    </div>
  );
}

interface StepCardProps {
  readonly job: OpenJob;
  readonly state: WorkState;
  readonly current: StepState;
  readonly onEntered: () => void;
  readonly onWalk: (room: string) => void;
}

function StepCard({ job, state, current, onEntered, onWalk }: StepCardProps) {
  const { step } = current;
  const { site } = job;
  const permission = mayEnter(state, step.id, site);
  const own = useRef<HTMLElement | null>(null);
  // The step that one has come to is in sight, wherever in the list it was chosen. Some browsers answer with a promise, which is no way to end an effect.
  useEffect(() => {
    own.current?.scrollIntoView({ block: "nearest" });
  }, []);
  return (
    <section ref={own} className="stack test-station" aria-label={stepTitle(step)}>
      <p className="test-step-head">
        <strong>{stepTitle(step)}</strong>
        <span className="hint test-of">{aboutWords(job, step)}</span>
      </p>
      <p>{stepDeed(step)}</p>
      {step.cautions.length > 0 ? (
        <ul className="test-cautions">
          {step.cautions.map((caution) => (
            <li key={caution}>
              <SeverityShape severity="must" />
              <span>{t(`test.caution.${caution}`)}</span>
            </li>
          ))}
        </ul>
      ) : null}
      {permission.problems.map((problem) => (
        <Say key={`${problem.code} ${problem.records?.join(" ")}`} severity="must">
          <p>{toldIn(site, problem)}</p>
          <p className="hint">{remedyOf(problem)}</p>
        </Say>
      ))}
      {step.wait !== undefined ? (
        <Countdown parts={[{ seconds: step.wait, word: t("test.clock.wait") }]} />
      ) : null}
      {step.result.kind === "stations" && step.room !== undefined && step.name === "walk-test" ? (
        <Button className="button wide-button" onPress={() => onWalk(step.room ?? "")}>
          {t("test.work.walk", { room: nameOf(site, { kind: "rooms", id: step.room }) })}
        </Button>
      ) : null}
      {job.readOnly ? null : (
        <StepEntry job={job} current={current} allowed={permission.allowed} onEntered={onEntered} />
      )}
    </section>
  );
}

/** A refusal in words: ids and step names are not for people. */
function toldIn(site: Site, problem: Parameters<typeof sentenceOf>[0]): string {
  const { step, about, missing } = problem.values as { step?: StepName; about?: string; missing?: number };
  if (step === undefined) return sentenceOf(problem);
  const what = spoken(inside(stepTitles[step]));
  switch (problem.code) {
    case "step-out-of-order":
      return t("test.refused.order", { count: missing ?? 0 });
    case "step-needs-dead":
      return t("test.refused.dead");
    case "power-refused-failed":
      return t("test.refused.failed", { what, about: nameIn(site, about ?? "") });
    case "power-refused-test":
      return t("test.refused.test", { what, about: nameIn(site, about ?? "") });
    default:
      return sentenceOf(problem);
  }
}

const nameIn = (site: Site, id: string): string =>
  site.detectors.find((one) => one.id === id)?.tag ?? site.rooms.find((one) => one.id === id)?.name ?? id;
