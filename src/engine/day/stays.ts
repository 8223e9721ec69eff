import { bridged, type Interval } from "../control/index.ts";
import type { Seconds } from "../quantity/index.ts";
import { drawsFrom, seedFor } from "./chance.ts";

/** A stretch in view of a detector: somebody is there, or something moves and nobody is there. */
export interface Stay {
  readonly from: Seconds;
  readonly to: Seconds;
  readonly what: "somebody" | "only-movement";
}

/** Nothing moves faster than this in a drawn day: it keeps a day short enough to be looked at. [s] */
const shortestPause: Seconds = 10;

/**
 * Stays in order, those of one kind that meet or overlap as one; what has no length is left out.
 *
 * @param stays - In any order
 * @returns By their beginning
 * @example 9:00–10:00 and 9:30–11:00 are 9:00–11:00
 */
export function tidyStays(stays: readonly Stay[]): readonly Stay[] {
  const kinds = ["somebody", "only-movement"] as const;
  return kinds
    .flatMap((what) =>
      bridged(
        stays
          .filter((one) => one.what === what && one.to > one.from)
          .sort(byBeginning)
          .map(({ from, to }): Interval => [from, to]),
        0,
      ).map(([from, to]): Stay => ({ from, to, what })),
    )
    .sort(byBeginning);
}

const byBeginning = (a: Stay, b: Stay): number => a.from - b.from || a.to - b.to;

/**
 * When anybody is there: the stays of all detectors together, those in which nobody is there left out.
 *
 * @param rows - Stays by detector
 * @param bridge - A pause of up to so long is somebody whom nothing recorded; none by default [s]
 * @returns Ascending, apart [s]
 */
export const peopleOf = (rows: readonly (readonly Stay[])[], bridge: Seconds = 0): readonly Interval[] =>
  bridged(
    tidyStays(rows.flat().filter(({ what }) => what === "somebody")).map(
      ({ from, to }): Interval => [from, to],
    ),
    bridge,
  );

/**
 * Movements that a detector sees in its stays: one at the beginning, one at the end, and between them pauses that are drawn
 * evenly from nothing up to the longest. What moves without anybody there never rests.
 *
 * @param stays - Of one detector
 * @param options.still - Longest time that somebody stays without a visible movement; 0: seen all the while [s]
 * @param options.seed - Any whole number; pauses of a stay hang on it, on the detector and on when the stay begins
 * @param options.device - Name of the detector
 * @returns Ascending [s]
 * @source DAY-PATTERN
 */
export function movementsOf(
  stays: readonly Stay[],
  options: { readonly still: Seconds; readonly seed: number; readonly device: string },
): Float64Array {
  const times: number[] = [];
  for (const { from, to, what } of stays) {
    const still = what === "somebody" ? options.still : 0;
    const draw = drawsFrom(seedFor(options.seed, options.device, from));
    for (let at = from; at < to; at += Math.max(shortestPause, still * draw())) times.push(at);
    times.push(to);
  }
  return Float64Array.from(times).sort();
}

/**
 * Stretches of a state that is known step by step.
 *
 * @param present - Whether somebody is there, step by step from 0 on
 * @param step - Length of a step [s]
 * @returns Stays of somebody
 * @example Two steps of 900 s, the second with somebody: from 900 to 1800
 */
export const staysOfSteps = (present: readonly boolean[], step: Seconds): readonly Stay[] =>
  tidyStays(
    present.flatMap((there, i) =>
      there ? [{ from: i * step, to: (i + 1) * step, what: "somebody" as const }] : [],
    ),
  );
