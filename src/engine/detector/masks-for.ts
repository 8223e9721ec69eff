import {
  contains,
  distanceToSegment,
  nearestOnSegment,
  outset,
  type Point,
  type Region,
  ringsOf,
} from "../geometry/index.ts";
import { degreesOf, type Metres, type Radians, radiansOf, wholeTurn } from "../quantity/index.ts";
import { blindBand, blindCone } from "./mask-geometry.ts";
import type { LensMask } from "./model.ts";

/** Where a lens is: in plan, above the floor that is looked at, and how its notch is turned. */
export interface LensPlace {
  readonly at: Point;
  readonly height: Metres;
  /** Above its lowest part, where that floor is not even; `height` is then above its highest. */
  readonly overLowest?: Metres;
  readonly turn: Radians;
}

/** What is kept in hand when a mask is cut. */
export interface MaskMargins {
  /** Half a body beyond the edge of what is to be blinded. */
  readonly body: Metres;
  /** A mask sits no truer than this on its lens. */
  readonly mounting: Radians;
  /** Head of a passer-by. */
  readonly person: Metres;
  /** Radius of a source that nobody measured. */
  readonly source: Metres;
}

/** The usual margins. @source COMMON-PRACTICE */
export const maskMargins: MaskMargins = { body: 0.2, mounting: radiansOf(2), person: 1.8, source: 0.15 };

/** A mask is cut in slices of a whole degree; neighbours are joined while their bands differ by no more than this. */
const SLICE: Radians = radiansOf(1);
const JOIN: Radians = radiansOf(6);

/**
 * Masks that blind a lens for people on a piece of floor, from the feet at its near edge to the heads at its far edge.
 *
 * For each azimuth: θ_lo = atan(r₁/h), θ_hi = atan(r₂/(h − H_p)), 90° if H_p ≥ h, h above the lowest and the highest part of the floor; the floor grown by half a body, the angles by the
 * mounting tolerance; rounded outward to whole degrees.
 *
 * @param lens - Where it is. [m, rad] @param region - Floor to be blinded. [m]
 * @returns As few masks as keep within 6° of the band; undefined where the lens hangs above the region or below all of its floor, or nothing is to be blinded.
 * @source MASK-GEOMETRY
 * @example h 2.7 m, x 2 … 4, y ± 0.6, nothing kept in hand, as one mask: ± 16.70°, 36.53° to 77.46°
 */
export function masksForFloor(
  lens: LensPlace,
  region: Region,
  margins: Omit<MaskMargins, "source"> = maskMargins,
): readonly LensMask[] | undefined {
  const grown = margins.body > 0 ? outset(region, margins.body) : region;
  const { overLowest: lowest = lens.height } = lens;
  if (grown.length === 0 || lowest <= 0 || contains(grown, lens.at)) return undefined;
  const rings = ringsOf(grown).map((ring) => ring.map(([x, y]): Point => [x - lens.at[0], y - lens.at[1]]));
  const slices = Math.round((2 * Math.PI) / SLICE);
  const bands = Array.from({ length: slices }, (_, i) => {
    const stretch = stretchOf(rings, { from: i * SLICE, to: (i + 1) * SLICE });
    if (!stretch) return undefined;
    const band = (height: Metres): Band => blindBand(stretch, { lens: height, person: margins.person });
    return { inner: band(lowest).inner, outer: band(lens.height).outer };
  });
  return joinedSlices(widened(bands, margins.mounting), lens.turn);
}

/**
 * Mask that blinds a lens for a source of false triggering.
 *
 * θ = atan2(r_s, h − z_s) ± asin(a/D) for the nearest and the farthest place of it, and the mounting tolerance on all sides.
 *
 * @param lens - Where it is. [m, rad] @param source.at - Point, or one end of a line to `source.to`. [m] @param source.height - z_s. [m]
 * @returns The mask; undefined for a source at or above the lens, which it cannot see, or straight below it.
 * @source MASK-GEOMETRY
 * @example h 2.7, r 3.0, z 2.2, a 0.15 m, nothing kept in hand: 77.71° to 83.37°, ± 2.87°
 */
export function maskForSource(
  lens: LensPlace,
  source: { readonly at: Point; readonly to?: Point | undefined; readonly height: Metres },
  margins: Pick<MaskMargins, "mounting" | "source"> = maskMargins,
): LensMask | undefined {
  if (source.height >= lens.height) return undefined;
  const ends = [source.at, source.to ?? source.at].map(
    ([x, y]): Point => [x - lens.at[0], y - lens.at[1]],
  ) as unknown as readonly [Point, Point];
  const near = distanceToSegment(ORIGIN, ends);
  if (near <= margins.source) return undefined;
  const cones = [near, ...ends.map(([x, y]) => Math.hypot(x, y))].map((distance) =>
    blindCone({ distance, height: source.height, radius: margins.source }, lens.height),
  );
  const aside = Math.max(...cones.map(({ halfAzimuth }) => halfAzimuth)) + margins.mounting;
  const [first, second] = ends.map(([x, y]) => Math.atan2(y, x)) as [Radians, Radians];
  // The short way round from one end of a line to the other.
  const across = Math.atan2(Math.sin(second - first), Math.cos(second - first));
  const start = across < 0 ? first + across : first;
  return {
    from: wholeTurn(start - aside - lens.turn),
    to: wholeTurn(start + Math.abs(across) + aside - lens.turn),
    inner: Math.max(0, Math.min(...cones.map((cone) => cone.offNadir - cone.half)) - margins.mounting),
    outer: Math.min(
      Math.PI / 2,
      Math.max(...cones.map((cone) => cone.offNadir + cone.half)) + margins.mounting,
    ),
  };
}

/** Nearest and farthest distance of rings in a slice of azimuth; undefined where they do not reach into it. */
function stretchOf(
  rings: readonly (readonly Point[])[],
  slice: { readonly from: Radians; readonly to: Radians },
): { readonly near: Metres; readonly far: Metres } | undefined {
  const middle = (slice.from + slice.to) / 2;
  const half = (slice.to - slice.from) / 2 + 1e-12;
  const inSlice = ([x, y]: Point): boolean =>
    Math.abs(Math.atan2(Math.sin(Math.atan2(y, x) - middle), Math.cos(Math.atan2(y, x) - middle))) <= half;
  const distances: Metres[] = [];
  for (const ring of rings) {
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] as Point;
      const foot = nearestOnSegment(ORIGIN, [a, b]);
      for (const point of [a, foot]) if (inSlice(point)) distances.push(Math.hypot(point[0], point[1]));
      for (const angle of [slice.from, slice.to]) {
        const cut = cutByRay(a, b, angle);
        if (cut !== undefined) distances.push(cut);
      }
    }
  }
  return distances.length === 0 ? undefined : { near: Math.min(...distances), far: Math.max(...distances) };
}

/** The lens, about which rings are laid. */
const ORIGIN: Point = [0, 0];

/** Distance along a ray from the origin at which it cuts an edge. */
function cutByRay(a: Point, b: Point, angle: Radians): Metres | undefined {
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const det = ux * ey - uy * ex;
  if (Math.abs(det) < 1e-15) return undefined;
  const r = (a[0] * ey - a[1] * ex) / det;
  const t = (a[0] * uy - a[1] * ux) / det;
  return r > 0 && t >= 0 && t <= 1 ? r : undefined;
}

interface Band {
  readonly inner: Radians;
  readonly outer: Radians;
}

/** Every slice takes the bands of its neighbours within the tolerance, and grows by it towards pole and horizon. */
function widened(bands: readonly (Band | undefined)[], tolerance: Radians): readonly (Band | undefined)[] {
  const reach = Math.ceil(tolerance / SLICE - 1e-9);
  return bands.map((_, i) => {
    const near = Array.from(
      { length: 2 * reach + 1 },
      (_, k) => bands[(i + k - reach + bands.length) % bands.length],
    ).filter((band) => band !== undefined);
    if (near.length === 0) return undefined;
    return {
      inner: Math.max(0, Math.min(...near.map(({ inner }) => inner)) - tolerance),
      outer: Math.min(Math.PI / 2, Math.max(...near.map(({ outer }) => outer)) + tolerance),
    };
  });
}

/** Slices with nearly the same band as one mask, counter-clockwise; none goes over the place where a run begins. */
function joinedSlices(bands: readonly (Band | undefined)[], turn: Radians): readonly LensMask[] | undefined {
  const count = bands.length;
  const gap = bands.indexOf(undefined);
  const begin = Math.max(gap, 0);
  const masks: { first: number; last: number; least: Band; inner: Radians; outer: Radians }[] = [];
  for (let k = 0; k < count; k++) {
    const i = begin + k;
    const band = bands[i % count];
    if (!band) continue;
    const open = masks.at(-1);
    if (open && open.last === i - 1) {
      const inner = Math.min(open.inner, band.inner);
      const outer = Math.max(open.outer, band.outer);
      const leastInner = Math.max(open.least.inner, band.inner);
      const leastOuter = Math.min(open.least.outer, band.outer);
      if (leastInner - inner <= JOIN && outer - leastOuter <= JOIN) {
        Object.assign(open, { last: i, inner, outer, least: { inner: leastInner, outer: leastOuter } });
        continue;
      }
    }
    masks.push({ first: i, last: i, least: band, inner: band.inner, outer: band.outer });
  }
  if (masks.length === 0) return undefined;
  return masks.map(({ first, last, inner, outer }) => ({
    from: wholeTurn(outwardDegrees(first * SLICE - turn, "down")),
    to: wholeTurn(outwardDegrees((last + 1) * SLICE - turn, "up")),
    inner: outwardDegrees(inner, "down"),
    outer: Math.min(Math.PI / 2, outwardDegrees(outer, "up")),
  }));
}

/** Whole degrees, away from the middle of the mask: nobody cuts a mask finer. */
function outwardDegrees(angle: Radians, way: "up" | "down"): Radians {
  const degrees = degreesOf(angle);
  return radiansOf(way === "up" ? Math.ceil(degrees - 1e-6) : Math.floor(degrees + 1e-6));
}
