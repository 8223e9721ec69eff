import type { Interval, LoadTrack } from "../control/index.ts";
import type { Seconds, Share, Watts } from "../quantity/index.ts";

const HOUR: Seconds = 3600;
const YEAR: Seconds = 365 * 24 * HOUR;

/** What a load used in a simulated time. */
export interface Consumption {
  readonly span: Seconds;
  readonly litHours: number;
  readonly cycles: number;
  readonly cyclesPerYear: number;
  readonly offWhileOccupied: number;
  readonly energy: number;
  readonly energyPerYear: number;
}

/**
 * Lit hours, switching cycles and energy of a load from its simulated run.
 *
 * W = P t_lit + P_background (t − t_lit)
 *
 * @param track - What the load did
 * @param options.span - Simulated time, > 0 [s]
 * @param options.power - Drawn while lit [W]
 * @param options.background - Drawn while not lit: a background level, drivers and controllers at rest; 0 by default [W]
 * @param options.people - When somebody was really there, ascending; without it no switch-off counts as one too many
 * @returns Hours [h], cycles, energy [kWh], and both for 365 days like these
 * @source DERIVED-HERE
 * @example 100 W for 10 h: 1 kWh
 */
export function consumption(
  track: LoadTrack,
  options: {
    readonly span: Seconds;
    readonly power: Watts;
    readonly background?: Watts;
    readonly people?: readonly Interval[];
  },
): Consumption {
  const { span, power } = options;
  if (!(span > 0)) throw new RangeError(`The simulated time must be longer than 0, not ${span}`);
  let lit = 0;
  let cycles = 0;
  let early = 0;
  for (let i = 0, person = 0; i < track.length; i++) {
    const off = track.off[i]!;
    lit += off - track.on[i]!;
    if (off >= span) continue;
    cycles++;
    const people = options.people ?? [];
    while (person < people.length && people[person]![1] <= off) person++;
    if (person < people.length && people[person]![0] <= off) early++;
  }
  const energy = (power * lit + (options.background ?? 0) * (span - lit)) / HOUR / 1000;
  return {
    span,
    litHours: lit / HOUR,
    cycles,
    cyclesPerYear: (cycles * YEAR) / span,
    offWhileOccupied: early,
    energy,
    energyPerYear: (energy * YEAR) / span,
  };
}

/**
 * Share of energy spared against a stated reference.
 *
 * s = 1 − W/W_reference
 *
 * @param used - What is compared
 * @param reference - What it is compared with, over the same time
 * @returns Share; negative if more is used; undefined where the reference uses nothing
 * @source DERIVED-HERE
 * @example 3 kWh against 4 kWh: 0.25; against itself: 0
 */
export function saving(used: Consumption, reference: Consumption): Share | undefined {
  if (used.span !== reference.span)
    throw new RangeError(`Compare like with like: ${used.span} s against ${reference.span} s`);
  return reference.energy > 0 ? 1 - used.energy / reference.energy : undefined;
}

/** A reference: lit for the whole time. @param span - [s] @returns Its track */
export const alwaysLit = (span: Seconds): LoadTrack => litFor([[0, span]]);

/** A reference: lit from … to, such as the hours of use. @param hours - Ascending, apart [s] @returns Its track */
export const litFor = (hours: readonly Interval[]): LoadTrack => ({
  length: hours.length,
  on: Float64Array.from(hours, ([from]) => from),
  off: Float64Array.from(hours, ([, to]) => to),
  onCauses: new Uint8Array(hours.length),
  offCauses: new Uint8Array(hours.length),
  offBy: new Int32Array(hours.length).fill(-1),
});
