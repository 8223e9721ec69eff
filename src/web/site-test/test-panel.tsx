import { useState } from "react";
import { Button } from "react-aria-components";
import { roomTitle } from "#engine";
import type { OpenJob } from "../contract.ts";
import { TextBox } from "../fields/index.ts";
import type { Actions } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { Signatures } from "../sign/index.ts";
import { t } from "../texts/test.ts";
import { Caution } from "../wire/index.ts";
import { Instruments } from "./instruments.tsx";
import { OpenPoints } from "./open-points.tsx";
import { SamplingSection } from "./sampling-section.tsx";
import { placeName } from "./step-words.ts";
import { setTester, useTester } from "./tester.ts";
import { useWalks } from "./use-walks.ts";
import { VerdictWord } from "./verdict-word.tsx";
import { progressOf, verdictOf } from "./verdicts.ts";
import { progressAt, type WorkPlace, workOf } from "./work.ts";
import "./site-test.css";

export interface TestPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
}

/** What is to be tested on site, room by room, and how far it is. */
export function TestPanel({ job, store, actions }: TestPanelProps) {
  const { site } = job;
  const watched = new Set(site.detectors.map(({ room }) => room));
  const rooms = site.rooms.filter(({ id }) => watched.has(id));
  const trouble = useWalks(
    store,
    rooms.map(({ id }) => id),
  );
  const { walks, settings } = usePart(store, (bench) => ({ walks: bench.walks, settings: bench.settings }));
  const [work] = useState(workOf);
  const state = work(job, settings);
  const goOn = (at: WorkPlace): void => store.set({ panel: { kind: "work", at }, selection: [] });
  const begin = (room: string): void => {
    const record = site.rooms.find(({ id }) => id === room);
    if (record) actions.goTo(record.storey);
    store.set({
      panel: { kind: "walk", room },
      selection: [],
      walks: { ...store.get().walks, station: undefined },
    });
  };
  return (
    <div className="stack test">
      <h2 className="panel-title">{t("shell.panel.test")}</h2>
      <Caution />
      {rooms.length === 0 ? <p>{t("test.empty")}</p> : <Who />}
      {rooms.length === 0 ? null : (
        <div className="test-ways">
          {(["scan", "phone"] as const).map((kind) => (
            <Button key={kind} className="button" onPress={() => store.set({ panel: { kind } })}>
              {t(`shell.panel.${kind}`)}
            </Button>
          ))}
        </div>
      )}
      {trouble ? <p className="hint">{trouble}</p> : null}
      {state.order.groups.length > 0 ? (
        <section aria-label={t("test.circuits")}>
          <h3 className="test-stage">{t("test.circuits")}</h3>
          {state.order.groups.map(({ id }) => {
            const at = { kind: "group", id } as const;
            const { all, behind, failed } = progressAt(state, at);
            return (
              <Button key={id} className="line-button test-room" onPress={() => goOn(at)}>
                <span className="test-room-name">{placeName(job, state, at)}</span>
                <span className="hint">
                  {t("test.work", { behind, all })}
                  {state.dead.has(id)
                    ? ` · ${t("test.power.dead")}`
                    : state.live.has(id)
                      ? ` · ${t("test.power.live")}`
                      : ""}
                </span>
                {failed > 0 ? (
                  <VerdictWord verdict="fail" />
                ) : behind === all ? (
                  <VerdictWord verdict="pass" />
                ) : null}
              </Button>
            );
          })}
        </section>
      ) : null}
      <section aria-label={t("test.rooms")}>
        {rooms.length > 0 ? <h3 className="test-stage">{t("test.rooms")}</h3> : null}
        {rooms.map((room) => {
          const planned = walks.of === site ? walks.rooms.get(room.id) : undefined;
          const verdict = planned && verdictOf(job, planned);
          const progress = verdict && progressOf(verdict);
          return (
            <Button key={room.id} className="line-button test-room" onPress={() => begin(room.id)}>
              <span className="test-room-name">{roomTitle(room)}</span>
              <span className="hint">
                {!progress
                  ? t("test.planning")
                  : progress.all === 0
                    ? t("test.nothing")
                    : progress.walked === 0
                      ? t("test.room", {
                          count: progress.all,
                          minutes: Math.max(1, Math.round((planned?.test.seconds.attended ?? 0) / 60)),
                        })
                      : t("test.room.walked", { walked: progress.walked, all: progress.all })}
              </span>
              {verdict && progress && progress.walked > 0 ? (
                <VerdictWord verdict={verdict.check.verdict} />
              ) : null}
            </Button>
          );
        })}
      </section>
      {rooms.length > 0 ? (
        <>
          <SamplingSection job={job} state={state} settings={settings} />
          <OpenPoints job={job} />
          <Instruments job={job} />
          <Signatures job={job} purpose="test" />
        </>
      ) : null}
    </div>
  );
}

/** Who tests: it stands beside every entry. */
function Who() {
  const { name, role } = useTester();
  return (
    <div className="fields">
      <TextBox label={t("test.who")} value={name} onChange={(next) => setTester({ name: next })} />
      <TextBox label={t("test.role")} value={role} onChange={(next) => setTester({ role: next })} />
    </div>
  );
}
