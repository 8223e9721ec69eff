import { type MaskedSector, maskedDistances, type ReachShape } from "../detector/index.ts";
import { ARC_SAGITTA, type Outline, outset, type Point } from "../geometry/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";

/** On which side of a true arc its chords lie: coverage inside, spill and bounds outside. */
export type ArcSide = "inside" | "outside";

/**
 * The reach as a ring round the detector, measured from it.
 *
 * Chords of an arc of radius R with n corners lie at most R(1 − cos(π/n)) inside it; corners at R/cos(π/n) put them outside.
 *
 * @param shape - Reach with its margin. @param options.turn - Of the notch. [rad] @param options.arcs - Side of the chords.
 * @param options.grown - Grown on all sides by this. [m]
 * @returns Counter-clockwise ring; empty without reach. [m]
 * @source DERIVED-HERE
 * @example Round 4 m: 100 corners, 2 mm deep chords
 */
export function reachPolygon(
  shape: ReachShape,
  options: { readonly turn: Radians; readonly arcs: ArcSide; readonly grown?: Metres },
): Outline {
  const grown = options.grown ?? 0;
  if (shape.kind === "none") return [];
  if (shape.kind === "round")
    return arc({
      radius: shape.radius + grown,
      from: options.turn,
      to: options.turn + 2 * Math.PI,
      arcs: options.arcs,
    }).slice(0, -1);
  const ring = outlineRing(shape.corners, options.turn);
  if (grown === 0) return ring;
  // The offset's chords lie inside its arcs by up to 0.2 mm.
  return outset([{ outline: ring, holes: [] }], grown + 3e-4)[0]?.outline ?? [];
}

/**
 * Points on an arc round the origin, both ends included, with chords on the wanted side.
 *
 * @param of.radius - [m] @param of.from - [rad] @param of.to - Counter-clockwise from `from`. [rad] @param of.arcs - Side of the chords.
 * @returns Chain of points. The ends lie on the rays of `from` and `to`. [m]
 * @source DERIVED-HERE
 * @example A quarter of 1 m inside: from (1, 0) to (0, 1)
 */
export function arc(of: {
  readonly radius: Metres;
  readonly from: Radians;
  readonly to: Radians;
  readonly arcs: ArcSide;
}): Outline {
  const { radius, from, to } = of;
  const half = radius > ARC_SAGITTA ? Math.acos(1 - ARC_SAGITTA / radius) : Math.PI / 3;
  const n = Math.max(1, Math.ceil((to - from) / Math.min(2 * half, Math.PI / 3)));
  const r = of.arcs === "inside" ? radius : radius / Math.cos((to - from) / (2 * n));
  const points: Point[] = [];
  for (let i = 0; i <= n; i++) {
    const angle = i === n ? to : from + ((to - from) * i) / n;
    points.push([r * Math.cos(angle), r * Math.sin(angle)]);
  }
  return points;
}

/** A masked part of the plane: opens at the inner chain, closes at the outer; no outer chain: masked to the horizon. */
export interface MaskChains {
  readonly inner: Outline;
  readonly outer: Outline | undefined;
}

/**
 * Masked distances as chains round the detector, measured from it.
 *
 * @param sectors - From `maskedSectors`. @param options.turn - Of the notch. [rad]
 * @param options.lowDrop - Height of the lens above the lowest plane. [m] @param options.highDrop - Above the highest. [m]
 * @param options.masked - Whether the masked part is drawn too large (coverage) or too small (spill and bounds).
 * @returns Chains for each band of each sector that masks anything.
 * @source SIGHT-GEOMETRY
 * @example A ring mask 45° to 60° from 1.5 m up: chains at 1.5 m and 2.598 m
 */
export function maskChains(
  sectors: readonly MaskedSector[],
  options: {
    readonly turn: Radians;
    readonly lowDrop: Metres;
    readonly highDrop: Metres;
    readonly masked: "large" | "small";
  },
): readonly MaskChains[] {
  const { turn, lowDrop, highDrop, masked } = options;
  const [innerArcs, outerArcs] =
    masked === "large" ? (["inside", "outside"] as const) : (["outside", "inside"] as const);
  return sectors.flatMap(({ from, to, bands }) =>
    bands.flatMap((band) => {
      const distances = maskedDistances(band, { lowDrop, highDrop });
      if (!distances) return [];
      const span = { from: from + turn, to: to + turn };
      const inner = arc({ radius: Math.max(distances.from, NEARLY_NOTHING), ...span, arcs: innerArcs });
      const outer =
        distances.to === Infinity ? undefined : arc({ radius: distances.to, ...span, arcs: outerArcs });
      return [{ inner, outer }];
    }),
  );
}

/** Stands for a distance of zero, which has no direction. 10 nm is below what a zone keeps. [m] */
const NEARLY_NOTHING: Metres = 1e-8;

/** Corners of an outline; a gap of half a turn or more between corners has no reach in it. */
function outlineRing(corners: readonly (readonly [Radians, Metres])[], turn: Radians): Outline {
  const ring: Point[] = [];
  const put = (angle: Radians, radius: Metres): void => {
    const r = Math.max(radius, NEARLY_NOTHING);
    ring.push([r * Math.cos(angle + turn), r * Math.sin(angle + turn)]);
  };
  for (const [i, [angle, radius]] of corners.entries()) {
    put(angle, radius);
    const next =
      i + 1 < corners.length
        ? (corners[i + 1] as readonly [Radians, Metres])[0]
        : (corners[0] as readonly [Radians, Metres])[0] + 2 * Math.PI;
    if (next - angle < Math.PI - 1e-9) continue;
    const steps = 4;
    for (let k = 0; k <= steps; k++) put(angle + 1e-7 + ((next - angle - 2e-7) * k) / steps, 0);
  }
  return ring;
}

/** Longest distance of a ring from its origin. [m] @example A square of half side 1: 1.414 */
export const farthestOf = (ring: Outline): Metres =>
  ring.reduce((most, [x, y]) => Math.max(most, Math.hypot(x, y)), 0);
