import {
  areaOf,
  COVER_SKIN,
  contains,
  difference,
  distanceToRings,
  intersection,
  poleOf,
  type Region,
  ringsOf,
} from "../geometry/index.ts";
import type { Metres, SquareMetres } from "../quantity/index.ts";
import { type FloorPiece, flightEdge, type PlanningDefaults } from "../site/index.ts";
import type { Gap, GapCause } from "./results.ts";
import type { Entrance } from "./standing-area.ts";

/** No gap is tolerated this near a step. [m] @source COMMON-PRACTICE */
const NEAR_STEP: Metres = 1.0;

/**
 * The pieces of a demand that no zone covers, each wide enough to matter.
 *
 * A piece counts when a disc of 5 mm fits into it; thinner ones are rounding of arcs and count as covered.
 *
 * @param demand - What must be seen. [m] @param zones - Regions that are seen.
 * @returns Pieces with area [m²] and the point farthest from their edge. Demand = covered + pieces, to rounding.
 * @source DERIVED-HERE
 * @example A square metre half of which is seen: one piece of 0.5 m²
 */
export function uncoveredPieces(
  demand: Region,
  zones: readonly Region[],
): readonly { readonly region: Region; readonly area: SquareMetres; readonly at: Gap["at"] }[] {
  let left = demand;
  for (const zone of zones) left = difference(left, zone);
  return left.flatMap((piece) => {
    // A centimetre is near enough for the place; only a thin piece needs a closer look at its width.
    const rough = poleOf(piece, 1e-2);
    const { at, distance } = rough.distance < COVER_SKIN / 2 ? poleOf(piece, 2e-4) : rough;
    return distance < COVER_SKIN / 2 ? [] : [{ region: [piece], area: areaOf([piece]), at }];
  });
}

/** What decides whether a gap is tolerated. */
export interface Tolerance {
  readonly defaults: PlanningDefaults;
  /** Area of the demand in all, of which gaps may be a share. */
  readonly demanded: SquareMetres;
  readonly entrances: readonly Entrance[];
  /** Discs of the room's dwell places. */
  readonly dwell: readonly Region[];
  readonly flights: readonly FloorPiece[];
}

/** A gap before it is known whether it is tolerated. */
export type FoundGap = Omit<Gap, "tolerated">;

/**
 * Marks the gaps that a check tolerates.
 *
 * Tolerated: pieces of walk below `gapArea` each, and together no more than `gapShare` of the demand; none at a door, at a dwell place, or
 * within 1 m of a step. Gaps of hold are never tolerated. If the small ones together exceed the share, none of them is.
 *
 * @param gaps - Gaps of one room. @param tolerance - The job's numbers and the places where none is tolerated.
 * @returns The same gaps, marked.
 * @source COMMON-PRACTICE
 * @example One gap of 0.05 m² in the middle of 20 m²: tolerated; of 0.3 m²: not
 */
export function markTolerated(gaps: readonly FoundGap[], tolerance: Tolerance): readonly Gap[] {
  const small = gaps.filter(
    (gap) => gap.demand === "walk" && gap.area < tolerance.defaults.gapArea && !isCritical(gap, tolerance),
  );
  const together = small.reduce((sum, gap) => sum + gap.area, 0);
  const allowed = together <= tolerance.defaults.gapShare * tolerance.demanded;
  return gaps.map((gap) => ({ ...gap, tolerated: allowed && small.includes(gap) }));
}

/** The most telling of several devices' reasons: something that can be mended comes before sheer distance. @example [beyond reach, hidden] gives hidden */
export function worstCause(reasons: readonly GapCause[]): GapCause {
  const order: readonly GapCause["kind"][] = [
    "too-warm",
    "mounting-limits",
    "masked",
    "hidden",
    "beyond-reach",
  ];
  for (const kind of order) {
    const found = reasons.find((reason) => reason.kind === kind);
    if (found) return found;
  }
  return { kind: "no-device" };
}

function isCritical(gap: FoundGap, { entrances, dwell, flights }: Tolerance): boolean {
  if (entrances.some((entrance) => areaOf(intersection(gap.region, entrance.strip)) > 0)) return true;
  if (dwell.some((disc) => areaOf(intersection(gap.region, disc)) > 0)) return true;
  return flights.some((flight) =>
    (["foot", "head"] as const).some((end) => {
      const edge = flightEdge(flight, end);
      return (
        ringsOf(gap.region).some((ring) =>
          ring.some((corner) => distanceToRings(corner, [edge]) < NEAR_STEP),
        ) || edge.some((corner) => contains(gap.region, corner))
      );
    }),
  );
}
