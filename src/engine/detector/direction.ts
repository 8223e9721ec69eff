import type { Metres, Radians } from "../quantity/index.ts";

/**
 * Reach for one who walks at an angle to the line to the detector.
 *
 * 1/R² = cos²ψ/R_towards² + sin²ψ/R_across²
 *
 * @param reach - Reach towards and across. [m]
 * @param heading - Angle ψ between the way and the line to the detector. [rad]
 * @returns Reach in that direction of walking. [m] 0 where either reach is 0.
 * @source DIRECTION-ELLIPSE
 * @example Towards 4 m, across 8 m, ψ = 45°: 5.06 m
 */
export function reachOfWalk(
  reach: { readonly towards: Metres; readonly across: Metres },
  heading: Radians,
): Metres {
  if (reach.towards <= 0 || reach.across <= 0) return 0;
  return 1 / Math.hypot(Math.cos(heading) / reach.towards, Math.sin(heading) / reach.across);
}

/**
 * Where one who walks straight past a detector is first seen.
 *
 * x = R_towards √(1 − b²/R_across²)
 *
 * @param reach - Reach towards and across. [m] @param offset - Least distance of the way from the detector, b. [m]
 * @returns Distance along the way before the nearest point [m]; undefined where the way stays outside.
 * @source DIRECTION-ELLIPSE
 * @example Towards 4 m, across 8 m, b = 4 m: 3.46 m
 */
export function onsetOfPass(
  reach: { readonly towards: Metres; readonly across: Metres },
  offset: Metres,
): Metres | undefined {
  const rest = 1 - (offset / reach.across) ** 2;
  return rest < 0 ? undefined : reach.towards * Math.sqrt(rest);
}

/**
 * Declared radius from measured distances: the largest that at most 15 % of the directions fall short of.
 *
 * r₁ ≤ … ≤ r_N, k = ⌊0.15 N⌋, R = r_(k+1)
 *
 * @param distances - Boundary distance in each direction; 0 where nothing was detected. [m]
 * @returns Declared radius [m]; undefined without measurements.
 * @source IEC-63180
 * @example 36 directions, six of them below 4 m (2.5, 3, 3, 3.5, 3.5, 3.5): 3.5 m
 */
export function declaredRadius(distances: readonly Metres[]): Metres | undefined {
  const sorted = distances.toSorted((a, b) => a - b);
  return sorted[Math.floor(0.15 * sorted.length)];
}
