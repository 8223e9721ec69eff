import type { Lux, Seconds } from "../quantity/index.ts";

/** Daylight at the detectors over a day: half a sine. */
export interface DayCurve {
  readonly rise: Seconds;
  readonly set: Seconds;
  /** Half-way between the two. */
  readonly highest: Lux;
}

/** An even day to begin with where a room has a window. Ours. @source DAY-CURVE */
export const usualDayCurve: DayCurve = { rise: 7 * 3600, set: 18 * 3600, highest: 400 };

/** Daylight is given to the controllers in steps of so long. [s] */
export const daylightStep: Seconds = 300;

/**
 * Daylight at a time of the day.
 *
 * E = E_highest sin(π (t − t_rise)/(t_set − t_rise)) between the two, nothing before and after
 *
 * @param curve - Rise before set
 * @param time - Time of the day [s]
 * @returns E [lx]
 * @source DAY-CURVE
 * @example Half-way between rise and set: the highest
 */
export function daylightAt(curve: DayCurve, time: Seconds): Lux {
  const { rise, set, highest } = curve;
  if (!(set > rise) || time <= rise || time >= set) return 0;
  return highest * Math.sin((Math.PI * (time - rise)) / (set - rise));
}
