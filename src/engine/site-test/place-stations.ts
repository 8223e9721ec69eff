import { type CountedDevice, nearestIn } from "../coverage/index.ts";
import {
  contains,
  distanceBetween,
  intersection,
  outset,
  type Point,
  type Region,
  regionOf,
  ringsOf,
} from "../geometry/index.ts";
import type { Metres, Seconds } from "../quantity/index.ts";
import type { Obstacle } from "../site/index.ts";
import { candidateOf, PACE, SETTLE, type StationCandidate } from "./candidate.ts";
import { stripAlong } from "./strip.ts";
import type { WalkContext } from "./walk-context.ts";

/** Sitting still, then moving the hands. [s] @source COMMON-PRACTICE */
export const STILL: Seconds = 30;

/** The last of the way into a corner or behind an obstacle that is walked. [m] */
const LAST_OF_WAY: Metres = 1.5;

/** Two corners nearer than this are one. [m] */
const SAME_CORNER: Metres = 0.5;

/**
 * The far corners of the standing area that the plan says are seen.
 *
 * @param context - The room.
 * @returns One candidate for each corner, walked into; those that nobody sees are gaps of the plan.
 * @source COMMON-PRACTICE
 * @example A rectangular room with one door: four corners
 */
export function cornerStations(context: WalkContext): readonly StationCandidate[] {
  if (!context.prepared.demand.asked.walk) return [];
  const found: StationCandidate[] = [];
  const ways = context.prepared.ways().flatMap((entrance) => entrance.ways);
  for (const { toward, way } of ways) {
    if (toward.kind !== "corner") continue;
    const isKnown = found.some(({ station }) =>
      station.path.some((at) => distanceBetween(at, toward.at) < SAME_CORNER),
    );
    const watchers = context.watchers({ at: toward.at, kind: "towards" });
    if (isKnown || !watchers[0]) continue;
    const path = endOf(way.path, LAST_OF_WAY);
    const place = toward.at.map((metres) => metres.toFixed(1)).join(",");
    found.push(
      candidateOf(context, {
        id: `corner:${context.prepared.room.id}:${place}`,
        kind: "corner",
        subject: { kind: "corner", id: place },
        path,
        passes: 1,
        expected: { kind: "seen" },
        planned: undefined,
        devices: watchers.map((watch) => watch.device),
        why: "farthest-corner",
        headroom: watchers[0].headroom,
        seconds: lengthOf(path) / PACE + SETTLE,
      }),
    );
  }
  return found;
}

/**
 * Dwell places that the plan says are seen, sitting.
 *
 * @param context - The room.
 * @returns One candidate for each place.
 * @source COMMON-PRACTICE
 * @example A desk 1.5 m from a detector of 2 m planned reach: 0.5 m of headroom, 64 s
 */
export function stillStations(context: WalkContext): readonly StationCandidate[] {
  const { prepared, standing } = context;
  if (!prepared.demand.asked.hold) return [];
  return prepared.demand.dwell.flatMap((place) => {
    const at = prepared.look.dwellPlacesOf(prepared.room.id).find((one) => one.id === place.id)?.at;
    if (!at) return [];
    const seen = context.watchers({ at, kind: "seated", sightHeight: place.sightHeight });
    const heard = place.inBay ? context.watchers({ at, kind: "sound" }) : [];
    const watchers = seen.length > 0 ? seen : heard;
    if (!watchers[0]) return [];
    return [
      candidateOf(context, {
        id: `still:${place.id}`,
        kind: "still",
        subject: { kind: "dwell-place", id: place.id },
        path: [at],
        passes: 1,
        expected: { kind: "seen" },
        planned: undefined,
        devices: watchers.map((watch) => watch.device),
        why: "dwell-place",
        headroom: watchers[0].headroom,
        seconds: 2 * STILL + SETTLE,
        heard: seen.length === 0,
        met: nearestIn(standing, at) ?? at,
      }),
    ];
  });
}

/** Distances from an obstacle at which places behind it are looked at. [m] */
const BEHIND: readonly Metres[] = [0.3, 0.8, 1.4];

/**
 * Places behind whatever stands in the way at the height of one who walks, and that the plan says are seen all the same: over the top, by another device, or through it.
 *
 * @param context - The room.
 * @returns The place with the least headroom behind each obstacle.
 * @source SIGHT-GEOMETRY
 * @example Behind a partition of 1.4 m, beyond its shadow, or where a second detector looks
 */
export function behindStations(context: WalkContext): readonly StationCandidate[] {
  if (!context.prepared.demand.asked.walk) return [];
  const { walking } = context.site.defaults.sightHeights;
  return context.prepared.obstacles
    .filter(({ base, top }) => base < walking && top > walking)
    .flatMap((obstacle) => behind(context, obstacle) ?? []);
}

function behind(context: WalkContext, obstacle: Obstacle): StationCandidate | undefined {
  const footprint = regionOf(obstacle.footprint);
  let best:
    | { readonly at: Point; readonly headroom: Metres; readonly devices: readonly string[] }
    | undefined;
  for (const at of placesRound(footprint, context.standing)) {
    const watchers = context.watchers({ at, kind: "towards" });
    const isHiddenFrom = (device: CountedDevice): boolean =>
      cuts(footprint, [device.at, at]) &&
      distanceBetween(device.at, at) <= context.reach(device, { at, kind: "towards" });
    if (!watchers[0] || !context.devices.some(isHiddenFrom)) continue;
    const headroom = watchers[0].headroom;
    if (best && headroom >= best.headroom) continue;
    best = { at, headroom, devices: watchers.map((watch) => watch.device) };
  }
  if (!best) return undefined;
  const { at } = best;
  const over = context.devices.some(
    (device) => best?.devices.includes(device.id) && cuts(footprint, [device.at, at]),
  );
  const path = shortWalkAt(at, { standing: context.standing, footprint });
  return candidateOf(context, {
    id: `behind:${obstacle.id}`,
    kind: "behind",
    subject: { kind: "obstacle", id: obstacle.id },
    path,
    passes: 2,
    expected: { kind: "seen" },
    planned: undefined,
    devices: best.devices,
    why: obstacle.seeThrough ? "obstacle-see-through" : over ? "seen-over-obstacle" : "hidden-from-another",
    headroom: best.headroom,
    seconds: (2 * lengthOf(path)) / PACE + 2 * SETTLE,
  });
}

/** Places round an obstacle on which one can stand. */
function placesRound(footprint: Region, standing: Region): readonly Point[] {
  return BEHIND.flatMap((distance) =>
    ringsOf(outset(footprint, distance)).flatMap((ring) =>
      ring.flatMap((a, i) => {
        const b = ring[(i + 1) % ring.length] as Point;
        const parts = Math.max(1, Math.ceil(distanceBetween(a, b) / 0.5));
        return Array.from({ length: parts }, (_, k): Point => {
          const share = k / parts;
          return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
        });
      }),
    ),
  ).filter((at) => contains(standing, at));
}

/** Whether a straight line meets a region: a strip of 2 mm about it does. */
const cuts = (region: Region, line: readonly [Point, Point]): boolean =>
  contains(region, line[0]) || intersection(region, stripAlong(line, 1e-3)).length > 0;

/** A short walk beside an obstacle: up to 1 m to the side where there is floor. */
function shortWalkAt(
  at: Point,
  { standing, footprint }: { readonly standing: Region; readonly footprint: Region },
): readonly Point[] {
  let best: readonly Point[] = [at];
  for (let k = 0; k < 8; k++) {
    const [ux, uy] = [Math.cos((k * Math.PI) / 4), Math.sin((k * Math.PI) / 4)];
    for (const length of [1, 0.6, 0.3]) {
      const end: Point = [at[0] + length * ux, at[1] + length * uy];
      const isFree = [0.25, 0.5, 0.75, 1].every((share) =>
        contains(standing, [at[0] + share * length * ux, at[1] + share * length * uy]),
      );
      if (isFree && !cuts(footprint, [at, end]) && length > lengthOf(best)) best = [at, end];
    }
  }
  return best;
}

/** Length of a path. @param path - Places in order. [m] @returns [m] @example Two places 3 m apart: 3 m */
export const lengthOf = (path: readonly Point[]): Metres =>
  path.slice(1).reduce((sum, at, i) => sum + distanceBetween(path[i] as Point, at), 0);

/**
 * The last of a way.
 *
 * @param path - Places in order. [m] @param length - How much of it. [m]
 * @returns The end of it; all of it where it is shorter.
 * @example The last 1.5 m of a straight way of 4 m: from 2.5 m on
 */
export function endOf(path: readonly Point[], length: Metres): readonly Point[] {
  return startOf(path.toReversed(), length).toReversed();
}

/**
 * The first of a way.
 *
 * @param path - Places in order. [m] @param length - How much of it. [m]
 * @returns The beginning of it; all of it where it is shorter.
 * @example The first 2 m of a straight way of 4 m: to its middle
 */
export function startOf(path: readonly Point[], length: Metres): readonly Point[] {
  const kept: Point[] = path.slice(0, 1).map((at) => at);
  let left = length;
  for (let i = 1; i < path.length && left > 0; i++) {
    const [a, b] = [path[i - 1] as Point, path[i] as Point];
    const piece = distanceBetween(a, b);
    if (piece === 0) continue;
    const share = Math.min(1, left / piece);
    kept.push([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
    left -= piece;
  }
  return kept;
}
