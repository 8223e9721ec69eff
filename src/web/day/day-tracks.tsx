import { memo } from "react";
import { type DayRun, daylightAt, daySeconds, type Seconds } from "#engine";
import { SeverityShape } from "../fields/index.ts";
import { t } from "../texts/day.ts";
import { percentText } from "../texts/index.ts";
import type { DayDraft } from "./day-draft.ts";
import { type DayFlag, flagWords } from "./day-flags.ts";

/** Where a time lies on a track, or how much of it a length of time takes. */
export const share = (time: Seconds): string => `${(100 * time) / daySeconds}%`;

/** Daylight over the day, with the threshold that the detectors compare it with. */
export const DaylightTrack = memo(function DaylightTrack({
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

/** What a detector does: a pattern for each state. */
export const States = memo(function States({
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

/** When the light is on. */
export const Light = memo(function Light({
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

/** What stands out, each a sign to press. */
export const Flags = memo(function Flags({
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
