import {
  type KeyboardEvent,
  memo,
  type PointerEvent,
  type ReactNode,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from "react";
import { type DayRun, daylightAt, daySeconds, type Seconds, type Stay, type SwitchedLoad } from "#engine";
import { SeverityShape } from "../fields/index.ts";
import { t } from "../texts/day.ts";
import { percentText } from "../texts/index.ts";
import { clockText } from "./clock.ts";
import type { DayDraft } from "./day-draft.ts";
import { type DayFlag, flagWords } from "./day-flags.ts";
import { PresenceRow } from "./presence-row.tsx";
import "./day.css";

/** A stay somebody chose: in which row, and which. */
export interface ChosenStay {
  readonly device: string;
  readonly index: number;
}

export interface TimelineProps {
  readonly load: SwitchedLoad;
  readonly draft: DayDraft;
  readonly run: DayRun | undefined;
  readonly flags: readonly DayFlag[];
  readonly now: Seconds;
  readonly zoom: number;
  readonly chosen: ChosenStay | undefined;
  readonly onTime: (time: Seconds) => void;
  readonly onChoose: (stay: ChosenStay | undefined) => void;
  readonly onRow: (device: string, stays: readonly Stay[], chosen?: Stay) => void;
  readonly onFlag: (index: number) => void;
}

const share = (time: Seconds): string => `${(100 * time) / daySeconds}%`;

/** The day in rows over one axis: who is there, daylight, what each detector does, the light, what is wrong. */
export function Timeline(props: TimelineProps) {
  const { load, draft, run, flags, now, zoom, chosen } = props;
  const frame = useRef<HTMLDivElement>(null);
  const [wide, setWide] = useState(480);
  useLayoutEffect(() => {
    const element = frame.current;
    if (!element) return;
    const measure = new ResizeObserver(() => setWide(trackOf(element)?.clientWidth ?? 480));
    measure.observe(element);
    return () => measure.disconnect();
  }, []);
  // Closer up, the time on show stays in the middle.
  // biome-ignore lint/correctness/useExhaustiveDependencies: moves only when one looks closer or farther
  useEffect(() => {
    const element = frame.current;
    const track = element && trackOf(element);
    if (!element || !track) return;
    setWide(track.clientWidth);
    element.scrollLeft =
      (now / daySeconds) * track.clientWidth - (element.clientWidth - track.offsetLeft) / 2;
  }, [zoom]);
  useEffect(() => {
    const element = frame.current;
    const track = element && trackOf(element);
    if (!element || !track || zoom === 1) return;
    const at = (now / daySeconds) * track.clientWidth - element.scrollLeft;
    const seen = element.clientWidth - track.offsetLeft;
    if (at < 0 || at > seen) element.scrollLeft += at - seen / 4;
  }, [now, zoom]);
  const threshold = Math.max(0, ...load.devices.map(({ parameters }) => parameters.threshold ?? 0));
  const several = load.devices.length > 1;
  return (
    <div
      ref={frame}
      className="day-frame"
      style={{ ["--day-zoom" as string]: zoom, ["--day-now" as string]: share(now) }}
    >
      <Row label={<span className="day-now-word">{clockText(now)}</span>}>
        <Axis {...props} wide={wide} />
      </Row>
      {load.devices.map((device) => (
        <Row
          key={device.id}
          label={several ? t("day.row.presence-of", { tag: device.tag }) : t("day.row.presence")}
        >
          <PresenceRow
            device={device}
            stays={draft.rows[device.id] ?? []}
            movements={run?.devices.find(({ id }) => id === device.id)?.movements}
            zoom={zoom}
            chosen={chosen?.device === device.id ? chosen.index : undefined}
            onChoose={(index) =>
              props.onChoose(index === undefined ? undefined : { device: device.id, index })
            }
            onChange={(stays, stay) => props.onRow(device.id, stays, stay)}
            onTime={props.onTime}
          />
        </Row>
      ))}
      {threshold > 0 || draft.daylight ? (
        <Row label={t("day.row.daylight")}>
          <DaylightTrack draft={draft} threshold={threshold} />
        </Row>
      ) : null}
      {load.devices.map((device) => (
        <Row key={device.id} label={t("day.row.state", { tag: device.tag })}>
          <States run={run} device={device.id} tag={device.tag} wide={wide} />
        </Row>
      ))}
      <Row label={t("day.row.light")}>
        <Light run={run} background={draft.background} wide={wide} />
      </Row>
      <Row label={t("day.row.flags")}>
        <Flags flags={flags} onFlag={props.onFlag} />
      </Row>
    </div>
  );
}

const trackOf = (frame: HTMLElement): HTMLElement | null => frame.querySelector(".day-track");

function Row({ label, children }: { readonly label: ReactNode; readonly children: ReactNode }) {
  return (
    <div className="day-row">
      <div className="day-label">{label}</div>
      {children}
    </div>
  );
}

/** Between two words of the axis, by how wide the day is drawn. [s] */
const axisSteps = [900, 1800, 3600, 7200, 10_800, 21_600];

/** The hours, and the time on show: taken by the hand, or moved by keys. */
function Axis({ now, run, wide, onTime }: TimelineProps & { readonly wide: number }) {
  const step = axisSteps.find((one) => (one / daySeconds) * wide >= 46) ?? 43_200;
  const marks = Array.from({ length: daySeconds / step + 1 }, (_, i) => i * step);
  const drag = (event: PointerEvent<HTMLDivElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    onTime(Math.round((((event.clientX - box.left) / box.width) * daySeconds) / 60) * 60);
  };
  const key = (event: KeyboardEvent): void => {
    const by = { ArrowLeft: -60, ArrowDown: -60, ArrowRight: 60, ArrowUp: 60, PageUp: 3600, PageDown: -3600 }[
      event.key
    ];
    const to =
      event.key === "Home" ? 0 : event.key === "End" ? daySeconds : by === undefined ? undefined : now + by;
    if (to === undefined) return;
    event.preventDefault();
    onTime(Math.round(to / 60) * 60);
  };
  const on = run?.lit.some(({ from, to }) => from <= now && now < to);
  return (
    <div
      className="day-track day-axis"
      role="slider"
      tabIndex={0}
      aria-label={t("day.time")}
      aria-valuemin={0}
      aria-valuemax={1440}
      aria-valuenow={Math.round(now / 60)}
      aria-valuetext={t(on ? "day.time.on" : "day.time.off", { time: clockText(now) })}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        drag(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) drag(event);
      }}
      onKeyDown={key}
    >
      {marks.map((mark) => (
        <span key={mark} className="day-mark" style={{ insetInlineStart: share(mark) }}>
          {mark === daySeconds ? "" : clockText(mark)}
        </span>
      ))}
      <span className="day-knob" />
    </div>
  );
}

const DaylightTrack = memo(function DaylightTrack({
  draft,
  threshold,
}: {
  readonly draft: DayDraft;
  readonly threshold: number;
}) {
  const { daylight } = draft;
  const most = Math.max(threshold, daylight?.highest ?? 0) * 1.15 || 1;
  const curve = daylight
    ? Array.from({ length: 97 }, (_, i) => `${i * 900} ${1 - daylightAt(daylight, i * 900) / most}`)
    : [];
  return (
    <div
      className="day-track"
      role="img"
      aria-label={t("day.daylight.spoken", {
        most: Math.round(daylight?.highest ?? 0),
        threshold: Math.round(threshold),
      })}
    >
      <svg
        className="day-curve"
        viewBox={`0 0 ${daySeconds} 1`}
        preserveAspectRatio="none"
        aria-hidden="true"
      >
        {daylight ? <path className="day-sky" d={`M0 1L${curve.join("L")}L${daySeconds} 1Z`} /> : null}
        {threshold > 0 ? (
          <path className="day-threshold" d={`M0 ${1 - threshold / most}H${daySeconds}`} />
        ) : null}
      </svg>
      {threshold > 0 ? (
        <span className="day-threshold-word" style={{ insetBlockEnd: `${(100 * threshold) / most}%` }}>
          {t("day.threshold", { lux: Math.round(threshold) })}
        </span>
      ) : null}
    </div>
  );
});

/** A thinner stretch has no edge: edges alone would hide what it is. [px] */
const roomForEdge = 6;
/** A word stands in a stretch that has room for it. [px] */
const roomForWord = 54;

const States = memo(function States({
  run,
  device,
  tag,
  wide,
}: {
  readonly run: DayRun | undefined;
  readonly device: string;
  readonly tag: string;
  readonly wide: number;
}) {
  const stretches = run?.devices.find(({ id }) => id === device)?.stretches ?? [];
  return (
    <div
      className="day-track"
      role="img"
      aria-label={t("day.states.spoken", { tag, count: stretches.length })}
    >
      {stretches
        .filter(({ state }) => state !== "idle")
        .map(({ from, to, state }) => (
          <span
            key={from}
            className={`day-state day-state-${state}${((to - from) / daySeconds) * wide < roomForEdge ? " day-thin" : ""}`}
            style={{ insetInlineStart: share(from), inlineSize: share(to - from) }}
          >
            {((to - from) / daySeconds) * wide >= roomForWord ? (
              <span className="day-word">{t(`day.state.${state}`)}</span>
            ) : null}
          </span>
        ))}
    </div>
  );
});

const Light = memo(function Light({
  run,
  background,
  wide,
}: {
  readonly run: DayRun | undefined;
  readonly background: number;
  readonly wide: number;
}) {
  const lit = run?.lit ?? [];
  return (
    <div
      className={background > 0 ? "day-track day-background" : "day-track"}
      role="img"
      aria-label={t("day.light.spoken", { count: lit.length })}
    >
      {background > 0 ? (
        <span className="day-word">{t("day.light.background", { level: percentText(background) })}</span>
      ) : null}
      {lit.map(({ from, to }) => (
        <span
          key={from}
          className="day-lit"
          style={{ insetInlineStart: share(from), inlineSize: share(to - from) }}
        >
          {((to - from) / daySeconds) * wide >= 30 ? (
            <span className="day-word">{t("day.light.on")}</span>
          ) : null}
        </span>
      ))}
    </div>
  );
});

/** More flags than this would lie on top of each other. */
const mostFlags = 60;

const Flags = memo(function Flags({
  flags,
  onFlag,
}: {
  readonly flags: readonly DayFlag[];
  readonly onFlag: (index: number) => void;
}) {
  return (
    <div className="day-track day-flags">
      {flags.slice(0, mostFlags).map((flag, index) => (
        <button
          type="button"
          key={`${flag.kind} ${flag.from}`}
          className="day-flag"
          style={{ insetInlineStart: share(flag.from) }}
          aria-label={flagWords(flag)}
          onClick={() => onFlag(index)}
        >
          <SeverityShape severity={flag.severity} />
        </button>
      ))}
    </div>
  );
});
