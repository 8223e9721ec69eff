import {
  type Lens,
  type LensMask,
  type Metres,
  maskedSectors,
  placeOnDome,
  type Radians,
  widthOnDome,
} from "#engine";
import type { Millimetres, PaperPoint, PaperRing } from "../drawing/mark.ts";

/** The surface of a lens unwrapped onto paper, as one sees it from below; the notch points up. */
export interface LensFlower {
  /** Outline of each petal, or of the whole disc of a flat lens. [mm] from the pole */
  readonly petals: readonly PaperRing[];
  /** What is masked, cut along the petals. */
  readonly masked: readonly PaperRing[];
  /** From the pole to the rim. */
  readonly radius: Millimetres;
  /** Slits end here, so that the petals stay together; undefined without petals. */
  readonly hub: Millimetres | undefined;
}

/** A dome is cut into so many petals: a slice of 30° bulges by less than 2 % of its width. */
const PETALS = 12;
/** The hub: within 12° of the pole a dome is so flat that it needs no slits. [rad] */
const HUB: Radians = (12 * Math.PI) / 180;
/** Longest step along an edge that is drawn as a chord. [rad] */
const STEP: Radians = Math.PI / 90;
/** A flat lens is drawn out to here: beyond, its rays leave it at its edge. [rad] */
const FLAT_LIMIT: Radians = (75 * Math.PI) / 180;

/**
 * Unwraps a lens with its masks, at its true size.
 *
 * Dome: each petal keeps the arc from the pole ρ = R β and the true width R sin β · Δφ; a flat polar drawing would be too wide by β/sin β.
 * Flat: ρ = d tan θ, with d from the element to the lens.
 *
 * @param lens - Its radius R, or d where it is flat. [m] @param masks - From the notch, counter-clockwise seen from above. [rad]
 * @returns Rings in millimetres from the pole, y down; seen from below, so that the notch's counter-clockwise runs clockwise. Undefined where
 * the radius is not known.
 * @source MASK-GEOMETRY
 * @example R 18 mm, a mask of 33.4° at 36.53° off straight down: 11.476 mm from the pole, its petals together 6.246 mm wide
 */
export function lensFlower(lens: Lens | undefined, masks: readonly LensMask[]): LensFlower | undefined {
  if (lens?.radius === undefined || !(lens.radius > 0)) return undefined;
  const surface = lens.shape === "dome" ? domeOf(lens, lens.radius) : flatOf(lens.radius);
  const slices = Array.from({ length: surface.petals }, (_, i): Slice => {
    const half = Math.PI / surface.petals;
    const middle = (2 * Math.PI * i) / surface.petals;
    return { middle, from: middle - half, to: middle + half };
  });
  const sectors = maskedSectors(masks);
  return {
    petals: slices.map((slice) =>
      ringOf(surface, { slice, from: slice.from, to: slice.to, inner: 0, outer: surface.limit }),
    ),
    masked: slices.flatMap((slice) =>
      sectors.flatMap(({ from, to, bands }) =>
        sharedSpans(slice, { from, to }).flatMap((span) =>
          bands.flatMap(({ inner, outer }) => {
            const least = Math.min(outer, surface.limit);
            return least > inner ? [ringOf(surface, { slice, ...span, inner, outer: least })] : [];
          }),
        ),
      ),
    ),
    radius: surface.arc(surface.limit),
    hub: surface.flat ? undefined : surface.arc(HUB),
  };
}

interface Slice {
  readonly middle: Radians;
  readonly from: Radians;
  readonly to: Radians;
}

/** A lens as what the unwrapping asks of it. */
interface Surface {
  readonly petals: number;
  readonly limit: Radians;
  /** From the pole along the surface. [mm] */
  readonly arc: (offNadir: Radians) => Millimetres;
  /** True width of a slice of azimuth. [mm] */
  readonly width: (offNadir: Radians, azimuth: Radians) => Millimetres;
  /** Slices lie flat beside each other without a gap. */
  readonly flat: boolean;
}

const MILLI = 1000;

function domeOf(lens: Lens, radius: Metres): Surface {
  const dome = { radius, elementOffset: lens.elementOffset ?? 0 };
  return {
    petals: PETALS,
    limit: Math.PI / 2,
    arc: (offNadir) => MILLI * placeOnDome(offNadir, dome).arc,
    width: (offNadir, azimuth) =>
      MILLI * widthOnDome({ angle: placeOnDome(offNadir, dome).angle, azimuth }, radius),
    flat: false,
  };
}

const flatOf = (distance: Metres): Surface => ({
  petals: 1,
  limit: FLAT_LIMIT,
  arc: (offNadir) => MILLI * distance * Math.tan(offNadir),
  width: (offNadir, azimuth) => MILLI * distance * Math.tan(offNadir) * azimuth,
  flat: true,
});

/** A piece of a band within a slice: out along one side, round the rim, back along the other, round the inner edge. */
function ringOf(
  surface: Surface,
  piece: {
    readonly slice: Slice;
    readonly from: Radians;
    readonly to: Radians;
    readonly inner: Radians;
    readonly outer: Radians;
  },
): PaperRing {
  const { slice, from, to, inner, outer } = piece;
  const at = (azimuth: Radians, offNadir: Radians): PaperPoint =>
    surface.flat
      ? turned([0, -surface.arc(offNadir)], azimuth)
      : turned([surface.width(offNadir, azimuth - slice.middle), -surface.arc(offNadir)], slice.middle);
  const along = (start: Radians, end: Radians): readonly Radians[] => {
    const steps = Math.max(1, Math.ceil(Math.abs(end - start) / STEP));
    return Array.from({ length: steps + 1 }, (_, i) => start + ((end - start) * i) / steps);
  };
  const round = along(from, to).map((azimuth) => at(azimuth, outer));
  // A whole disc has no sides.
  if (inner === 0 && to - from >= 2 * Math.PI - 1e-9) return round;
  return [
    ...along(inner, outer).map((offNadir) => at(from, offNadir)),
    ...round,
    ...along(outer, inner).map((offNadir) => at(to, offNadir)),
    ...(inner > 0 ? along(to, from).map((azimuth) => at(azimuth, inner)) : []),
  ];
}

/** Turned clockwise on paper, where y points down: counter-clockwise from above is clockwise from below. */
const turned = ([x, y]: PaperPoint, angle: Radians): PaperPoint => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
];

/** Parts of a sector that lie within a slice, whichever turn they are counted in. */
function sharedSpans(
  slice: Pick<Slice, "from" | "to">,
  sector: { readonly from: Radians; readonly to: Radians },
): readonly { readonly from: Radians; readonly to: Radians }[] {
  return [-2, -1, 0, 1, 2].flatMap((turns) => {
    const from = Math.max(slice.from, sector.from + turns * 2 * Math.PI);
    const to = Math.min(slice.to, sector.to + turns * 2 * Math.PI);
    return to - from > 1e-9 ? [{ from, to }] : [];
  });
}
