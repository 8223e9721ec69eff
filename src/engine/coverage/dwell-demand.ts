import {
  areaOf,
  contains,
  difference,
  distanceToRings,
  intersection,
  type Point,
  type Region,
  regionOf,
  ringsOf,
  union,
} from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { DwellPlace, SiteLookUp } from "../site/index.ts";
import type { DwellDemand } from "./results.ts";
import { coversPlace } from "./standing-area.ts";

/** Corners of the ring that stands for a disc: its chords touch the circle from outside, and stick out at most 1 mm at 0.6 m. */
const DISC_CORNERS = 56;

/**
 * Where small movements of one who sits or stands at a dwell place must be seen.
 *
 * The disc round the place, as far as it lies on the room's floor, not under something taller than the sight height, and connected with its
 * middle: a seat does not reach through a partition.
 *
 * @param place - The dwell place. @param question.look - The site's records at hand.
 * @param question.floor - Floor of its room. @param question.bays - Bays of its room in which sound serves as well; empty elsewhere.
 * @returns Region [m], area [m²] and sight height [m]; area 0 where all of the disc is taken.
 * @source COMMON-PRACTICE
 * @example A desk of radius 0.6 m in the open: π · 0.6² = 1.131 m², sight height 0.9 m
 */
export function dwellDemand(
  place: DwellPlace,
  question: { readonly look: SiteLookUp; readonly floor: Region; readonly bays: Region },
): DwellDemand {
  const { look, floor, bays } = question;
  const sightHeight = look.site.defaults.sightHeights[place.kind];
  const covered = union(
    look
      .obstaclesOf(place.room)
      .filter((obstacle) => coversPlace(obstacle, sightHeight))
      .map((obstacle) => regionOf(obstacle.footprint)),
  );
  const free = difference(intersection(discRound(place.at, place.radius), floor), covered);
  const region = partAt(free, place.at);
  return { id: place.id, region, area: areaOf(region), sightHeight, inBay: contains(bays, place.at) };
}

/** A disc as a ring that contains it. @param at - Middle. [m] @param radius - Radius, > 0. [m] @example Radius 0.6 m: area between π · 0.36 and 0.2 % more */
export function discRound(at: Point, radius: Metres): Region {
  if (!(radius > 0) || !at.every(Number.isFinite)) return [];
  const outer = radius / Math.cos(Math.PI / DISC_CORNERS);
  const outline = Array.from({ length: DISC_CORNERS }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / DISC_CORNERS;
    return [at[0] + outer * Math.cos(angle), at[1] + outer * Math.sin(angle)];
  });
  return [{ outline, holes: [] }];
}

/** The piece in which a place lies, or the one nearest to it. */
function partAt(region: Region, at: Point): Region {
  const inside = region.find((piece) => contains([piece], at));
  if (inside) return [inside];
  const byDistance = region.map((piece) => ({ piece, distance: distanceToRings(at, ringsOf([piece])) }));
  return byDistance
    .toSorted((a, b) => a.distance - b.distance)
    .slice(0, 1)
    .map(({ piece }) => piece);
}
