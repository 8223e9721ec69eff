import type { Seconds } from "../quantity/index.ts";
import type { Interval } from "./arrangement.ts";

/**
 * Intervals with the pauses between them filled that are no longer than so long.
 *
 * @param intervals - By their beginning; they may meet or overlap [s]
 * @param pause - Longest pause that is filled; 0 joins only those that meet [s]
 * @returns Ascending, apart
 * @example 0–60 and 90–120 with a pause of 30: 0–120
 */
export function bridged(intervals: readonly Interval[], pause: Seconds): readonly Interval[] {
  const wide: [Seconds, Seconds][] = [];
  for (const [from, to] of intervals) {
    const last = wide.at(-1);
    if (last && from - last[1] <= pause) last[1] = Math.max(last[1], to);
    else wide.push([from, to]);
  }
  return wide;
}
