import {
  contains,
  distanceBetween,
  nearestOnRings,
  type Point,
  type Region,
  ringsOf,
  side,
  type Way,
  type Ways,
  waysFrom,
  wayTo,
} from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import { type FloorPiece, flightEdge, type SiteLookUp } from "../site/index.ts";
import type { DarkWalk, RoomDemand } from "./results.ts";
import type { Entrance, StandingArea } from "./standing-area.ts";

/** Corners nearer to each other than this are one goal: ways to them differ by less than a step. [m] */
const SAME_GOAL: Metres = 0.25;

/** Of two corners that lie so nearly as far from an entrance, rounding alone would say which is the farther: both are goals. [m] */
const AS_FAR: Metres = 1e-3;

/** Shortest ways from one entrance. */
export interface RoomWays {
  readonly entrance: Entrance;
  readonly ways: readonly { readonly toward: DarkWalk["toward"]; readonly way: Way }[];
  /** Ways to the first step of each flight of stairs in the room. */
  readonly stairs: readonly { readonly flight: string; readonly way: Way }[];
}

interface Question {
  readonly standing: StandingArea;
  readonly demand: RoomDemand;
  readonly look: SiteLookUp;
  readonly ways: Ways;
}

/**
 * Shortest ways inside the standing area from the middle of each entrance to each dwell place, each other entrance, and the corners of the standing area.
 *
 * A corner is one where the standing area's inner angle is below π: every other corner lies on a way to one of these.
 * A dwell place that cannot be stood on is walked to as near as one gets.
 *
 * @param standing - Standing area with its entrances. @param demand - Demand of the same room. @param look - The site's records at hand.
 * @param ways - The standing area prepared for ways.
 * @returns For each entrance through which somebody gets in, its ways; goals that no way leads to are left out.
 * @source DIJKSTRA-1959
 * @example A rectangular room with one door and one desk: one way to the desk and four to the corners
 */
export function waysThrough({ standing, demand, look, ways }: Question): readonly RoomWays[] {
  const free = standing.entrances.filter((entrance) => entrance.free);
  const dwell = look.dwellPlacesOf(demand.room).flatMap((place) => {
    const at = nearestIn(ways.region, place.at);
    return at ? [{ kind: "dwell-place" as const, id: place.id, at }] : [];
  });
  const flights = look.floorPiecesOf(demand.room).filter((piece) => piece.kind === "flight");
  return free.map((entrance) => {
    const start = nearestIn(ways.region, entrance.at) ?? entrance.at;
    const from = waysFrom(ways, start);
    const doors = free.flatMap((other) => {
      const at = other === entrance ? undefined : nearestIn(ways.region, other.at);
      return at ? [{ kind: "opening" as const, id: other.opening.id, at }] : [];
    });
    const goals: readonly DarkWalk["toward"][] = [...dwell, ...doors, ...goalsAtCorners(ways, start)];
    return {
      entrance,
      ways: goals.flatMap((toward) => {
        const way = wayTo(from, toward.at);
        return way && way.length > 0 ? [{ toward, way }] : [];
      }),
      stairs: flights.flatMap((flight) => {
        const way = wayToFlight(flight, { from, region: ways.region });
        return way ? [{ flight: flight.id, way }] : [];
      }),
    };
  });
}

/**
 * The corners at which one can get no further, thinned: of those that lie near each other the one that is farthest from the start, so
 * that neither the frame nor the corner that a ring begins with has a say.
 */
function goalsAtCorners(ways: Ways, start: Point): readonly DarkWalk["toward"][] {
  const goals: { readonly goal: DarkWalk["toward"]; readonly away: Metres }[] = [];
  const corners = ways.corners
    .flatMap(({ at, before, after }, index) =>
      side(before, at, after) > 0 ? [{ at, index, away: distanceBetween(start, at) }] : [],
    )
    .sort((a, b) => b.away - a.away);
  for (const { at, index, away } of corners) {
    const stands = goals.some(
      (one) => distanceBetween(one.goal.at, at) < SAME_GOAL - AS_FAR && one.away > away + AS_FAR,
    );
    if (!stands) goals.push({ goal: { kind: "corner", id: `corner-${index + 1}`, at }, away });
  }
  return goals.map(({ goal }) => goal);
}

/** The shorter of the ways to the two edges at which one can step on a flight. */
function wayToFlight(
  flight: FloorPiece,
  question: { readonly from: ReturnType<typeof waysFrom>; readonly region: Region },
): Way | undefined {
  const { from, region } = question;
  const candidates = (["foot", "head"] as const).flatMap((end) => {
    const [a, b] = flightEdge(flight, end);
    // The edge is met where the way is shortest; five places along it are near enough for a stair's width.
    return [0.1, 0.3, 0.5, 0.7, 0.9].flatMap((t) => {
      const place = nearestIn(region, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
      const way = place && wayTo(from, place);
      return way ? [way] : [];
    });
  });
  return candidates.toSorted((a, b) => a.length - b.length)[0];
}

/**
 * The place of a region nearest to a point.
 *
 * @param region - Any region. @param at - The point. [m]
 * @returns The point itself where it lies in the region; else the nearest place on its edge; undefined in an empty region. [m]
 * @example A point 1 m outside a square comes out on its edge
 */
export function nearestIn(region: Region, at: Point): Point | undefined {
  return contains(region, at) ? at : nearestOnRings(at, ringsOf(region));
}
