import { useRef, useSyncExternalStore } from "react";
import type { Finding, Layout, Point } from "#engine";
import type { SettingsKnown } from "../calculate/set-protocol.ts";
import type { Walks } from "../calculate/walk-protocol.ts";
import type { WiringKnown } from "../calculate/wire-protocol.ts";
import type { Calculated, OpenJob, RecordRef } from "../contract.ts";
import type { DayDraft } from "../day/day-draft.ts";
import type { HeldPin } from "../plan/held-pin.ts";
import type { Planned } from "../plan/paint/handles.ts";
import type { Shown } from "../plan/paint/zones.ts";
import { type ChosenSide, type DrawingTools, rest, type Tool, type ToolState } from "../plan/tools/state.ts";
import type { View } from "../plan/view.ts";

export type Stage = "survey" | "place" | "wire" | "set" | "test" | "hand-over";

/** Panels of the survey. */
export const surveyPanels = ["drawings", "rooms", "visit", "notes"] as const;
export type SurveyPanel = (typeof surveyPanels)[number];

/** What the floating card shows. */
export type Panel =
  | { readonly kind: "none" }
  | { readonly kind: "thing" }
  | { readonly kind: "place"; readonly rooms: readonly string[] }
  | { readonly kind: "findings" }
  | { readonly kind: "models"; readonly model?: string }
  | { readonly kind: "eye"; readonly device: string }
  | { readonly kind: "settings" }
  /** A label's way to its detector. */
  | { readonly kind: "scan" }
  /** The job on a phone, and back. */
  | { readonly kind: "phone" }
  /** A simulated day of what a detector, or those of a room, switch. */
  | { readonly kind: "day"; readonly of: string }
  /** The walk test of a room. */
  | { readonly kind: "walk"; readonly room: string; readonly full?: true }
  /** A complaint of a room, and its cause. */
  | { readonly kind: "fault"; readonly room: string }
  /** The order of work at a group of circuits, or in a room. */
  | { readonly kind: "work"; readonly at: { readonly kind: "group" | "room"; readonly id: string } }
  /** A detector that is exchanged, and what is to be tested again. */
  | { readonly kind: "swap"; readonly device?: string }
  /** Somebody calls: what is asked on the telephone. */
  | { readonly kind: "call-back" }
  /** A visit after hand-over, or one room of it. */
  | { readonly kind: "care"; readonly occasion: string; readonly room?: string }
  | { readonly kind: SurveyPanel };

/** What the screen is about at the moment; not part of the job. */
export interface Workbench {
  readonly job: OpenJob;
  readonly storey: string;
  readonly view: View;
  readonly selection: readonly RecordRef[];
  readonly tool: Tool;
  readonly toolState: ToolState;
  /** What drawing needs, once it is loaded. */
  readonly drawing: DrawingTools | undefined;
  /** A side of a room that was chosen, to type its length. */
  readonly side: ChosenSide | undefined;
  /** What the figures that are being typed would do to the selection. */
  readonly planned: Planned | undefined;
  readonly shown: Shown;
  readonly stage: Stage;
  readonly panel: Panel;
  /** Index of the finding that is highlighted. */
  readonly finding: number | undefined;
  /** A sentence that answers the last deed, until it is closed or something else is done. */
  readonly notice: string | undefined;
  /** Days that were tried, by load. */
  readonly days: ReadonlyMap<string, DayDraft>;
  /** Rooms that a simulated day shows lit; undefined: none is on show. */
  readonly lit: readonly string[] | undefined;
  /** A layout on show that was not taken. */
  readonly tried: { readonly room: string; readonly layout: Layout } | undefined;
  /** What is known of the wiring; undefined until it was calculated for the first time. */
  readonly wiring: WiringKnown | undefined;
  /** What is known of the settings; undefined until they were derived for the first time. */
  readonly settings: SettingsKnown | undefined;
  /** Walk tests as planned, by room, of the plan as it is. */
  readonly walks: Walks;
  /** The circuit that one looks at in the wiring. */
  readonly circuit: string | undefined;
  /** A point of its route that is being dragged, with the places that its stretch passes then. */
  readonly pin: HeldPin | undefined;
  /** The next touch of the plan is the place of something. */
  readonly pointing: { readonly for: string; readonly take: (at: Point, storey: string) => void } | undefined;
}

/** The findings of the stage that one is in: those of the wiring and of the settings have lists of their own. */
export const findingsHere = (
  { stage, wiring, settings }: Pick<Workbench, "stage" | "wiring" | "settings">,
  { findings }: Pick<Calculated, "findings">,
): readonly Finding[] =>
  stage === "wire"
    ? (wiring?.findings ?? noFindings)
    : stage === "set"
      ? (settings?.findings ?? noFindings)
      : stage === "test" || stage === "hand-over"
        ? noFindings
        : findings;

const noFindings: readonly Finding[] = [];

export interface Store<T> {
  readonly get: () => T;
  readonly set: (change: Partial<T>) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

export function storeOf<T extends object>(start: T): Store<T> {
  let value = start;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set: (change) => {
      value = { ...value, ...change };
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** A part of a store, kept up to date in a component; the component draws again only when that part changes. */
export function usePart<T extends object, P>(
  store: Pick<Store<T>, "get" | "subscribe">,
  part: (value: T) => P,
): P {
  const kept = useRef<{ readonly part: P } | undefined>(undefined);
  const read = (): P => {
    const next = part(store.get());
    if (kept.current && same(kept.current.part, next)) return kept.current.part;
    kept.current = { part: next };
    return next;
  };
  return useSyncExternalStore(store.subscribe, read);
}

/** Equal, or lists and plain records whose members are the same. */
function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Object.getPrototypeOf(a) !== Object.getPrototypeOf(b)) return false;
  const [keys, others] = [Object.keys(a), Object.keys(b)];
  return (
    keys.length === others.length &&
    keys.every((key) => Object.is((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]))
  );
}

export const allShown: Shown = {
  seated: true,
  towards: true,
  across: true,
  sound: true,
  gaps: true,
  spill: true,
  darkWalks: true,
};

/** The storey to begin with: the first that has rooms, else one with lines to draw them over, else the first. */
export function firstStorey({ site, underlays }: Pick<OpenJob, "site" | "underlays">): string {
  const holds = (list: readonly { readonly storey: string }[]) =>
    site.storeys.find(({ id }) => list.some(({ storey }) => storey === id));
  return (holds(site.rooms) ?? holds(underlays) ?? site.storeys[0])?.id ?? "";
}

export function workbenchOf(job: OpenJob, begin: "thing" | "visit" = "thing"): Store<Workbench> {
  const nothing = job.site.rooms.length === 0 && job.underlays.length === 0;
  return storeOf<Workbench>({
    job,
    storey: firstStorey(job),
    view: { scale: 40, x: 0, y: 0, width: 0, height: 0 },
    selection: [],
    // An empty job begins with its first room, unless somebody is on the telephone.
    tool:
      nothing && begin === "thing" && !job.readOnly ? { kind: "add", what: "roomChain" } : { kind: "select" },
    toolState: rest,
    drawing: undefined,
    side: undefined,
    planned: undefined,
    shown: { ...allShown, across: false },
    stage: job.site.rooms.length === 0 || begin === "visit" ? "survey" : "place",
    panel: { kind: begin },
    finding: undefined,
    notice: undefined,
    days: new Map(),
    lit: undefined,
    tried: undefined,
    wiring: undefined,
    settings: undefined,
    walks: { of: undefined, rooms: new Map(), station: undefined, marks: undefined },
    circuit: undefined,
    pin: undefined,
    pointing: undefined,
  });
}
