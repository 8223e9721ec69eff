import type { RoomCoverage } from "../coverage/index.ts";
import { areaOf, distanceBetween, type Point, type WaysFrom, waysFrom, wayTo } from "../geometry/index.ts";
import type { Metres, Seconds } from "../quantity/index.ts";
import type { Site } from "../site/index.ts";
import { PACE, type StationCandidate } from "./candidate.ts";
import { allowanceOf, chooseStations, namedBy } from "./choose-stations.ts";
import { emptyStations, enterStations, passByStations } from "./door-stations.ts";
import { edgeStations } from "./edge-stations.ts";
import { behindStations, cornerStations, stillStations } from "./place-stations.ts";
import type { WalkTest } from "./station.ts";
import { shortestTour, type Tour, type TourLengths } from "./tour.ts";
import { type WalkContext, walkContext } from "./walk-context.ts";

export interface WalkTestOptions {
  /** short: what an ordinary room needs, at most 8 stations and 4 minutes. full: every station. */
  readonly extent?: "short" | "full";
  /** Opening at which the tour starts; the room's first free door if absent. */
  readonly door?: string;
  /** The room's coverage by the same site, if it is at hand already. */
  readonly coverage?: RoomCoverage;
}

/**
 * The walk test of one room: what to test, where to walk, what must happen, in the order of the shortest tour from the door.
 *
 * @param site - Snapshot of the job. @param roomId - Id of a room of the site; throws on another.
 * @param options - Extent, and the door at which the tour starts.
 * @returns Stations in order, way [m], attended and waiting time [s], and what a short test leaves out.
 * @source COMMON-PRACTICE
 * @example A store with one door and one detector: its door, a walk towards, a far corner, the passer-by outside, the empty room
 */
export function walkTest(site: Site, roomId: string, options: WalkTestOptions = {}): WalkTest {
  const context = walkContext(site, roomId, options.coverage);
  const candidates = stationsOf(context);
  const start = startAt(context, options.door);
  const ways = wayBook(context);
  const secondsOf = (chosen: readonly StationCandidate[]): Seconds =>
    chosen.reduce((sum, { station }) => sum + station.seconds, 0) +
    tourOf(chosen, { start, ways }).length / PACE;
  const chosen =
    options.extent === "full"
      ? candidates
      : chooseStations(candidates, {
          allowance: allowanceOf({ area: areaOf(context.standing), devices: context.devices.length }),
          secondsOf,
        });
  const tour = tourOf(chosen, { start, ways });
  const named = namedBy(chosen);
  const unnamed = context.devices.filter(({ id }) => !named.has(id));
  return {
    room: roomId,
    stations: tour.order.map((index) => (chosen[index] as StationCandidate).station),
    others: candidates
      .filter((one) => !chosen.includes(one))
      .map(({ station }) => station)
      .toSorted((a, b) => a.headroom - b.headroom),
    way: tour.length,
    seconds: {
      attended: chosen.reduce((sum, { station }) => sum + station.seconds, 0) + tour.length / PACE,
      waiting: chosen.reduce((sum, { station }) => sum + station.waiting, 0),
    },
    left: {
      stations: candidates.length - chosen.length,
      devices: unnamed.map(({ id }) => id),
      tags: Object.fromEntries(
        unnamed.map(({ id }) => [id, site.detectors.find((one) => one.id === id)?.tag || id]),
      ),
    },
    openGaps: context.coverage.gaps.filter((gap) => !gap.tolerated).length,
  };
}

function stationsOf(context: WalkContext): readonly StationCandidate[] {
  if (!context.prepared.standing) return [];
  return [
    ...enterStations(context),
    ...edgeStations(context),
    ...cornerStations(context),
    ...stillStations(context),
    ...behindStations(context),
    ...passByStations(context),
    ...emptyStations(context),
  ];
}

function startAt({ prepared, devices }: WalkContext, door: string | undefined): Point {
  const entrances = prepared.standing?.entrances ?? [];
  const chosen =
    entrances.find((entrance) => entrance.opening.id === door) ??
    entrances.find((entrance) => entrance.free) ??
    entrances[0];
  return chosen?.at ?? prepared.room.outline[0] ?? devices[0]?.at ?? [0, 0];
}

/** Lengths of shortest ways, each start worked out once. */
interface WayBook {
  readonly length: (from: Point, to: Point) => Metres;
}

function wayBook({ ways }: WalkContext): WayBook {
  const starts = new Map<string, WaysFrom>();
  const lengths = new Map<string, Metres>();
  return {
    length: (from, to) => {
      const key = `${from} ${to}`;
      const known = lengths.get(key);
      if (known !== undefined) return known;
      const begun = starts.get(`${from}`) ?? waysFrom(ways, from);
      starts.set(`${from}`, begun);
      // Where no way leads inside the room one goes round by another door: the straight line is the least that takes.
      const length = wayTo(begun, to)?.length ?? distanceBetween(from, to);
      lengths.set(key, length);
      return length;
    },
  };
}

/** The shortest tour of a choice; the empty room comes last (TO-2). */
function tourOf(
  chosen: readonly StationCandidate[],
  { start, ways }: { readonly start: Point; readonly ways: WayBook },
): Tour {
  const visited = chosen.flatMap((one, index) => (one.station.kind === "empty" ? [] : [index]));
  const last = chosen.flatMap((one, index) => (one.station.kind === "empty" ? [index] : []));
  const at = (index: number): StationCandidate => chosen[index] as StationCandidate;
  const lengths: TourLengths = {
    fromStart: visited.map((index) => ways.length(start, at(index).from)),
    between: visited.map((a) => visited.map((b) => (a === b ? 0 : ways.length(at(a).to, at(b).from)))),
  };
  const tour = shortestTour(lengths);
  return { order: [...tour.order.map((k) => visited[k] as number), ...last], length: tour.length };
}
