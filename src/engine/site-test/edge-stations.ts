import type { CountedDevice } from "../coverage/index.ts";
import { contains, distanceBetween, type Outline, type Point } from "../geometry/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";
import { wholeTurn } from "../quantity/index.ts";
import { candidateOf, PACE, SETTLE, type StationCandidate } from "./candidate.ts";
import type { Expectation } from "./station.ts";
import { BY_REACH, type WalkContext } from "./walk-context.ts";

/** Directions looked at, beginning along the room's longest wall: a corridor's own axis is among them. */
const DIRECTIONS = 40;
/** Places along a direction are tested this far apart; a boundary is then found to a millimetre. [m] */
const STEP: Metres = 0.1;
const FINE: Metres = 1e-3;
/** A walk begins this far outside a boundary, where there is floor. [m] */
const RUN_UP: Metres = 1;
/** A walk towards goes on until one is seen, at most so near to the detector: there one looks straight up at it. [m] */
const NEAR: Metres = 0.5;
/** Half of a walk across, and the least of it that must be floor. [m] */
const HALF_PASS: Metres = 1.2;
const LEAST_HALF_PASS: Metres = 0.6;

/**
 * Stations at the boundary of each zone: towards from outside, and across along the edge; the best of each device and eighth of the compass.
 *
 * @param context - The room.
 * @returns Candidates with their headroom; nothing where the floor is too short for a walk.
 * @source SIGHT-GEOMETRY
 * @example A detector of 3.4 m planned reach in a hall: walk towards it from 4.4 m, seen from 3.4 m on
 */
export function edgeStations(context: WalkContext): readonly StationCandidate[] {
  const axis = axisOf(context.prepared.room.outline);
  const angles = Array.from({ length: DIRECTIONS }, (_, k) =>
    wholeTurn(axis + (2 * Math.PI * k) / DIRECTIONS),
  );
  return context.devices.flatMap((device) =>
    [towardsStation, acrossStation].flatMap((make) => {
      const found = angles.flatMap((angle) => make({ context, device, angle }) ?? []);
      const best = new Map<string, StationCandidate>();
      for (const one of found.toSorted((x, y) => x.station.headroom - y.station.headroom))
        if (!best.has(one.station.id)) best.set(one.station.id, one);
      return [...best.values()];
    }),
  );
}

/** Of edges as long as this to each other the first is the longest. [m] */
const SAME_LENGTH: Metres = 0.03;

/** Direction of a ring's longest edge. [rad] */
function axisOf(outline: Outline): Radians {
  const [, [dx, dy]] = outline.reduce<readonly [Metres, Point]>(
    (longest, a, i) => {
      const b = outline[(i + 1) % outline.length] as Point;
      const length = distanceBetween(a, b);
      return length > longest[0] + SAME_LENGTH ? [length, [b[0] - a[0], b[1] - a[1]]] : longest;
    },
    [0, [1, 0]],
  );
  return Math.atan2(dy, dx);
}

interface EdgeQuestion {
  readonly context: WalkContext;
  readonly device: CountedDevice;
  /** Direction from the detector, counter-clockwise from +x. */
  readonly angle: Radians;
}

function towardsStation({ context, device, angle }: EdgeQuestion): StationCandidate | undefined {
  const { standing, site } = context;
  const place = along(device.at, angle);
  const zone = context.zone(device, "towards");
  const reach = context.reach(device, { at: place(1), kind: "towards" });
  if (reach <= 0) return undefined;
  const isSeen = (r: Metres): boolean => contains(standing, place(r)) && zone.has(...place(r));
  const boundary = outermost(isSeen, reach + STEP);
  if (boundary === undefined) return undefined;
  const isFloor = (r: Metres): boolean => contains(standing, place(r));
  const start = runOf(isFloor, { from: boundary, to: boundary + RUN_UP });
  const end = runOf(isFloor, { from: boundary, to: Math.min(NEAR, boundary) });
  const { onset } = site.defaults;
  const atOnce = device.model.onset ?? onset;
  if (start - end < atOnce + 0.3) return undefined;
  const distance = boundaryAsked({ start, boundary, reach, onset: atOnce });
  if (distance < end) return undefined;
  const at = place(boundary);
  return candidateOf(context, {
    id: `towards:${device.id}:${eighthOf(angle)}`,
    kind: "towards",
    subject: { kind: "device", id: device.id },
    path: [place(start), place(end)],
    passes: 2,
    expected: { kind: "seen-from", distance } satisfies Expectation,
    planned: boundary,
    devices: [device.id],
    why: "planned-boundary",
    headroom: leftAt(context, { device, at, kind: "towards", boundary, reach }),
    // Reckoned to where one ought to be seen.
    seconds: (2 * (start - distance)) / PACE + 2 * SETTLE,
  });
}

/**
 * The least distance from the detector at which one who walks towards it must be seen (WT-4).
 *
 * @param walk.start - Distance at which the walk begins. [m] @param walk.boundary - Planned boundary. [m]
 * @param walk.reach - Planned reach in this direction. [m] @param walk.onset - Walk after which the device reacts. [m]
 * @returns Distance. [m]
 * @source COMMON-PRACTICE
 * @example Boundary 3.4 m made by the reach, start 4.4 m, onset 0.5 m: 3.4 m; start 3.4 m: 2.9 m
 */
export function boundaryAsked(walk: {
  readonly start: Metres;
  readonly boundary: Metres;
  readonly reach: Metres;
  readonly onset: Metres;
}): Metres {
  const { start, boundary, reach, onset } = walk;
  const isReach = reach - boundary < BY_REACH;
  return isReach ? Math.min(boundary, start - onset) : boundary - onset;
}

function acrossStation({ context, device, angle }: EdgeQuestion): StationCandidate | undefined {
  const { standing } = context;
  const place = along(device.at, angle);
  const zone = context.zone(device, "across");
  const reach = context.reach(device, { at: place(1), kind: "across" });
  if (reach <= 0) return undefined;
  const offset = outermost((r) => {
    const pass = passAt(place(r), angle);
    return (
      zone.has(...place(r)) &&
      [-1, -0.5, 0, 0.5, 1].every((share) => contains(standing, pass(share * LEAST_HALF_PASS)))
    );
  }, reach + STEP);
  if (offset === undefined || offset < 1) return undefined;
  const pass = passAt(place(offset), angle);
  const isFloor = (s: Metres): boolean => contains(standing, pass(s));
  const [left, right] = [
    runOf(isFloor, { from: 0, to: -HALF_PASS }),
    runOf(isFloor, { from: 0, to: HALF_PASS }),
  ];
  return candidateOf(context, {
    id: `across:${device.id}:${eighthOf(angle)}`,
    kind: "across",
    subject: { kind: "device", id: device.id },
    path: [pass(left), pass(right)],
    passes: 2,
    expected: { kind: "seen" },
    planned: offset,
    devices: [device.id],
    why: "planned-boundary",
    headroom: leftAt(context, { device, at: place(offset), kind: "across", boundary: offset, reach }),
    seconds: (2 * (right - left)) / PACE + 2 * SETTLE,
  });
}

/** Headroom at a boundary: what the device has left there, or another that sees the place has. */
function leftAt(
  context: WalkContext,
  edge: {
    readonly device: CountedDevice;
    readonly at: Point;
    readonly kind: "towards" | "across";
    readonly boundary: Metres;
    readonly reach: Metres;
  },
): Metres {
  const others = context
    .watchers({ at: edge.at, kind: edge.kind })
    .filter((watch) => watch.device !== edge.device.id);
  return Math.max(0, edge.reach - edge.boundary, others[0]?.headroom ?? 0);
}

const along =
  (from: Point, angle: Radians) =>
  (r: Metres): Point => [from[0] + r * Math.cos(angle), from[1] + r * Math.sin(angle)];

const passAt =
  (middle: Point, angle: Radians) =>
  (s: Metres): Point => [middle[0] - s * Math.sin(angle), middle[1] + s * Math.cos(angle)];

/** The largest distance at which something holds, looked for from outside. */
function outermost(holds: (r: Metres) => boolean, from: Metres): Metres | undefined {
  for (let r = from; r > 0.3; r -= STEP) {
    if (holds(r)) return changeBetween(holds, [r, r + STEP]);
  }
  return undefined;
}

/** How far one gets from a place towards another while something holds. */
function runOf(
  holds: (r: Metres) => boolean,
  { from, to }: { readonly from: Metres; readonly to: Metres },
): Metres {
  const sign = Math.sign(to - from);
  const steps = Math.ceil(Math.abs(to - from) / STEP);
  let before = from;
  for (let k = 1; k <= steps; k++) {
    const r = k === steps ? to : from + sign * k * STEP;
    if (!holds(r)) return changeBetween(holds, [before, r]);
    before = r;
  }
  return before;
}

/** Where something that holds at the first place and not at the second ceases to. */
function changeBetween(holds: (r: Metres) => boolean, [yes, no]: readonly [Metres, Metres]): Metres {
  let [good, bad] = [yes, no];
  while (Math.abs(good - bad) > FINE) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** Eighth of the compass about a direction, 0 … 7 counter-clockwise; 0 lies about +x, so that no wall along an axis sits on a border. @param angle - [rad] @example Straight up: 2 */
export const eighthOf = (angle: Radians): number => Math.round(wholeTurn(angle) / (Math.PI / 4)) % 8;
