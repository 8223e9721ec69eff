import { type Metres, type Radians, wholeTurn } from "../quantity/index.ts";
import type { LensMask } from "./model.ts";

/** A sector of the lens with the bands of off-nadir angle that are masked in it, joined and rising. */
export interface MaskedSector {
  /** Counter-clockwise from the notch; from < to ≤ from + 2π. [rad] */
  readonly from: Radians;
  readonly to: Radians;
  readonly bands: readonly { readonly inner: Radians; readonly outer: Radians }[];
}

/**
 * Whether a mask covers a ray, its edges included.
 *
 * @param mask - The mask. @param ray.azimuth - From the notch. [rad] @param ray.offNadir - From straight down. [rad]
 * @returns true for rays in the sector and the band; 0 → 2π is a ring.
 * @source SIGHT-GEOMETRY
 * @example A mask from 350° to 10° covers azimuth 0°
 */
export function maskContains(
  mask: LensMask,
  ray: { readonly azimuth: Radians; readonly offNadir: Radians },
): boolean {
  if (ray.offNadir < mask.inner || ray.offNadir > mask.outer) return false;
  const span = sectorSpan(mask);
  return span >= 2 * Math.PI || wholeTurn(ray.azimuth - mask.from) <= span;
}

/**
 * Masks sorted into sectors that do not overlap; in each, bands that touch are one.
 *
 * @param masks - Any masks, also overlapping.
 * @returns Sectors with at least one band, counter-clockwise.
 * @source SIGHT-GEOMETRY
 * @example Two masks of 30° to 50° and 50° to 70° in one sector: one band of 30° to 70°
 */
export function maskedSectors(masks: readonly LensMask[]): readonly MaskedSector[] {
  const spans = masks
    .map((mask) => ({ mask, from: wholeTurn(mask.from), span: sectorSpan(mask) }))
    .filter(({ mask, span }) => span > 0 && mask.outer > mask.inner);
  if (spans.length === 0) return [];
  const cuts = [...new Set(spans.flatMap(({ from, span }) => [from, wholeTurn(from + span)]))].toSorted(
    (a, b) => a - b,
  );
  const sectors: MaskedSector[] = [];
  for (const [i, from] of cuts.entries()) {
    const to = i + 1 < cuts.length ? (cuts[i + 1] as Radians) : (cuts[0] as Radians) + 2 * Math.PI;
    const middle = (from + to) / 2;
    const inside = spans.filter((one) => one.span >= 2 * Math.PI || wholeTurn(middle - one.from) < one.span);
    const bands = joined(inside.map(({ mask }) => ({ inner: Math.max(0, mask.inner), outer: mask.outer })));
    if (bands.length > 0) sectors.push({ from, to, bands });
  }
  return sectors;
}

/**
 * Distances that a band of off-nadir angles covers between two planes: masked for every height between them.
 *
 * A ray to distance r at height z leaves at atan(r / (h − z)); masked for all heights from low to high when r ≥ (h − low) tan(inner) and r ≤ (h − high) tan(outer).
 *
 * @param band - Band of off-nadir angles. [rad]
 * @param heights - Drops from the lens to the lowest and the highest plane, h − low and h − high. [m]
 * @returns From and to [m]; `to` is ∞ where the band reaches the horizon; undefined where no distance is covered.
 * @source SIGHT-GEOMETRY
 * @example 45° to 60° from 2.5 m up, seen at 1.0 m: 1.5 m to 2.598 m
 */
export function maskedDistances(
  band: { readonly inner: Radians; readonly outer: Radians },
  heights: { readonly lowDrop: Metres; readonly highDrop: Metres },
): { readonly from: Metres; readonly to: Metres } | undefined {
  const horizon = Math.PI / 2 - 1e-9;
  if (band.inner >= horizon) return undefined;
  const from = heights.lowDrop * Math.tan(band.inner);
  const to = band.outer >= horizon ? Infinity : heights.highDrop * Math.tan(band.outer);
  return to > from ? { from, to } : undefined;
}

function sectorSpan(mask: LensMask): Radians {
  const width = mask.to - mask.from;
  return Math.abs(width) >= 2 * Math.PI - 1e-9 ? 2 * Math.PI : wholeTurn(width);
}

function joined(bands: readonly { readonly inner: Radians; readonly outer: Radians }[]) {
  const result: { inner: Radians; outer: Radians }[] = [];
  for (const band of bands.toSorted((a, b) => a.inner - b.inner)) {
    const last = result.at(-1);
    if (last && band.inner <= last.outer + 1e-9) last.outer = Math.max(last.outer, band.outer);
    else result.push({ ...band });
  }
  return result;
}
