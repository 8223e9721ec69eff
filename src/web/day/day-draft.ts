import {
  type AlternatingPresence,
  type ChanceModel,
  type DayCurve,
  type DayInput,
  dayPattern,
  dayProfile,
  daySeconds,
  type Lux,
  officePresence,
  type RoomUse,
  type Seconds,
  type Share,
  type Site,
  type Stay,
  type SwitchedLoad,
  staysByChance,
  tidyStays,
  usualDayCurve,
  usualMobility,
  usualStill,
} from "#engine";
import type { DayLog } from "../calculate/day-protocol.ts";

/** Where the presence of the day comes from. */
export type DaySource =
  | { readonly kind: "usual" }
  | { readonly kind: "hand" }
  | { readonly kind: "profile"; readonly mobility: number }
  | {
      readonly kind: "turns";
      readonly means: AlternatingPresence;
      readonly hours: { readonly from: Seconds; readonly to: Seconds };
    }
  | { readonly kind: "log"; readonly file: string; readonly log: DayLog; readonly day: number };

/** A day of one load as somebody tries it; no part of the job. */
export interface DayDraft {
  readonly source: DaySource;
  /** Stays of the day on show, by detector. */
  readonly rows: Readonly<Record<string, readonly Stay[]>>;
  readonly still: Seconds;
  readonly seed: number;
  readonly daylight: DayCurve | undefined;
  readonly lightAt: Lux;
  readonly compensation: "learned" | "none";
  /** Level of the light while it is off, tried instead of the one that is set. */
  readonly background: Share | undefined;
  /** Tried instead of what is set. */
  readonly tried: Seconds | undefined;
}

type Rooms = Pick<Site, "rooms" | "openings">;

/** Days of chance that delays are tried on; one alone says little. */
export const chanceDays = 28;

const usedAs = (site: Rooms, room: string): RoomUse =>
  site.rooms.find(({ id }) => id === room)?.use ?? "other";

/** Whether a window to the outside lets daylight into one of the rooms. */
const hasWindow = (site: Rooms, rooms: readonly string[]): boolean =>
  site.openings.some(
    ({ kind, rooms: [inside, beyond] }) =>
      (kind === "window" || kind === "glazing") && beyond === null && rooms.includes(inside),
  );

/** A usual day of the rooms, to begin with. */
export const usualDay = (site: Rooms, load: SwitchedLoad): DayDraft => ({
  source: { kind: "usual" },
  rows: Object.fromEntries(load.devices.map(({ id, room }) => [id, dayPattern(usedAs(site, room)).stays])),
  still: Math.max(0, ...load.devices.map(({ room }) => dayPattern(usedAs(site, room)).still)),
  seed: 1,
  daylight: hasWindow(site, load.rooms) ? usualDayCurve : undefined,
  lightAt: 0,
  compensation: "learned",
  background: undefined,
  tried: undefined,
});

/** The same with another source of presence; what else was settled stays. */
export function withSource(
  draft: DayDraft,
  source: DaySource,
  of: { site: Rooms; load: SwitchedLoad },
): DayDraft {
  const { site, load } = of;
  switch (source.kind) {
    case "usual": {
      const { rows, still } = usualDay(site, load);
      return { ...draft, source, rows, still };
    }
    case "hand":
      return { ...draft, source };
    case "log": {
      const stays = dayOf(source.log.stays, source.day);
      return {
        ...draft,
        source,
        rows: Object.fromEntries(load.devices.map(({ id }) => [id, stays])),
        still: draft.source.kind === "log" ? draft.still : usualStill,
      };
    }
    case "profile":
    case "turns":
      return { ...draft, source, rows: drawn(source, { draft, site, load, days: 1 }) };
  }
}

/** The source of chance with what its papers publish. */
export const usualChance = {
  profile: { kind: "profile", mobility: usualMobility },
  turns: { kind: "turns", means: officePresence, hours: { from: 8 * 3600, to: 18 * 3600 } },
} as const satisfies Record<string, DaySource>;

/** The rows of one detector changed by hand. */
export const withRow = (draft: DayDraft, device: string, stays: readonly Stay[]): DayDraft => ({
  ...draft,
  source: { kind: "hand" },
  rows: { ...draft.rows, [device]: tidyStays(stays) },
});

/** Nobody, all day. */
export const emptied = (draft: DayDraft): DayDraft => ({
  ...draft,
  source: { kind: "hand" },
  rows: Object.fromEntries(Object.keys(draft.rows).map((id) => [id, []])),
});

/** Stays within one day of many, from its own midnight on. */
function dayOf(stays: readonly Stay[], day: number): readonly Stay[] {
  const from = day * daySeconds;
  return stays.flatMap((stay) =>
    stay.to > from && stay.from < from + daySeconds
      ? [{ ...stay, from: Math.max(0, stay.from - from), to: Math.min(daySeconds, stay.to - from) }]
      : [],
  );
}

function drawn(
  source: Extract<DaySource, { kind: "profile" | "turns" }>,
  { draft, site, load, days }: { draft: DayDraft; site: Rooms; load: SwitchedLoad; days: number },
): DayDraft["rows"] {
  return Object.fromEntries(
    load.devices.map(({ id, room }, i) => {
      const model: ChanceModel =
        source.kind === "turns" ? source : { ...source, profile: dayProfile(usedAs(site, room)) };
      return [id, staysByChance(model, { seed: draft.seed + i, days })];
    }),
  );
}

/** What is simulated for the day on show. */
export function inputOfDay(draft: DayDraft): DayInput {
  const log = draft.source.kind === "log";
  return {
    rows: draft.rows,
    days: 1,
    before: log ? "once" : "every-day",
    // A log shows movements: who is not in it for a while sat still.
    still: log ? 0 : draft.still,
    bridge: log ? draft.still : 0,
    seed: draft.seed,
    background: draft.background,
    daylight: draft.daylight,
    lamps: { lightAt: draft.lightAt, compensation: draft.compensation },
    offDelay: draft.tried,
  };
}

/** What delays are tried on: the same day, or many days of the same chance. A log is replayed as a whole instead. */
export function inputOfDelays(draft: DayDraft, of: { site: Rooms; load: SwitchedLoad }): DayInput {
  const { source } = draft;
  const input = { ...inputOfDay(draft), offDelay: undefined };
  if (source.kind !== "profile" && source.kind !== "turns") return input;
  return {
    ...input,
    rows: drawn(source, { draft, ...of, days: chanceDays }),
    days: chanceDays,
    before: "once",
  };
}
