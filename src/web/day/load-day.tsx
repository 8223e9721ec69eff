import { useMemo, useState } from "react";
import { Button } from "react-aria-components";
import type { Stay, SwitchedLoad } from "#engine";
import type { OpenJob } from "../contract.ts";
import { More, Pick, Say } from "../fields/index.ts";
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
import { DayNow } from "./day-now.tsx";
import { DayOptions } from "./day-options.tsx";
import { DayTable } from "./day-table.tsx";
import { DelaysSection } from "./delays-section.tsx";
import { FlagList } from "./flag-list.tsx";
import { type SetLoad, setDelays } from "./set-loads.ts";
import { SourceFields } from "./source-fields.tsx";
import { addedStay, replaced } from "./stay-edit.ts";
import { StayFields } from "./stay-fields.tsx";
import { type ChosenStay, Timeline } from "./timeline.tsx";
import { useDay, useDayLine, useDelays } from "./use-day.ts";
import { useLitRooms } from "./use-lit-rooms.ts";
import { speeds, usePlay } from "./use-play.ts";

/** Times wider than the day that one may look at. */
const zooms = [1, 2, 4, 8, 16] as const;

/** The day of one load: who is there, what happens, and what another delay would change. */
export function LoadDay({
  job,
  store,
  set,
}: {
  readonly job: OpenJob;
  readonly store: Store<Workbench>;
  readonly set: SetLoad;
}) {
  const { load, longest } = set;
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
  const { tried: _, ...untried } = draft;
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
            onRow(chosen.device, replaced(draft.rows[chosen.device] ?? [], chosen.index, next), next);
          }}
        />
      ) : (
        <div className="row">
          {load.devices.slice(0, 12).map(({ id, tag }) => (
            <Button
              key={id}
              className="button button-quiet"
              onPress={() => {
                const made = addedStay(clock.now);
                onRow(id, [...(draft.rows[id] ?? []), made], made);
              }}
            >
              {t(load.devices.length > 1 ? "day.add-of" : "day.add", { tag, time: clockText(clock.now) })}
            </Button>
          ))}
        </div>
      )}
      <DayNow load={load} run={run} now={clock.now} />
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
      <DelaysSection
        job={job}
        set={set}
        draft={draft}
        delays={delays}
        onTried={(tried) => change({ ...draft, tried })}
      />
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
