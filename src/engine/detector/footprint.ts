import type { Metres, Radians } from "../quantity/index.ts";

/** Distance in plan at which a ray meets a level plane. r = (h − z) tan θ. @returns [m] @source SIGHT-GEOMETRY @example h 2.5, z 0, θ 57.995°: 4.0 m */
export const footprintRadius = (
  offNadir: Radians,
  heights: { readonly lens: Metres; readonly plane: Metres },
): Metres => Math.max(0, heights.lens - heights.plane) * Math.tan(offNadir);

/** Off-nadir angle of the farthest ray of a declared radius. θ = atan(R/(h − z)). @returns [rad] @source SIGHT-GEOMETRY @example R 4.0 m, h 2.5 m, floor: 57.995° */
export const widestAngle = (
  radius: Metres,
  heights: { readonly lens: Metres; readonly plane: Metres },
): Radians => Math.atan(radius / (heights.lens - heights.plane));

/**
 * Distances that an opaque partition hides on a level plane, along one ray.
 *
 * d … d(h − z)/(h − p) for z < p < h; without end for p ≥ h; nothing for p ≤ z
 *
 * @param partition.distance - d. [m] @param partition.height - p. [m] @param heights - Of lens and plane. [m]
 * @returns From and to [m]; undefined where nothing is hidden.
 * @source SIGHT-GEOMETRY
 * @example h 2.8, p 1.4, d 3.0, z 0.8 m: 3.000 to 4.286 m
 */
export function shadowOf(
  partition: { readonly distance: Metres; readonly height: Metres },
  heights: { readonly lens: Metres; readonly plane: Metres },
): { readonly from: Metres; readonly to: Metres } | undefined {
  const { distance, height } = partition;
  if (height <= heights.plane) return undefined;
  if (height >= heights.lens) return { from: distance, to: Infinity };
  return { from: distance, to: (distance * (heights.lens - heights.plane)) / (heights.lens - height) };
}

/** How far past an open door a lintel lets see on a level plane: a(h − z)/(h − z_l). @returns [m], from the lens; ∞ for a lintel at or above it @source SIGHT-GEOMETRY @example h 2.7, z_l 2.0, a 2.0, z 1.0: 4.857 m */
export const lintelLimit = (
  lintel: { readonly distance: Metres; readonly height: Metres },
  heights: { readonly lens: Metres; readonly plane: Metres },
): Metres =>
  lintel.height >= heights.lens
    ? Infinity
    : (lintel.distance * (heights.lens - heights.plane)) / (heights.lens - lintel.height);
