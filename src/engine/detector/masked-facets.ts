import { type Radians, wholeTurn } from "../quantity/index.ts";
import { maskedSectors } from "./masks.ts";
import type { Lens, LensMask } from "./model.ts";

/** A facet of a lens whose beam a mask meets. Rings and facets count from 1, from the pole and from the notch. */
export interface MaskedFacet {
  readonly ring: number;
  readonly facet: number;
  readonly offNadir: Radians;
  /** Middle of the facet from the notch, counter-clockwise seen from above. */
  readonly azimuth: Radians;
}

/**
 * Beam of one facet.
 *
 * sin θ± = sin θ ± w/2f; Δφ = asin((w/2f)/sin θ)
 *
 * @param offNadir - θ of its middle. [rad] @param spread - w/2f, half the width of all elements over the focal length.
 * @returns Off-nadir angles of its edges and half its width in azimuth, π where it holds the pole. [rad]
 * @source MASK-GEOMETRY
 * @example θ 30°, w/2f 0.1: 23.58° to 36.87°, ± 11.54°
 */
export function facetBeam(
  offNadir: Radians,
  spread: number,
): { readonly inner: Radians; readonly outer: Radians; readonly half: Radians } {
  const sine = Math.sin(offNadir);
  return {
    inner: sine <= spread ? 0 : Math.asin(sine - spread),
    outer: sine + spread >= 1 ? Math.PI / 2 : Math.asin(sine + spread),
    half: sine <= spread ? Math.PI : Math.asin(spread / sine),
  };
}

/**
 * Facets that masks meet: those to cover where a lens is masked facet by facet.
 *
 * A facet is taken to look along the middle of its share of the ring, the first across the notch. Where nobody declared the width of a
 * beam, its share of the lens is taken for it: half way to the neighbouring rings, and its part of the turn.
 *
 * @param lens - Rings of facets. @param masks - Any masks. @param spread - w/2f where it is known.
 * @returns Facets, from the pole outward, counter-clockwise; empty where no rings are declared.
 * @source MASK-GEOMETRY
 * @example One ring of four facets at 45°, a mask of 80° to 100° × 40° to 50°: the second facet
 */
export function maskedFacets(
  lens: Lens,
  masks: readonly LensMask[],
  spread?: number,
): readonly MaskedFacet[] {
  const sectors = maskedSectors(masks);
  const rings = lens.rings.toSorted((a, b) => a.offNadir - b.offNadir);
  return rings.flatMap(({ offNadir, facets }, r): readonly MaskedFacet[] => {
    const beam =
      spread === undefined
        ? {
            inner: r === 0 ? 0 : (offNadir + rings[r - 1]!.offNadir) / 2,
            outer: r + 1 < rings.length ? (offNadir + rings[r + 1]!.offNadir) / 2 : Math.PI / 2,
            half: Math.PI / facets,
          }
        : facetBeam(offNadir, spread);
    return Array.from(
      { length: facets },
      (_, i): MaskedFacet => ({
        ring: r + 1,
        facet: i + 1,
        offNadir,
        azimuth: (2 * Math.PI * i) / facets,
      }),
    ).filter(({ azimuth }) =>
      sectors.some(
        ({ from, to, bands }) =>
          bands.some(({ inner, outer }) => inner < beam.outer - EDGE && outer > beam.inner + EDGE) &&
          meets({ from, to }, { middle: azimuth, half: Math.min(Math.PI, beam.half) }),
      ),
    );
  });
}

/** What touches by less than this is not met. [rad] */
const EDGE: Radians = 1e-9;

function meets(
  sector: { readonly from: Radians; readonly to: Radians },
  beam: { readonly middle: Radians; readonly half: Radians },
): boolean {
  const span = sector.to - sector.from;
  if (span >= 2 * Math.PI - EDGE || beam.half >= Math.PI - EDGE) return true;
  const middle = sector.from + span / 2;
  const apart = wholeTurn(beam.middle - middle + Math.PI) - Math.PI;
  return Math.abs(apart) < span / 2 + beam.half - EDGE;
}
