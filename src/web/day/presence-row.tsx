import { type PointerEvent, useRef, useState } from "react";
import { daySeconds, type LoadDevice, type Seconds, type Stay } from "#engine";
import { t } from "../texts/day.ts";
import { clockText } from "./clock.ts";
import { drawnStay, handStep, keyedStay, movedStay, replaced, type StayPart } from "./stay-edit.ts";

interface PresenceRowProps {
  readonly device: LoadDevice;
  readonly stays: readonly Stay[];
  readonly movements: Float64Array | undefined;
  readonly zoom: number;
  /** The stay that is chosen, by its place in the row. */
  readonly chosen: number | undefined;
  readonly onChoose: (index: number | undefined) => void;
  readonly onChange: (stays: readonly Stay[], chosen?: Stay) => void;
  readonly onTime: (time: Seconds) => void;
}

/** More stays than anybody edits by hand are painted only: a log of a busy day. */
const mostButtons = 240;
/** More movements than this are a line. */
const mostTicks = 400;
/** So near an end of a stay the hand takes the end. [px] */
const nearEnd = { mouse: 7, pen: 9, touch: 14 } as const;

interface Held {
  readonly start: Seconds;
  readonly now: Seconds;
  readonly stay: { readonly index: number; readonly part: StayPart; readonly was: Stay } | undefined;
}

const share = (time: Seconds): string => `${(100 * time) / daySeconds}%`;

/** Who is in view of a detector when: drawn, moved and made longer by dragging, or by keys. */
export function PresenceRow(props: PresenceRowProps) {
  const { device, stays, movements, zoom, chosen, onChoose, onChange, onTime } = props;
  const track = useRef<HTMLDivElement>(null);
  const [held, setHeld] = useState<Held | undefined>();
  const timeAt = (event: PointerEvent): Seconds => {
    const box = track.current!.getBoundingClientRect();
    return Math.min(daySeconds, Math.max(0, ((event.clientX - box.left) / box.width) * daySeconds));
  };
  const down = (event: PointerEvent<HTMLDivElement>): void => {
    if (event.button !== 0 || !event.isPrimary) return;
    const start = timeAt(event);
    const box = track.current!.getBoundingClientRect();
    const near =
      (nearEnd[event.pointerType as keyof typeof nearEnd] ?? nearEnd.mouse) * (daySeconds / box.width);
    event.currentTarget.setPointerCapture(event.pointerId);
    setHeld({
      start,
      now: start,
      stay: stays.length > mostButtons ? undefined : takenAt(stays, start, near),
    });
  };
  const up = (): void => {
    if (!held) return;
    setHeld(undefined);
    const moved = Math.abs(held.now - held.start) >= handStep(zoom) / 2;
    if (held.stay) {
      const next = changed(held, zoom)!;
      if (moved) onChange(replaced(stays, held.stay.index, next), next);
      else onChoose(held.stay.index);
      return;
    }
    const made = moved ? drawnStay(held.start, held.now, handStep(zoom)) : undefined;
    if (made) onChange([...stays, made], made);
    else {
      onChoose(undefined);
      onTime(held.start);
    }
  };
  const shown = held?.stay ? replaced(stays, held.stay.index, changed(held, zoom)) : stays;
  const drawing = held && !held.stay ? drawnStay(held.start, held.now, handStep(zoom)) : undefined;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of stays, not of fields
    <div
      ref={track}
      className="day-track day-presence"
      role="group"
      aria-label={t("day.presence.of", { tag: device.tag })}
      onPointerDown={down}
      onPointerMove={(event) => {
        if (held) setHeld({ ...held, now: timeAt(event) });
      }}
      onPointerUp={up}
      onPointerCancel={() => setHeld(undefined)}
    >
      {shown.length > mostButtons ? (
        <PaintedStays stays={shown} />
      ) : (
        shown.map((stay, index) => (
          <button
            type="button"
            // biome-ignore lint/suspicious/noArrayIndexKey: a stay has no identity but its place in the row
            key={index}
            className={`day-stay day-stay-${stay.what}`}
            style={{ insetInlineStart: share(stay.from), inlineSize: share(stay.to - stay.from) }}
            // One stop for the Tab key in each row; arrows up and down go from stay to stay.
            tabIndex={index === (chosen ?? 0) ? 0 : -1}
            aria-pressed={index === chosen}
            aria-label={t(`day.stay.${stay.what}`, { from: clockText(stay.from), to: clockText(stay.to) })}
            onClick={() => onChoose(index)}
            onKeyDown={(event) => {
              if (event.key === "ArrowUp" || event.key === "ArrowDown") {
                event.preventDefault();
                const next = index + (event.key === "ArrowDown" ? 1 : -1);
                const buttons = track.current?.querySelectorAll<HTMLButtonElement>(".day-stay");
                if (buttons?.[next]) {
                  onChoose(next);
                  buttons[next].focus();
                }
                return;
              }
              const done = keyedStay(stay, event);
              if (!done) return;
              event.preventDefault();
              onChange(replaced(stays, index, done.next), done.next);
            }}
          />
        ))
      )}
      {drawing ? (
        <span
          className="day-stay day-stay-somebody day-stay-drawn"
          style={{ insetInlineStart: share(drawing.from), inlineSize: share(drawing.to - drawing.from) }}
        />
      ) : null}
      {movements && movements.length <= mostTicks * zoom ? <Ticks at={movements} /> : null}
    </div>
  );
}

const changed = (held: Held, zoom: number): Stay | undefined => {
  if (!held.stay) return undefined;
  const step = handStep(zoom);
  return movedStay(held.stay.was, held.stay.part, Math.round((held.now - held.start) / step) * step);
};

/** The stay under the hand, and whether it is taken at an end; a short one is taken whole. */
function takenAt(stays: readonly Stay[], at: Seconds, near: Seconds): Held["stay"] {
  const reach = (stay: Stay): Seconds => Math.max(stay.from - at, at - stay.to, 0);
  const index = stays
    .map((stay, i) => ({ i, off: reach(stay) }))
    .filter(({ off }) => off <= near / 2)
    .sort((a, b) => a.off - b.off)[0]?.i;
  if (index === undefined) return undefined;
  const was = stays[index]!;
  const long = was.to - was.from > 3 * near;
  const part = long && at - was.from < near ? "from" : long && was.to - at < near ? "to" : "whole";
  return { index, part, was };
}

function PaintedStays({ stays }: { readonly stays: readonly Stay[] }) {
  const path = stays.map(({ from, to }) => `M${from} 0H${Math.max(to, from + 30)}V1H${from}Z`).join("");
  return (
    <svg
      className="day-painted"
      viewBox={`0 0 ${daySeconds} 1`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path d={path} />
    </svg>
  );
}

/** What the detector sees of somebody: a tick for each movement. */
function Ticks({ at }: { readonly at: Float64Array }) {
  const path = Array.from(at, (time) => `M${Math.round(time)} 0V1`).join("");
  return (
    <svg className="day-ticks" viewBox={`0 0 ${daySeconds} 1`} preserveAspectRatio="none" aria-hidden="true">
      <path d={path} />
    </svg>
  );
}
