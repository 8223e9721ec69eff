import { type ReactNode, type PointerEvent as ReactPointerEvent, useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import type { Pixel } from "../plan/view.ts";
import { t } from "../texts/index.ts";
import { Sign } from "./signs.tsx";

interface CardProps {
  readonly title: string;
  readonly children: ReactNode;
  /** Narrow for a thing; panels bring their own heading and way out. */
  readonly size: "narrow" | "wide" | "broad";
  readonly onClose?: () => void;
  /** Escape, where no field had a use for it: the keyboard goes back to the plan. */
  readonly onLeave: () => void;
  /** Where on the screen the thing lies that the card speaks of: it is never covered. */
  readonly thing: Pixel | undefined;
  /** Something is drawn on the plan: a sheet leaves it free. */
  readonly drawing: boolean;
  /** Changes when the card speaks of something else. */
  readonly about: string;
  readonly cardRef: (element: HTMLElement | null) => void;
}

/** Screens on which the card is a sheet at the lower edge, since beside the plan there is no room; the same in shell.css. */
export const sheetMedia = "(max-width: 640px), (max-width: 1000px) and (orientation: portrait)";

const sheets = ["low", "half", "full"] as const;
const sheetSize = { low: "148px", half: "46dvh", full: "calc(100dvh - 120px)" } as const;

/** The card of the selected thing: floats on a laptop and may be moved aside; on a phone a sheet that is low, half or full. */
export function Card({ title, children, size, onClose, onLeave, thing, drawing, about, cardRef }: CardProps) {
  const own = useRef<HTMLElement | null>(null);
  const [shift, setShift] = useState({ x: 0, y: 0 });
  const [side, setSide] = useState<"left" | "right">("right");
  const [sheet, setSheet] = useState<(typeof sheets)[number]>("low");
  const grab = useRef<{ x: number; y: number; from: typeof shift; sheet: number } | undefined>(undefined);

  useEffect(() => {
    // What is drawn or filled in has no room on half a phone.
    const whole = size === "broad" && globalThis.innerWidth <= 640;
    if (whole) setSheet("full");
    else if (size === "narrow") setSheet((now) => (now === "full" ? "low" : now));
    else setSheet((now) => (now === "low" ? "half" : now));
  }, [size]);
  useEffect(() => {
    if (drawing) setSheet("low");
  }, [drawing]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looks again only when the card speaks of something else
  useEffect(() => {
    own.current?.querySelector(".card-body")?.scrollTo(0, 0);
    if (!thing || !own.current) return;
    const box = own.current.getBoundingClientRect();
    const margin = 28;
    const covered =
      thing.px > box.left - margin &&
      thing.px < box.right + margin &&
      thing.py > box.top - margin &&
      thing.py < box.bottom + margin;
    if (!covered) return;
    setShift({ x: 0, y: 0 });
    setSide(thing.px > globalThis.innerWidth / 2 ? "left" : "right");
  }, [about]);

  const isSheet = (): boolean => matchMedia(sheetMedia).matches;
  const down = (event: ReactPointerEvent<HTMLElement>): void => {
    if ((event.target as HTMLElement).closest("button:not(.card-grab)")) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    grab.current = { x: event.clientX, y: event.clientY, from: shift, sheet: own.current?.offsetHeight ?? 0 };
  };
  const move = (event: ReactPointerEvent<HTMLElement>): void => {
    const held = grab.current;
    if (!held) return;
    if (isSheet()) {
      own.current?.style.setProperty("--sheet", `${Math.max(100, held.sheet + held.y - event.clientY)}px`);
      return;
    }
    setShift({ x: held.from.x + event.clientX - held.x, y: held.from.y + event.clientY - held.y });
  };
  const up = (event: ReactPointerEvent<HTMLElement>): void => {
    const held = grab.current;
    grab.current = undefined;
    if (!held || !isSheet()) return;
    own.current?.style.removeProperty("--sheet");
    const high = held.sheet + held.y - event.clientY;
    const whole = globalThis.innerHeight;
    const moved = Math.abs(held.y - event.clientY) > 6;
    if (!moved) setSheet(next(sheet));
    else setSheet(high < whole * 0.3 ? "low" : high < whole * 0.65 ? "half" : "full");
  };
  return (
    <section
      ref={(element) => {
        own.current = element;
        cardRef(element);
      }}
      className={`card no-print card-${size}${side === "left" ? " card-left" : ""}`}
      style={{
        ...((shift.x === 0 && shift.y === 0) || isSheet()
          ? {}
          : { transform: `translate(${shift.x}px, ${shift.y}px)` }),
        ["--sheet-size" as string]: sheetSize[sheet],
      }}
      aria-label={title}
      onKeyDown={(event) => {
        if (event.key === "Escape" && !event.defaultPrevented) onLeave();
      }}
      onFocus={({ target }) => {
        // A low sheet has no room for a field, other than the one for the length of what is drawn.
        const isField = target.matches("input:not([type=checkbox], [type=radio]), select, textarea");
        if (isField && !drawing && sheet === "low" && isSheet()) setSheet("half");
      }}
    >
      <header
        className="card-head"
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={() => {
          grab.current = undefined;
        }}
      >
        <button
          type="button"
          className="card-grab"
          aria-label={t(`shell.sheet.${sheet}`)}
          onKeyDown={(event) => {
            if (event.key === "Enter" || event.key === " ") setSheet(next(sheet));
          }}
        />
        {size === "narrow" ? (
          <h2 className="card-title">{title}</h2>
        ) : (
          <span className="card-strip" aria-hidden="true" />
        )}
        {onClose && size === "narrow" ? (
          <Button className="bar-word bar-sign" aria-label={t("shell.close")} onPress={onClose}>
            <Sign name="close" />
          </Button>
        ) : null}
      </header>
      <div className="card-body">{children}</div>
    </section>
  );
}

const next = (sheet: (typeof sheets)[number]): (typeof sheets)[number] =>
  sheets[(sheets.indexOf(sheet) + 1) % sheets.length] ?? "low";
