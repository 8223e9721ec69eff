import { type Entrance, nearestIn } from "../coverage/index.ts";
import { contains, distanceBetween, type Point } from "../geometry/index.ts";
import type { Metres, Seconds } from "../quantity/index.ts";
import { controlledRooms, faceOf, floorOf, revealOf } from "../site/index.ts";
import { candidateOf, PACE, SETTLE, type StationCandidate } from "./candidate.ts";
import { lengthOf, startOf } from "./place-stations.ts";
import { EMPTY } from "./room-steps.ts";
import type { WalkContext } from "./walk-context.ts";

/** One starts this far outside a door. [m] */
const OUTSIDE: Metres = 1;
/** One goes on this far after the light should have come on. [m] */
const BEYOND: Metres = 1;
/** Passers-by keep this far from the wall, and walk this far to each side of the door's middle. [m] @source COMMON-PRACTICE */
const PASS_OFF: Metres = 0.8;
const PASS_HALF: Metres = 1.5;
/** Switching the light off, closing the door and waiting for it to be dark. [s] @source COMMON-PRACTICE */
const MAKE_DARK: Seconds = 8;

/**
 * Through each door from outside, along the way that is longest in the dark.
 *
 * @param context - The room.
 * @returns One candidate for each entrance that the plan lights at all.
 * @source COMMON-PRACTICE
 * @example Planned 1.9 m in the dark, limit 2.0 m: lit within 2.0 m, headroom 0.1 m
 */
export function enterStations(context: WalkContext): readonly StationCandidate[] {
  const { coverage, prepared, site } = context;
  if (!prepared.demand.asked.catch) return [];
  const others = context.devices.map((device) => device.id);
  return coverage.darkWalks.flatMap((walk) => {
    const entrance = prepared.standing?.entrances.find(({ opening }) => opening.id === walk.opening);
    if (!entrance || !walk.lit || walk.device === undefined) return [];
    const limit = Math.max(site.defaults.darkWalkLimit, walk.metres);
    const inside = startOf(walk.path, limit + BEYOND);
    const path = [outsideOf(context, entrance), ...inside];
    return [
      candidateOf(context, {
        id: `enter:${walk.opening}`,
        kind: "enter",
        subject: { kind: "opening", id: walk.opening },
        path,
        passes: 1,
        expected: { kind: "lit-within", distance: limit },
        planned: walk.metres,
        // Whichever comes first lights the room.
        devices: [walk.device, ...others.filter((id) => id !== walk.device)],
        why: "way-in",
        headroom: Math.max(0, limit - walk.metres),
        seconds: lengthOf(path) / PACE + MAKE_DARK + SETTLE,
        met: nearestIn(context.standing, entrance.at) ?? entrance.at,
      }),
    ];
  });
}

/**
 * Past each door outside, the door open: nobody there may switch the light on.
 *
 * @param context - The room.
 * @returns One candidate for each door to a room whose light the devices do not switch, or to outside; those that the plan sees out of first.
 * @source COMMON-PRACTICE
 * @example A detector that looks through the door into the corridor: headroom 0, "plan-sees-out"
 */
export function passByStations(context: WalkContext): readonly StationCandidate[] {
  const { coverage, prepared, devices } = context;
  const records = prepared.look.detectorsFor(prepared.room.id);
  return (prepared.standing?.entrances ?? []).flatMap((entrance) => {
    const { other } = entrance;
    const strangers = records.filter((one) => other === null || !controlledRooms(one).includes(other));
    const first = strangers[0];
    if (!first) return [];
    const path = passBy(context, entrance);
    if (lengthOf(path) < 1) return [];
    const spill = coverage.spill.find((one) => one.room === other);
    const samples = [0, 0.25, 0.5, 0.75, 1].map(
      (share) => startOf(path, share * lengthOf(path)).at(-1) as Point,
    );
    const seen = spill !== undefined && samples.some((at) => contains(spill.region, at));
    const near = devices
      .filter((device) => strangers.some((one) => one.id === device.id))
      .map((device) => ({
        id: device.id,
        distance: Math.min(...samples.map((at) => distanceBetween(at, device.at))),
      }))
      .toSorted((a, b) => a.distance - b.distance);
    return [
      candidateOf(context, {
        id: `pass-by:${entrance.opening.id}`,
        kind: "pass-by",
        subject: { kind: "opening", id: entrance.opening.id },
        path,
        passes: 2,
        expected: { kind: "not-seen" },
        planned: undefined,
        devices: seen ? spill.devices : near.map((one) => one.id),
        why: seen ? "plan-sees-out" : "next-door",
        // Where the plan sees nobody outside, the farther door is the less likely to surprise.
        headroom: seen ? 0 : Math.max(0.5, near[0]?.distance ?? 0),
        seconds: (2 * lengthOf(path)) / PACE + 2 * SETTLE,
        met: nearestIn(context.standing, entrance.at) ?? entrance.at,
      }),
    ];
  });
}

/**
 * The room left empty, everything that moves air or heat running.
 *
 * @param context - The room.
 * @returns One candidate; nothing in a room without devices.
 * @source COMMON-PRACTICE
 * @example 5 min of waiting, outside
 */
export function emptyStations(context: WalkContext): readonly StationCandidate[] {
  const { prepared, coverage, devices } = context;
  const { room, look } = prepared;
  const door =
    prepared.standing?.entrances.find((entrance) => entrance.free) ?? prepared.standing?.entrances[0];
  if (devices.length === 0 || !door) return [];
  const sources = look.interferenceOf(room.id);
  const inView = coverage.interference.map((one) => one.device);
  const at = nearestIn(context.standing, door.at) ?? door.at;
  return [
    candidateOf(context, {
      id: `empty:${room.id}`,
      kind: "empty",
      subject: { kind: "room", id: room.id },
      path: [at],
      passes: 1,
      expected: { kind: "not-seen" },
      planned: undefined,
      devices: [...new Set([...inView, ...devices.map((device) => device.id)])],
      why: inView.length > 0 ? "sources-in-view" : sources.length > 0 ? "sources-near" : "empty-room",
      headroom: inView.length > 0 ? 0 : 1,
      seconds: 2 * SETTLE,
      waiting: EMPTY,
    }),
  ];
}

function outsideOf(context: WalkContext, entrance: Entrance): Point {
  const far = farFace(context, entrance);
  return far ? place(far, { along: 0, off: OUTSIDE }) : entrance.at;
}

/** A walk along the wall outside a door, cut to the floor there is; outside the building all of it. */
function passBy(context: WalkContext, entrance: Entrance): readonly Point[] {
  const { look } = context.prepared;
  const far = farFace(context, entrance);
  if (!far) return [];
  const other = entrance.other === null ? undefined : look.roomById.get(entrance.other);
  if (entrance.other !== null && !other) return [];
  const isFloor = (at: Point): boolean => !other || contains(floorOf(other), at);
  for (const off of [PASS_OFF, PASS_OFF / 2]) {
    const ends = [-1, 1].map((sign) => {
      let reached = 0;
      for (let s = 0.1; s <= PASS_HALF + 1e-9; s += 0.1) {
        if (!isFloor(place(far, { along: sign * s, off }))) break;
        reached = s;
      }
      return place(far, { along: sign * reached, off });
    });
    if (isFloor(place(far, { along: 0, off })) && lengthOf(ends) >= 1) return ends;
  }
  return [];
}

interface Face {
  readonly middle: Point;
  /** Unit vectors along the wall and away from the tested room. */
  readonly along: Point;
  readonly away: Point;
}

function farFace(context: WalkContext, { opening }: Entrance): Face | undefined {
  const { look, room } = context.prepared;
  const first = look.roomById.get(opening.rooms[0]);
  if (!first) return undefined;
  const { jambs, inward } = faceOf(
    revealOf(opening, first),
    opening.rooms[0] === room.id ? "second" : "first",
  );
  const [a, b] = jambs;
  return {
    middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
    along: [-inward[1], inward[0]],
    away: inward,
  };
}

const place = (face: Face, { along, off }: { readonly along: Metres; readonly off: Metres }): Point => [
  face.middle[0] + along * face.along[0] + off * face.away[0],
  face.middle[1] + along * face.along[1] + off * face.away[1],
];
