import { useEffect, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { daySeconds, roomTitle, type Seconds, type Site, type Stay, type SwitchedLoad } from "#engine";
import type { OpenJob } from "../contract.ts";
import { FigureField, More, Pick, Say } from "../fields/index.ts";
import type { Store, Workbench } from "../shell/workbench.ts";
import { t } from "../texts/day.ts";
import { clockText, spanText } from "./clock.ts";
import {
  type DayDraft,
  emptied,
  inputOfDay,
  inputOfDelays,
  usualDay,
  withRow,
  withSource,
} from "./day-draft.ts";
import { flagsOfDay } from "./day-flags.ts";
import { DayOptions } from "./day-options.tsx";
import { DayTable } from "./day-table.tsx";
import { DelaysTable } from "./delays-table.tsx";
import { FlagList } from "./flag-list.tsx";
import { loadsOfJob, type SetLoad } from "./loads-of-job.ts";
import { SourceFields } from "./source-fields.tsx";
import { StayFields } from "./stay-fields.tsx";
import { type ChosenStay, Timeline } from "./timeline.tsx";
import { useDay, useDayLine, useDelays } from "./use-day.ts";
import { speeds, usePlay } from "./use-play.ts";

export interface DayPanelProps {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  /** A detector whose light is simulated, or a room. */
  readonly of: string;
  readonly onPlace: (room: string) => void;
  readonly onClose: () => void;
}

/** A simulated day of what some detectors switch together. */
export function DayPanel({ job, store, of, onPlace, onClose }: DayPanelProps) {
  const { site, file } = job;
  const loads = useMemo(() => loadsOfJob({ site, file }), [site, file]);
  const [picked, setPicked] = useState<string | undefined>();
  const set =
    loads.find(({ load }) => load.id === picked) ?? loads.find(({ load }) => concerns(load, of)) ?? loads[0];
  return (
    <div className="stack day">
      <div className="row row-apart">
        <h2 className="panel-title">{t("day.title")}</h2>
        <Button className="button" onPress={onClose}>
          {t("shell.close")}
        </Button>
      </div>
      {set && loads.some(({ load }) => concerns(load, of)) ? (
        <>
          {loads.length > 1 ? (
            <Pick
              label={t("day.load")}
              value={set.load.id}
              options={loads.map(({ load }) => ({ value: load.id, word: loadName(site, load) }))}
              onChange={setPicked}
              wide
            />
          ) : null}
          <LoadDay key={set.load.id} job={job} store={store} set={set} />
        </>
      ) : (
        <NoDetector site={site} of={of} onPlace={onPlace} />
      )}
    </div>
  );
}

const concerns = (load: SwitchedLoad, of: string): boolean =>
  load.rooms.includes(of) || load.devices.some(({ id }) => id === of);

/** Rooms and detectors of a load; of many, the first ones. */
function loadName(site: Site, load: SwitchedLoad): string {
  const rooms = load.rooms.map((id) => roomTitle(site.rooms.find((room) => room.id === id)));
  const names = (list: readonly string[]): string =>
    list.length > 3
      ? t("day.and-more", { first: list.slice(0, 3).join(", "), count: list.length - 3 })
      : list.join(", ");
  return `${names(rooms)} · ${names(load.devices.map(({ tag }) => tag))}`;
}

function NoDetector({
  site,
  of,
  onPlace,
}: { readonly site: Site; readonly of: string } & Pick<DayPanelProps, "onPlace">) {
  const room = site.rooms.find(({ id }) => id === of);
  return (
    <div className="stack">
      <p>{t("day.no-detector")}</p>
      {room ? (
        <Button className="button button-first" onPress={() => onPlace(room.id)}>
          {t("day.no-detector.place")}
        </Button>
      ) : null}
    </div>
  );
}

/** Times wider than the day that one may look at. */
const zooms = [1, 2, 4, 8, 16] as const;

function LoadDay({
  job,
  store,
  set,
}: { readonly job: OpenJob; readonly set: SetLoad } & Pick<DayPanelProps, "store">) {
  const { load, settings, longest } = set;
  const { site } = job;
  const [draft, setDraft] = useState<DayDraft>(() => keptDraft(store, load) ?? usualDay(site, load));
  const [chosen, setChosen] = useState<ChosenStay | undefined>();
  const [zoom, setZoom] = useState(0);
  const clock = usePlay(9 * 3600);
  const line = useDayLine();
  const heavy = useDayLine();
  const change = (next: DayDraft): void => {
    setDraft(next);
    store.set({ days: new Map([...store.get().days, [load.id, next]]) });
  };
  const { tried, ...untried } = draft;
  const input = useMemo(() => inputOfDay(draft), [draft]);
  const day = useDay(line, load, input);
  // Delays are tried whatever delay is on show: only what they are tried on makes them stale.
  const triedOn = JSON.stringify({ ...untried, source: { ...draft.source, log: undefined } });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `triedOn` stands for the draft
  const wish = useMemo(
    () =>
      draft.source.kind === "log"
        ? ({ kind: "log", log: draft.source.log, still: draft.still } as const)
        : ({
            kind: "days",
            input: inputOfDelays(draft, { site, load }),
            beside: setDelays(load),
            presence:
              draft.source.kind === "turns" && load.devices.length === 1 ? draft.source.means : undefined,
            longest,
          } as const),
    [triedOn, load, site, longest],
  );
  const delays = useDelays(heavy, load, wish);
  const run = day.value;
  const flags = useMemo(() => flagsOfDay(load, run), [load, run]);
  useLitRooms({
    store,
    rooms: load.rooms,
    lit: run?.lit.some(({ from, to }) => from <= clock.now && clock.now < to) ?? false,
  });
  const showFlag = (index: number): void => {
    const flag = flags[index];
    if (!flag) return;
    clock.show(flag.from);
    if (zoom < 2) setZoom(2);
  };
  const onRow = (device: string, stays: readonly Stay[], stay?: Stay): void => {
    const next = withRow(draft, device, stays);
    change(next);
    const index = stay
      ? (next.rows[device] ?? []).findIndex(({ from, to }) => from <= stay.from && stay.to <= to)
      : -1;
    setChosen(index < 0 ? undefined : { device, index });
  };
  const stay = chosen && draft.rows[chosen.device]?.[chosen.index];
  const nobody = Object.values(draft.rows).every((stays) => stays.length === 0);
  return (
    <>
      <div className="row day-bar">
        <Button className="button" onPress={clock.play} aria-pressed={clock.playing}>
          {t(clock.playing ? "day.pause" : "day.play")}
        </Button>
        <Pick
          label={t("day.speed")}
          value={String(clock.speed)}
          options={speeds.map((speed) => ({ value: String(speed), word: t(`day.speed.${speed}`) }))}
          onChange={(speed) => clock.setSpeed(Number(speed) as (typeof speeds)[number])}
        />
        <span className="bar-gap" />
        <Button
          className="button"
          aria-label={t("day.zoom.out")}
          isDisabled={zoom === 0}
          onPress={() => setZoom(zoom - 1)}
        >
          −
        </Button>
        <Button
          className="button"
          aria-label={t("day.zoom.in")}
          isDisabled={zoom === zooms.length - 1}
          onPress={() => setZoom(zoom + 1)}
        >
          +
        </Button>
      </div>
      <Timeline
        load={load}
        draft={draft}
        run={run}
        flags={flags}
        now={clock.now}
        zoom={zooms[zoom] ?? 1}
        chosen={chosen}
        onTime={clock.show}
        onChoose={setChosen}
        onRow={onRow}
        onFlag={showFlag}
      />
      {nobody ? (
        <div className="row">
          <p>{t("day.nobody")}</p>
          <Button
            className="button"
            onPress={() => {
              const device = load.devices[0]!.id;
              onRow(device, [{ from: 9 * 3600, to: 12 * 3600, what: "somebody" }]);
            }}
          >
            {t("day.nobody.deed")}
          </Button>
        </div>
      ) : (
        <p className="hint day-how">{t("day.how")}</p>
      )}
      {chosen && stay ? (
        <StayFields
          tag={load.devices.find(({ id }) => id === chosen.device)?.tag ?? ""}
          stay={stay}
          onChange={(next) => {
            const row = draft.rows[chosen.device] ?? [];
            onRow(
              chosen.device,
              row.flatMap((one, i) => (i === chosen.index ? (next ?? []) : [one])),
              next,
            );
          }}
        />
      ) : (
        <div className="row">
          {load.devices.slice(0, 12).map(({ id, tag }) => (
            <Button
              key={id}
              className="button button-quiet"
              onPress={() => {
                const from = Math.min(Math.round(clock.now / 300) * 300, daySeconds - 1800);
                const made: Stay = { from, to: from + 1800, what: "somebody" };
                onRow(id, [...(draft.rows[id] ?? []), made], made);
              }}
            >
              {t(load.devices.length > 1 ? "day.add-of" : "day.add", { tag, time: clockText(clock.now) })}
            </Button>
          ))}
        </div>
      )}
      <Now load={load} run={run} now={clock.now} />
      {day.trouble === undefined ? null : (
        <Say severity="must" live>
          {t("day.trouble", { sentence: day.trouble })}
        </Say>
      )}
      {run ? (
        <p>
          {t("day.result", {
            lit: spanText(run.used.litHours * 3600),
            cycles: run.used.cycles,
            dark: flags.filter(({ kind }) => kind === "switched-off-while-occupied").length,
          })}
        </p>
      ) : null}
      {run ? <FlagList flags={flags} onFlag={showFlag} /> : <p className="hint">{t("day.running")}</p>}
      <section className="stack day-part" aria-label={t("day.source")}>
        <h3 className="day-head">{t("day.source")}</h3>
        <SourceFields
          draft={draft}
          line={heavy}
          onSource={(source, seed = draft.seed) => {
            setChosen(undefined);
            change(withSource({ ...draft, seed }, source, { site, load }));
          }}
          onEmpty={() => {
            setChosen(undefined);
            change(emptied(draft));
          }}
        />
      </section>
      <section className="stack day-part" aria-label={t("day.delays")}>
        <h3 className="day-head">{t("day.delays")}</h3>
        <div className="fields">
          <FigureField
            label={t("day.delay.tried")}
            value={Math.round(((tried ?? setDelays(load)[0] ?? 600) / 60) * 100) / 100}
            unit="min"
            least={0.1}
            most={240}
            wide
            hint={setWords(load, settings)}
            onChange={(minutes) => change({ ...draft, tried: minutes * 60 })}
          />
        </div>
        <UseDelay
          job={job}
          set={set}
          delay={tried}
          recommended={delays.value?.recommended.delay}
          onUsed={() => change({ ...draft, tried: undefined })}
        />
        <DelaysTable
          delays={delays}
          power={load.power}
          set={setDelays(load)}
          tried={tried ?? setDelays(load)[0]}
          hours={
            draft.source.kind === "turns" ? (draft.source.hours.to - draft.source.hours.from) / 3600 : 24
          }
          onTry={(delay) => change({ ...draft, tried: delay })}
        />
      </section>
      <More word={t("day.options")}>
        <DayOptions draft={draft} load={load} onChange={change} />
      </More>
      {run ? (
        <More word={t("day.table")}>
          <DayTable load={load} run={run} flags={flags} />
        </More>
      ) : null}
    </>
  );
}

/** A day that was begun before, if it still is of the same detectors. */
function keptDraft(store: Store<Workbench>, load: SwitchedLoad): DayDraft | undefined {
  const draft = store.get().days.get(load.id);
  return draft && load.devices.every(({ id }) => id in draft.rows) ? draft : undefined;
}

const switching = (load: SwitchedLoad) => load.devices.filter(({ role }) => role === "switches");

const setDelays = (load: SwitchedLoad): readonly Seconds[] => [
  ...new Set(switching(load).map(({ parameters }) => parameters.offDelay)),
];

/** What is set now, and why. */
function setWords(load: SwitchedLoad, settings: SetLoad["settings"]): string {
  const first = switching(load)[0];
  const setting = first && settings.get(first.id)?.offDelay;
  const delays = setDelays(load).map(spanText).join(", ");
  return setting?.kind === "derived"
    ? t("day.delay.derived", { delays, reason: setting.reason })
    : t("day.delay.chosen", { delays });
}

/** One deed: the delay on show, or the recommended one, is written into the settings. */
function UseDelay({
  job,
  set: { load },
  delay,
  recommended,
  onUsed,
}: {
  readonly job: OpenJob;
  readonly set: SetLoad;
  readonly delay: Seconds | undefined;
  readonly recommended: Seconds | undefined;
  readonly onUsed: () => void;
}) {
  const wanted = delay ?? recommended;
  const already = wanted === undefined || setDelays(load).every((one) => one === wanted);
  if (job.readOnly || already) return null;
  const use = (): void => {
    job.choose(
      "day.use-delay",
      Object.fromEntries(switching(load).map(({ id }) => [id, { offDelay: wanted }])),
    );
    onUsed();
  };
  return (
    <Button className="button button-first" onPress={use}>
      {t("day.delay.use", {
        delay: spanText(wanted),
        tags: switching(load)
          .map(({ tag }) => tag)
          .slice(0, 4)
          .join(", "),
      })}
    </Button>
  );
}

/** What everything does at the time on show. */
function Now({
  load,
  run,
  now,
}: {
  readonly load: SwitchedLoad;
  readonly run: ReturnType<typeof useDay>["value"];
  readonly now: Seconds;
}) {
  const at = <T extends { readonly from: Seconds; readonly to: Seconds }>(
    list: readonly T[],
  ): T | undefined => list.find(({ from, to }) => from <= now && now < to);
  const lit = run && at(run.lit);
  return (
    <dl className="figures day-now">
      {load.devices.map(({ id, tag }) => {
        const state = at(run?.devices.find((device) => device.id === id)?.stretches ?? [])?.state;
        return (
          <div key={id} className="figures-row">
            <dt>{tag}</dt>
            <dd>{state ? t(`day.state.${state}.long`) : "–"}</dd>
          </div>
        );
      })}
      <div className="figures-row">
        <dt>{t("day.row.light")}</dt>
        <dd>{lit ? t("day.light.since", { time: clockText(lit.from) }) : t("day.light.off")}</dd>
      </div>
    </dl>
  );
}

/** The plan shows quietly which rooms are lit at the time on show. */
function useLitRooms({
  store,
  rooms,
  lit,
}: {
  readonly store: Store<Workbench>;
  readonly rooms: readonly string[];
  readonly lit: boolean;
}): void {
  useEffect(() => {
    store.set({ lit: lit ? rooms : undefined });
  }, [store, rooms, lit]);
  useEffect(() => () => store.set({ lit: undefined }), [store]);
}
