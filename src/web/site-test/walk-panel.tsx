import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { english, joined, type RoomVerdict, type Site, type StationVerdict } from "#engine";
import type { OpenJob } from "../contract.ts";
import { More, Say, TextBox } from "../fields/index.ts";
import { nameOf } from "../plan/names.ts";
import { recordOf } from "../plan/pick.ts";
import { useUnits } from "../settings/preferences.ts";
import type { Actions } from "../shell/actions.ts";
import { type Store, usePart, type Workbench } from "../shell/workbench.ts";
import { lengthText, spoken } from "../texts/index.ts";
import { t } from "../texts/test.ts";
import { hum, tone, useAwake } from "./awake.ts";
import { Countdown } from "./countdown.tsx";
import { DistanceTaken } from "./distance-taken.tsx";
import { enterStation } from "./enter.ts";
import { FoundSection } from "./found-section.tsx";
import { clockOf } from "./local-time.ts";
import { answersOf, expectedText, stationDeed, stationTitle } from "./station-words.ts";
import { useWalks } from "./use-walks.ts";
import { VerdictWord } from "./verdict-word.tsx";
import { verdictOf } from "./verdicts.ts";
import "./site-test.css";

export interface WalkPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly actions: Actions;
  readonly room: string;
  /** All stations from the beginning; a short test if absent. */
  readonly full?: true | undefined;
  readonly onClose: () => void;
}

/** The walk test of one room: station by station, large, for one hand. */
export function WalkPanel({ job, store, actions, room, full: whole, onClose }: WalkPanelProps) {
  useAwake();
  const [full, setFull] = useState(whole === true);
  const trouble = useWalks(store, [room], full ? "full" : "short");
  const { walks } = usePart(store, (bench) => ({ walks: bench.walks }));
  const planned = walks.of === job.site ? walks.rooms.get(room) : undefined;
  const verdict = planned && verdictOf(job, planned);
  const current =
    verdict?.stations.find(({ station }) => station.id === walks.station) ??
    verdict?.stations.find(({ check }) => check.verdict === "not-proven") ??
    verdict?.stations[0];
  const goTo = (id: string | undefined): void => store.set({ walks: { ...store.get().walks, station: id } });
  const id = current?.station.id;
  useEffect(() => {
    if (id !== undefined && store.get().walks.station !== id)
      store.set({ walks: { ...store.get().walks, station: id } });
  }, [store, id]);
  const { testEntries } = job.kept;
  const storey = recordOf(job.site, "rooms", room)?.storey ?? "";
  // biome-ignore lint/correctness/useExhaustiveDependencies: the verdict follows from what is listed
  useEffect(() => {
    const marks = verdict && {
      storey,
      stations: verdict.stations.map(({ station, check }, i) => ({
        number: i + 1,
        path: station.path,
        verdict: check.verdict,
        current: station.id === id,
        back: station.passes > 1,
      })),
    };
    store.set({ walks: { ...store.get().walks, marks } });
  }, [store, planned, testEntries, id, storey]);
  const from = current?.station.path.at(-1);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looks again only when one goes on to another station
  useEffect(() => {
    if (from) actions.lookAt(from);
  }, [id]);
  useEffect(
    () => () => store.set({ walks: { ...store.get().walks, station: undefined, marks: undefined } }),
    [store],
  );
  const title = nameOf(job.site, { kind: "rooms", id: room });
  return (
    <div className="stack test">
      <div className="row row-apart">
        <h2 className="panel-title">{title}</h2>
        <Button className="button button-quiet" onPress={onClose}>
          {t("test.all-rooms")}
        </Button>
      </div>
      {trouble ? (
        <Say severity="must" live>
          {trouble}
        </Say>
      ) : null}
      {!planned || !verdict ? (
        <p className="hint" role="status">
          {t("test.planning")}
        </p>
      ) : !current ? (
        <p>{t("test.nothing")}</p>
      ) : (
        <>
          <StationCard
            key={`${current.station.id} ${current.latest?.id}`}
            job={job}
            store={store}
            at={current}
            number={verdict.stations.indexOf(current) + 1}
            of={verdict.stations.length}
            onDone={() => goTo(nextOpen(verdict, current))}
          />
          <Summary verdict={verdict} site={job.site} current={current} onGo={goTo} />
          <FoundSection job={job} store={store} planned={planned} />
          <p className="hint">
            {t("test.minutes", { minutes: Math.max(1, Math.round(planned.test.seconds.attended / 60)) })}
            {planned.test.seconds.waiting > 0
              ? ` ${t("test.minutes.waiting", { minutes: Math.round(planned.test.seconds.waiting / 60) })}`
              : ""}
          </p>
          <Button
            className="button wide-button"
            onPress={() => store.set({ panel: { kind: "work", at: { kind: "room", id: room } } })}
          >
            {t("test.work.more")}
          </Button>
          <Button
            className="button wide-button"
            onPress={() => store.set({ panel: { kind: "fault", room } })}
          >
            {t("test.wrong")}
          </Button>
          {planned.test.left.stations > 0 || full ? (
            <Button className="button wide-button" onPress={() => setFull(!full)}>
              {full ? t("test.short") : t("test.full", { count: planned.test.left.stations })}
            </Button>
          ) : null}
        </>
      )}
    </div>
  );
}

/** The next station in the order of the tour that was not walked, going round; undefined when there is none. */
function nextOpen({ stations }: RoomVerdict, after: StationVerdict): string | undefined {
  const at = stations.indexOf(after);
  const round = [...stations.slice(at + 1), ...stations.slice(0, at)];
  return (round.find(({ check }) => check.verdict === "not-proven") ?? after).station.id;
}

interface StationCardProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly at: StationVerdict;
  readonly number: number;
  readonly of: number;
  readonly onDone: () => void;
}

function StationCard({ job, store, at, number, of, onDone }: StationCardProps) {
  const units = useUnits();
  const { station, latest, check } = at;
  const [distance, setDistance] = useState<number | undefined>();
  const [remark, setRemark] = useState("");
  const { good, bad } = answersOf(station);
  const measures = station.expected.kind === "seen-from" || station.expected.kind === "lit-within";
  const wantsSeen = station.expected.kind !== "not-seen";
  const enter = (asExpected: boolean): void => {
    const seen = asExpected === wantsSeen;
    enterStation(job, station, { seen, ...(seen && measures ? { distance } : {}), remark });
    hum("done");
    tone("done");
    onDone();
  };
  return (
    <section className="stack test-station" aria-label={t("test.station", { number, of })}>
      <p className="test-station-head">
        <span className="test-number">{number}</span>
        <span>
          <strong>{stationTitle(job.site, station)}</strong>
          <span className="hint test-of">{t("test.station", { number, of })}</span>
        </span>
      </p>
      <p>{stationDeed(job.site, station, units)}</p>
      {station.kind === "still" ? (
        <Countdown
          key={station.id}
          parts={[
            { seconds: 30, word: t("test.clock.still") },
            { seconds: 30, word: t("test.clock.hands") },
          ]}
        />
      ) : station.waiting > 0 ? (
        <Countdown key={station.id} parts={[{ seconds: station.waiting, word: t("test.clock.empty") }]} />
      ) : null}
      {job.readOnly ? null : (
        <>
          {measures ? (
            <DistanceTaken
              site={job.site}
              station={station}
              store={store}
              value={distance}
              onChange={setDistance}
            />
          ) : null}
          <div className="test-answers">
            <Button className="button button-first test-answer" onPress={() => enter(true)}>
              {good}
            </Button>
            <Button className="button test-answer" onPress={() => enter(false)}>
              {bad}
            </Button>
          </div>
          <More word={t("test.remark.add")}>
            <TextBox label={t("test.remark")} value={remark} onChange={setRemark} />
          </More>
        </>
      )}
      <p className="hint">
        {t("test.planned", { expected: expectedText(station, units) })}
        {latest
          ? ` ${t("test.last", {
              time: clockOf(entryOf(job, latest.id)),
              what: latest.seen === wantsSeen ? good : bad,
              distance: latest.distance === undefined ? "" : `, ${lengthText(latest.distance, units)}`,
            })}`
          : ""}
      </p>
      {latest && check.verdict === "not-proven" ? (
        <p className="row">
          <VerdictWord verdict={check.verdict} />
          <span className="hint">{spoken(joined(check.assumptions, ". "))}.</span>
        </p>
      ) : null}
    </section>
  );
}

const entryOf = ({ kept }: OpenJob, entry: string): { readonly time: string; readonly zone?: string } =>
  kept.testEntries.find(({ id }) => id === entry) ?? { time: "" };

function Summary({
  verdict,
  site,
  current,
  onGo,
}: {
  readonly verdict: RoomVerdict;
  readonly site: Site;
  readonly current: StationVerdict;
  readonly onGo: (id: string) => void;
}) {
  const open = verdict.stations.filter(({ check }) => check.verdict === "not-proven").length;
  return (
    <section aria-label={t("test.stations")}>
      <p className="test-verdict">
        <VerdictWord verdict={verdict.check.verdict} />
        <span>
          {t("test.passed", {
            passed: Number(verdict.check.actual ?? 0),
            all: verdict.stations.length,
            open,
          })}
        </span>
      </p>
      {verdict.check.assumptions.slice(open > 0 ? 1 : 0).map((one) => (
        <p key={english(one)} className="hint">
          {spoken(one)}.
        </p>
      ))}
      <ol className="test-list">
        {verdict.stations.map((one, i) => (
          <li key={one.station.id}>
            <Button
              className="line-button test-line"
              {...(one === current ? { "aria-current": "step" as const } : {})}
              onPress={() => onGo(one.station.id)}
            >
              <span className="test-number">{i + 1}</span>
              <span>{stationTitle(site, one.station)}</span>
              <VerdictWord
                verdict={one.check.verdict}
                why={one.check.assumptions[0] && spoken(one.check.assumptions[0])}
              />
            </Button>
          </li>
        ))}
      </ol>
    </section>
  );
}
