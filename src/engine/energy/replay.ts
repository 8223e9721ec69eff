import type { Seconds } from "../quantity/index.ts";

/** What a replay counts. */
export interface ReplayCount {
  readonly rows: number;
  readonly occupiedRows: number;
  readonly litRows: number;
  readonly offEvents: number;
}

/**
 * Counts lit rows and switch-offs of a log row by row: row i is lit if any of the rows i − n … i was occupied.
 *
 * @param occupied - Whether somebody was there, row by row
 * @param rows - Off delay in rows, n ≥ 0
 * @returns Counts; an off-event is a dark row after a lit one
 * @source LOG-REPLAY
 * @example Occupied, empty, empty with n = 1: two rows lit, one switch-off
 */
export function replayRows(occupied: readonly boolean[], rows: number): ReplayCount {
  let last = Number.NEGATIVE_INFINITY;
  let litRows = 0;
  let offEvents = 0;
  let occupiedRows = 0;
  let wasLit = false;
  occupied.forEach((there, i) => {
    if (there) {
      last = i;
      occupiedRows++;
    }
    const lit = i - last <= rows;
    if (lit) litRows++;
    else if (wasLit) offEvents++;
    wasLit = lit;
  });
  return { rows: occupied.length, occupiedRows, litRows, offEvents };
}

/**
 * Turns rows of a log into stretches of presence: an occupied row counts until the next row, but not across a gap.
 *
 * @param times - Time of each row, ascending [s]
 * @param occupied - Whether somebody was there
 * @param longestStep - A longer step is a gap in the log: presence is not known there [s]
 * @param lastsFor - How long a row counts that none follows within that time; longestStep by default [s]
 * @returns Stretches [from, to)
 */
export function presenceOf(
  times: readonly Seconds[],
  occupied: readonly boolean[],
  { longestStep, lastsFor = longestStep }: { readonly longestStep: Seconds; readonly lastsFor?: Seconds },
): (readonly [Seconds, Seconds])[] {
  const stretches: [Seconds, Seconds][] = [];
  times.forEach((from, i) => {
    if (!occupied[i]) return;
    const next = times[i + 1];
    const to = next !== undefined && next - from <= longestStep ? next : from + lastsFor;
    const last = stretches.at(-1);
    if (last && last[1] === from) last[1] = to;
    else if (to > from) stretches.push([from, to]);
  });
  return stretches;
}
