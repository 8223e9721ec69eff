import type { Lux, Share } from "../quantity/index.ts";

/** Who measured how people switch on when they arrive. */
export type ArrivalStudy = "hunt-1979" | "reinhart-2003";

interface Curve {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly m: number;
}

/** @source HUNT-1979 @source REINHART-2003 */
const curves: Readonly<Record<ArrivalStudy, Curve>> = {
  "hunt-1979": { a: -0.0175, b: -4.0835, c: 1.0361, m: 1.8223 },
  "reinhart-2003": { a: -0.00238, b: -3.0965, c: 1.0157, m: 1.8536 },
};

/** Below the first everybody switches on, above the second nobody does. [lx] @source HUNT-1979 */
const huntLimits: readonly [Lux, Lux] = [7, 657.7];

/**
 * Chance that somebody who arrives switches the light on by hand.
 *
 * p = A + C / (1 + e^(−B (log10 E − M))), within 0 … 1; by Hunt 1 below 7 lx and 0 above 657.7 lx
 *
 * @param light - Least daylight at the work places, E > 0 [lx]
 * @param study - Whose constants A, B, C and M
 * @returns p
 * @source HUNT-1979
 * @source REINHART-2003
 * @example Hunt at 5 lx: 1
 */
export function manualSwitchOn(light: Lux, study: ArrivalStudy): Share {
  if (!(light > 0)) throw new RangeError(`Light must be greater than 0, not ${light}`);
  if (study === "hunt-1979" && light < huntLimits[0]) return 1;
  if (study === "hunt-1979" && light > huntLimits[1]) return 0;
  const { a, b, c, m } = curves[study];
  return Math.min(1, Math.max(0, a + c / (1 + Math.exp(-b * (Math.log10(light) - m)))));
}
