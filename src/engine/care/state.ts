import { type Check, type Said, say } from "../check/index.ts";
import { countedEntries, type SiteEntry } from "../site-test/index.ts";
import { type Day, dayAfter } from "./days.ts";
import type { CarePoint } from "./points.ts";

/** An entry of a visit. */
export interface CareEntry extends SiteEntry {
  /** Id of the occasion that it belongs to. */
  readonly occasion?: string | undefined;
}

/** Where one point of a visit stands. */
export interface CareState<Entry extends CareEntry = CareEntry> {
  readonly point: CarePoint;
  readonly entry: Entry | undefined;
  readonly check: Check;
  /** Within its limit, but this much more or less than was found before, which is more than such readings differ. */
  readonly drifted: number | undefined;
}

/**
 * Points of a visit with what was entered, each held against its limit and against what was found before (CA-4, CA-5).
 *
 * @param points - Points of a room, or of the job. @param occasion - Id of the visit. @param entries - All entries of the job.
 * @returns A state for each point, in their order; without an entry "not-proven".
 * @source COMMON-PRACTICE
 * @example A delay of 640 s where 600 s is set and 605 s was found: pass, drifted 35 where 60 is allowed: no drift
 */
export function careStates<Entry extends CareEntry>(
  points: readonly CarePoint[],
  occasion: string,
  entries: readonly Entry[],
): readonly CareState<Entry>[] {
  const own = countedEntries(entries).filter((entry) => entry.occasion === occasion);
  return points.map((point) => {
    const entry = own.findLast(
      ({ step, about }) =>
        step === point.step && about.kind === point.about.kind && about.id === point.about.id,
    );
    return { point, entry, ...judged(point, entry) };
  });
}

function judged(
  { name, result, source }: CarePoint,
  entry: CareEntry | undefined,
): { readonly check: Check; readonly drifted: number | undefined } {
  const limits = result.kind === "reading" ? result.limit : undefined;
  const common = {
    what: WHAT[name],
    limit: limits?.most ?? limits?.least,
    unit: result.kind === "reading" ? result.unit : "",
    source,
  } as const;
  const unknown = (assumption: Said) => ({
    check: {
      ...common,
      verdict: "not-proven" as const,
      actual: undefined,
      assumptions: [assumption],
    },
    drifted: undefined,
  });
  if (!entry) return unknown(say`Not yet looked at`);
  if (entry.outcome === "not-applicable") return unknown(say`Said not to apply`);
  const verdict = (holds: boolean, actual?: number): Check => ({
    ...common,
    verdict: holds ? "pass" : "fail",
    actual,
    assumptions: [],
  });
  if (entry.outcome === "failed") return { check: verdict(false, entry.value), drifted: undefined };
  if (result.kind === "verdict")
    return entry.outcome === "passed" || entry.outcome === "done"
      ? { check: verdict(true), drifted: undefined }
      : unknown(say`Neither passed nor failed`);
  const { value } = entry;
  if (entry.outcome !== "read" || value === undefined || !Number.isFinite(value) || value < 0)
    return unknown(say`Looked at, but not measured`);
  const holds =
    (limits?.least === undefined || value >= limits.least) &&
    (limits?.most === undefined || value <= limits.most);
  const off = result.stored === undefined ? 0 : value - result.stored.value;
  return { check: verdict(holds, value), drifted: holds && Math.abs(off) > result.drift ? off : undefined };
}

/** What a point checks, in the words of the trade. */
const WHAT: Readonly<Record<CarePoint["name"], Said>> = {
  asked: say`People in the room content`,
  "false-on": say`Not switched on with nobody there`,
  threshold: say`Switched on when it is needed, and not by daylight`,
  sun: say`Not misled by the sun`,
  lens: say`Lenses clean and whole`,
  mask: say`Masks in place, as drawn`,
  layout: say`Room laid out as on the plan`,
  "door-walk": say`Walk in the dark from the door`,
  delay: say`Off delay by stop-watch`,
  "fans-on": say`Empty room stays dark, fans running`,
  "rcd-button": say`Test button of the RCD`,
  emergency: say`Emergency luminaire lights, breaker open`,
  inspection: say`Periodic inspection of the installation`,
};

/** Years between periodic inspections where the job says nothing. [a] */
export const INSPECTION_YEARS = 4;
/** Years between full tests of emergency lighting. [a] */
const EMERGENCY_YEARS = 1;

/**
 * When what recurs by law or standard falls due again: counted from the hand-over, or from when it was last entered as passed.
 *
 * @param handedOver - Day of the first hand-over. @param of.entries - All entries. @param of.luminaires - Ids of emergency luminaires. @param of.years - Between periodic inspections; 4 if absent. [a]
 * @returns Days; emergency: of the luminaire that waits longest, undefined where there is none.
 * @source IEC-60364-6-PERIODIC
 * @source EN-50172
 * @example Handed over on 2026-11-26, nothing entered since: inspection 2030-11-26
 */
export function careDue(
  handedOver: Day | undefined,
  of: {
    readonly entries: readonly SiteEntry[];
    readonly luminaires: readonly string[];
    readonly years?: number | undefined;
  },
): { readonly emergency: Day | undefined; readonly inspection: Day | undefined } {
  const counted = countedEntries(of.entries).filter(
    ({ outcome }) => outcome === "passed" || outcome === "done",
  );
  const lastOf = (steps: readonly string[], id: string): Day | undefined =>
    counted.findLast(({ step, about }) => steps.includes(step) && about.id === id)?.time.slice(0, 10);
  const tested = of.luminaires
    .flatMap((id) => lastOf(["emergency", "care-emergency"], id) ?? handedOver ?? [])
    .toSorted();
  return {
    emergency: dayAfter(tested[0], { years: EMERGENCY_YEARS }),
    inspection: dayAfter(lastOf(["care-inspection"], "job") ?? handedOver, {
      years: of.years ?? INSPECTION_YEARS,
    }),
  };
}
