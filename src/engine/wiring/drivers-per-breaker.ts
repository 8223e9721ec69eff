import type { Amperes, Seconds } from "../quantity/index.ts";
import { mostByLeakage } from "./leakage.ts";
import type { DriversPerBreaker, PulseCurve } from "./model.ts";
import { type BreakerType, tripBands } from "./tables/protection.ts";

/** From this width on a pulse counts as steady for a magnetic release. [s] */
const FULL_WIDTH = 0.01;

/**
 * How many times its magnetic limit a breaker bears for a short pulse, from the points of its own curve.
 *
 * Log-log between points; 1 from 10 ms on.
 *
 * @param curve - Points by width, entered from the breaker's data sheet. @param width - Width at half the peak. [s]
 * @returns Factor k; undefined without a curve, or for a pulse shorter than its first point.
 * @source BREAKER-PULSE
 * @example Points 0.1 ms → 20 and 1 ms → 4: at 0.316 ms the factor is √(20 · 4) = 8.94
 */
export function pulseFactor(curve: PulseCurve | undefined, width: Seconds): number | undefined {
  if (width >= FULL_WIDTH) return 1;
  if (!curve || curve.length === 0) return undefined;
  const points = [
    ...curve,
    ...(curve.some(([at]) => at >= FULL_WIDTH) ? [] : [[FULL_WIDTH, 1] as const]),
  ].toSorted((a, b) => a[0] - b[0]);
  const next = points.findIndex(([at]) => at >= width);
  const above = points[next];
  const below = points[next - 1];
  if (!above) return 1;
  if (above[0] === width) return above[1];
  if (!below) return undefined;
  const share = Math.log(width / below[0]) / Math.log(above[0] / below[0]);
  return below[1] * (above[1] / below[1]) ** share;
}

/** Peak that a breaker surely bears for a pulse: k · n · In with the lower end of its band. @param breaker - Type, rating [A], curve. @param width [s] @returns [A]; undefined without a curve @source BREAKER-PULSE @example C16 at 10 ms: 80 A */
export function bearablePeak(
  breaker: { readonly type: BreakerType; readonly rating: Amperes; readonly curve: PulseCurve | undefined },
  width: Seconds,
): Amperes | undefined {
  const factor = pulseFactor(breaker.curve, width);
  return factor === undefined ? undefined : factor * tripBands.rows[breaker.type].least * breaker.rating;
}

/** Largest numbers of equal drivers on a breaker, by each reason; undefined where the reason cannot be judged. */
export interface DriverNumbers {
  readonly inrush: number | undefined;
  readonly steady: number;
  readonly leakage: number | undefined;
  /** The least of all; undefined while one of them is. */
  readonly most: number | undefined;
}

/**
 * Largest number of equal drivers on one breaker.
 *
 * N = min(⌊k(T50) · n · In / Ipk⌋, ⌊u · In / I⌋, ⌊0.3 · IΔn / Ileak⌋)
 *
 * @param breaker - Type, rating [A], curve, RCD [A]. @param driver - Peak [A], half width [s], steady current [A], leakage [A]. @param share - Of the rating that may be used steadily, u ≤ 1; 0.8 is customary.
 * @returns Numbers by reason and the least.
 * @source BREAKER-PULSE, LEAKAGE-SHARE
 * @example B16 bearing 480 A, drivers of 30 A peak: 16 by inrush
 */
export function driversOnBreaker(
  breaker: {
    readonly type: BreakerType;
    readonly rating: Amperes;
    readonly curve?: PulseCurve;
    readonly residual?: Amperes;
  },
  driver: {
    readonly peak: Amperes;
    readonly width: Seconds;
    readonly current: Amperes;
    readonly leakage?: Amperes;
  },
  share: number,
): DriverNumbers {
  const bears = bearablePeak({ ...breaker, curve: breaker.curve }, driver.width);
  const inrush = bears === undefined ? undefined : Math.floor(bears / driver.peak + 1e-9);
  const steady = Math.floor((share * breaker.rating) / driver.current + 1e-9);
  const leakage =
    breaker.residual === undefined || driver.leakage === undefined
      ? undefined
      : mostByLeakage(breaker.residual, driver.leakage);
  const unknown = inrush === undefined || (breaker.residual !== undefined && leakage === undefined);
  return { inrush, steady, leakage, most: unknown ? undefined : Math.min(inrush, steady, leakage ?? steady) };
}

/**
 * Number of drivers on another breaker scaled from a declared one: an estimate that is never a pass.
 *
 * Proportional to In, B = 0.6 · C
 *
 * @param declared - As the driver's maker declares it. @param breaker - The breaker at hand.
 * @returns Whole number; undefined for type D, for which no habit is known.
 * @source CUSTOMARY-SCALING
 * @example 40 on a C16: 24 on a B16, 14 on a B10
 */
export function scaledDrivers(
  declared: DriversPerBreaker,
  breaker: { readonly type: BreakerType; readonly rating: Amperes },
): number | undefined {
  const weight = { B: 0.6, C: 1, D: undefined } as const;
  const [from, to] = [weight[declared.type], weight[breaker.type]];
  if (from === undefined || to === undefined) return undefined;
  // The customary table is printed in whole percent of a C16: 37, 60, 75, 62, 125.
  const percent = Math.floor(((100 * breaker.rating) / declared.rating) * (to / from) + 1e-9);
  return Math.floor((declared.count * percent) / 100 + 1e-9);
}
