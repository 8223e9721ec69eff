import type { Problem } from "../check/index.ts";
import type { Lux } from "../quantity/index.ts";

/** Ceiling and work plane read at the same moment. */
export interface ReadingPair {
  /** At the detector, S. [lx] */
  readonly ceiling: Lux;
  /** At the task, E. [lx] */
  readonly task: Lux;
}

/** What was read: pairs with the lamps off, at daylight; and what the lamps alone give, if known. */
export interface ThresholdReadings {
  /** Name of the room on paper. */
  readonly room: string;
  readonly target: Lux;
  readonly lampsOff: readonly ReadingPair[];
  /** Lamps alone, in the dark, warmed up; or the difference of on and off at one daylight (`lampsAlone`). */
  readonly lamps?: ReadingPair;
  /** The sun shone on floor or desk in view of the detector. */
  readonly sunPatch: boolean;
}

export interface ThresholdResult {
  /** Daylight ratio ceiling to task, k_day. */
  readonly daylightRatio: number;
  /** Lamp ratio, k_el. */
  readonly lampRatio: number | undefined;
  /** Below this, lamps off: on. [lx at the ceiling] */
  readonly on: Lux;
  /** Above this, lamps on: off; unknown without the lamps' own reading. [lx at the ceiling] */
  readonly off: Lux | undefined;
  /** Largest deviation of a pair's ratio from k_day, as a share of it. */
  readonly spread: number;
  readonly notes: readonly Problem[];
}

/** Daylight at the task below this share of the target says too little of the target. @source CEILING-READING */
const LEAST_SHARE = 0.2;
/** Pairs through the day for a ratio that can be trusted. @source CEILING-READING */
const ENOUGH_PAIRS = 3;

/**
 * What the lamps alone give, from two readings at one daylight.
 *
 * S_el = S_on − S_off;  E_el = E_on − E_off
 *
 * @param on - Lamps on
 * @param off - Lamps off
 * @returns [lx]
 * @source CEILING-READING
 * @example Ceiling 217 on and 96 off: 121 lx
 */
export const lampsAlone = (on: ReadingPair, off: ReadingPair): ReadingPair => ({
  ceiling: on.ceiling - off.ceiling,
  task: on.task - off.task,
});

/**
 * Set values of the brightness threshold from ceiling and work-plane readings.
 *
 * k_day = Σ S E / Σ E²;  S_on = k_day E_target;  S_off = k_day E_target + S_el (before hysteresis)
 *
 * @param readings - Pairs, target, lamps
 * @returns Set values at the ceiling, or the reasons why the readings cannot carry them
 * @source CEILING-READING
 * @validFor Diffuse daylight
 * @example Task 320, ceiling 96: ratio 0.3; target 500: on at 150 lx
 */
export function thresholdFrom(
  readings: ThresholdReadings,
): ThresholdResult | { readonly problems: readonly Problem[] } {
  const { room, target, lampsOff, lamps } = readings;
  const problems: Problem[] = [];
  const positive = (pair: ReadingPair): boolean =>
    pair.ceiling >= 0 && pair.task >= 0 && Number.isFinite(pair.ceiling + pair.task);
  if (!(target > 0)) problems.push({ code: "threshold-target-missing", values: { room } });
  if (!lampsOff.every(positive) || (lamps && !positive(lamps)))
    problems.push({ code: "threshold-reading-impossible", values: { room } });
  if (readings.sunPatch) problems.push({ code: "threshold-sun-patch", values: { room } });
  const brightest = Math.max(0, ...lampsOff.map(({ task }) => task));
  if (!(brightest >= LEAST_SHARE * target && brightest > 0))
    problems.push({
      code: "threshold-too-dark",
      values: { room, read: Math.round(brightest), needed: Math.round(LEAST_SHARE * target) },
    });
  if (problems.length > 0) return { problems };
  const used = lampsOff.filter(({ task }) => task >= LEAST_SHARE * target);
  const ratio = sum(used, ({ ceiling, task }) => ceiling * task) / sum(used, ({ task }) => task * task);
  if (!(ratio > 0)) return { problems: [{ code: "threshold-reading-impossible", values: { room } }] };
  const spread = Math.max(...used.map(({ ceiling, task }) => Math.abs(ceiling / task - ratio) / ratio));
  const on = ratio * target;
  return {
    daylightRatio: ratio,
    lampRatio: lamps && lamps.task > 0 ? lamps.ceiling / lamps.task : undefined,
    on,
    off: lamps ? on + lamps.ceiling : undefined,
    spread,
    notes:
      used.length >= ENOUGH_PAIRS
        ? []
        : [{ code: "threshold-few-readings", values: { room, count: used.length, needed: ENOUGH_PAIRS } }],
  };
}

const sum = <T>(all: readonly T[], of: (one: T) => number): number =>
  all.reduce((total, one) => total + of(one), 0);

/** A closed loop in proportion: night readings at full output, and one by day. */
export interface DimmingLoop {
  /** Lamps alone at full output. */
  readonly night: ReadingPair;
  /** Daylight alone. */
  readonly day: ReadingPair;
}

/**
 * Slope of a proportional closed loop at its calibration.
 *
 * M = E_D / (S_m E_D − E_m S_D)
 *
 * @param loop - Night and day readings [lx]
 * @returns [1/lx]
 * @source RUBINSTEIN-1989
 * @example E_D 250, S_D 100, S_m 121, E_m 550: −0.0101
 */
export const loopSlope = (loop: DimmingLoop): number =>
  loop.day.task / (loop.night.ceiling * loop.day.task - loop.night.task * loop.day.ceiling);

/**
 * Output of the lamps under a proportional closed loop.
 *
 * δ = [1 + M (S_D − S_m)] / (1 − M S_m), kept within 0 … 1
 *
 * @param slope - M [1/lx]
 * @param light.night - Lamps alone at the ceiling, S_m [lx]
 * @param light.day - Daylight at the ceiling, S_D [lx]
 * @returns Share of full output
 * @source RUBINSTEIN-1989
 * @example No daylight: (1 − M S_m)/(1 − M S_m) = 1
 */
export const dimmedTo = (slope: number, light: { readonly night: Lux; readonly day: Lux }): number =>
  Math.min(1, Math.max(0, (1 + slope * (light.day - light.night)) / (1 - slope * light.night)));
