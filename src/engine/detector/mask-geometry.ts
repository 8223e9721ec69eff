import type { Metres, Radians } from "../quantity/index.ts";

/** Band of off-nadir angles that blinds a place, at one azimuth. */
export interface BlindBand {
  /** Towards the feet at the near edge, θ_lo. [rad] */
  readonly inner: Radians;
  /** Towards the head at the far edge, θ_hi; π/2 where the head is at or above the lens. [rad] */
  readonly outer: Radians;
}

/**
 * Band of off-nadir angles that must be masked to blind a stretch of floor for people up to a height.
 *
 * θ_lo = atan(r₁/h) (feet, near edge); θ_hi = atan(r₂/(h − H_p)) (head, far edge), 90° if H_p ≥ h
 *
 * @param stretch.near - Near edge, r₁. [m] @param stretch.far - Far edge, r₂. [m]
 * @param heights.lens - Height of the lens, h. [m] @param heights.person - Height of a person, H_p. [m]
 * @returns The band. [rad]
 * @source MASK-GEOMETRY
 * @example h 2.7 m, from 2 m to 4.045 m, H_p 1.8 m: 36.5° to 77.5°
 */
export function blindBand(
  stretch: { readonly near: Metres; readonly far: Metres },
  heights: { readonly lens: Metres; readonly person: Metres },
): BlindBand {
  const { lens, person } = heights;
  const outer = person >= lens ? Math.PI / 2 : Math.atan(stretch.far / (lens - person));
  return { inner: Math.atan(stretch.near / lens), outer };
}

/**
 * Distance from which a mask's first blinded ray also blinds people of a height in front of the place: what is lost beside what was meant.
 *
 * r = (h − z) tan θ_lo
 *
 * @param inner - θ_lo. [rad] @param heights.lens - h. [m] @param heights.seen - z. [m]
 * @returns Distance in plan. [m]
 * @source MASK-GEOMETRY
 * @example θ_lo 36.53°, h 2.7 m, z 1.0 m: 1.259 m
 */
export const lostFrom = (inner: Radians, heights: { readonly lens: Metres; readonly seen: Metres }): Metres =>
  (heights.lens - heights.seen) * Math.tan(inner);

/**
 * Cone that blinds a source seen as a sphere.
 *
 * θ = atan2(r_s, h − z_s), half-angle = asin(a/D), half-azimuth = asin(sin(half-angle)/sin θ)
 *
 * @param source.distance - In plan, r_s. [m] @param source.height - z_s. [m] @param source.radius - a. [m] @param lens - Height of the lens, h. [m]
 * @returns Off-nadir angle, slant distance, half-angle, half-azimuth. [rad, m]
 * @source MASK-GEOMETRY
 * @example h 2.7, r 3.0, z 2.2, a 0.15 m: 80.54°, 3.041 m, ± 2.83°
 */
export function blindCone(
  source: { readonly distance: Metres; readonly height: Metres; readonly radius: Metres },
  lens: Metres,
): {
  readonly offNadir: Radians;
  readonly slant: Metres;
  readonly half: Radians;
  readonly halfAzimuth: Radians;
} {
  const offNadir = Math.atan2(source.distance, lens - source.height);
  const slant = Math.hypot(source.distance, lens - source.height);
  const sine = Math.min(1, source.radius / slant);
  return {
    offNadir,
    slant,
    half: Math.asin(sine),
    halfAzimuth: Math.asin(Math.min(1, sine / Math.sin(offNadir))),
  };
}

/**
 * Where a ray lies on the dome that a mask is cut for.
 *
 * t = −z₀ cos θ + √(R² − z₀² sin²θ); β = atan2(t sin θ, z₀ + t cos θ); ρ = R β; true width = R sin β · dφ
 *
 * @param offNadir - θ. [rad] @param dome.radius - R. [m] @param dome.elementOffset - z₀, the element along the axis into the room. [m]
 * @returns Angle on the dome from its pole β [rad] and arc from the pole ρ [m].
 * @source MASK-GEOMETRY
 * @example R 18 mm, θ 58°, z₀ −4 mm: β 68.86°
 */
export function placeOnDome(
  offNadir: Radians,
  dome: { readonly radius: Metres; readonly elementOffset: Metres },
): { readonly angle: Radians; readonly arc: Metres } {
  const { radius, elementOffset: z } = dome;
  const t = -z * Math.cos(offNadir) + Math.sqrt(radius ** 2 - (z * Math.sin(offNadir)) ** 2);
  const angle = Math.atan2(t * Math.sin(offNadir), z + t * Math.cos(offNadir));
  return { angle, arc: radius * angle };
}

/** True width of a slice of azimuth on the dome. @returns R sin β · dφ [m] @source MASK-GEOMETRY @example R 18 mm, β 36.53°, 33.4°: 6.246 mm */
export const widthOnDome = (
  slice: { readonly angle: Radians; readonly azimuth: Radians },
  radius: Metres,
): Metres => radius * Math.sin(slice.angle) * slice.azimuth;
