import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from "react";
import { type DayRun, daySeconds, type Seconds, type Stay, type SwitchedLoad } from "#engine";
import { t } from "../texts/day.ts";
import { clockText } from "./clock.ts";
import type { DayDraft } from "./day-draft.ts";
import type { DayFlag } from "./day-flags.ts";
import { DaylightTrack, Flags, Light, States, share } from "./day-tracks.tsx";
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
        <Light run={run} background={draft.background ?? load.background} wide={wide} />
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
