/** What a record of the test speaks of. */
export interface StepSubject {
  readonly kind: "job" | "board" | "circuit" | "room" | "detector" | "luminaire";
  readonly id: string;
}

/** What somebody did or found on site, as a job keeps it: added, never changed. */
export interface SiteEntry {
  readonly id: string;
  /** ISO 8601 in the world's time, with "Z": texts of any place sort by time. */
  readonly time: string;
  readonly about: StepSubject;
  /** Name of the step; "station" for the walk test. */
  readonly step: string;
  readonly part?: string | undefined;
  readonly outcome:
    | "done"
    | "passed"
    | "failed"
    | "seen"
    | "not-seen"
    | "read"
    | "not-applicable"
    | "withdrawn";
  readonly value?: number | undefined;
  /** Entry that is withdrawn. */
  readonly of?: string | undefined;
  /** `Station.basis` when a station was read. */
  readonly basis?: string | undefined;
}

/**
 * Entries that count, in the order of time; of one moment in the order of their ids, so that every copy of a job agrees.
 *
 * @param entries - All entries. @returns Those that are neither withdrawn nor withdrawals; a withdrawal that is withdrawn counts no more.
 * @example An entry, and one that withdraws it: none
 */
export function countedEntries<Entry extends SiteEntry>(entries: readonly Entry[]): readonly Entry[] {
  const sorted = entries.toSorted((a, b) => order(momentOf(a.time), momentOf(b.time)) || order(a.id, b.id));
  const gone = new Set<string>();
  // The later a withdrawal, the surer it stands: from the last backwards each is judged before what it names.
  for (const entry of sorted.toReversed()) {
    if (entry.outcome === "withdrawn" && entry.of !== undefined && !gone.has(entry.id)) gone.add(entry.of);
  }
  return sorted.filter((entry) => entry.outcome !== "withdrawn" && !gone.has(entry.id));
}

/**
 * A moment as a number, so that clocks of different zones are put into one order.
 *
 * @param time - ISO 8601, with its zone. @returns Milliseconds since 1970; what cannot be read comes first.
 * @example 09:00 at +01:00 is before 08:30 at +00:00
 */
export const momentOf = (time: string | undefined): number => {
  const moment = time === undefined ? Number.NaN : Date.parse(time);
  return Number.isNaN(moment) ? Number.NEGATIVE_INFINITY : moment;
};

const order = <Value extends number | string>(a: Value, b: Value): number => (a < b ? -1 : a > b ? 1 : 0);
