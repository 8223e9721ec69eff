import {
  contains,
  distanceToRings,
  type Point,
  prepareWays,
  type Region,
  regionOf,
  ringsOf,
  type Ways,
  waysFrom,
  wayTo,
} from "../../geometry/index.ts";
import type { Metres } from "../../quantity/index.ts";
import {
  isUsableOutline,
  isWalkable,
  type Opening,
  type Room,
  revealOf,
  type Site,
} from "../../site/index.ts";

/** A place in a room that a cable goes to. */
export interface CablePlace {
  readonly room: string;
  readonly at: Point;
}

/** How a cable lies between two places of one storey. */
export interface CableWay {
  readonly points: readonly Point[];
  /** With the steps between ceilings of different height. [m] */
  readonly length: Metres;
  /** above-doors: walls are crossed above doors alone · through-walls: no doors lead there, so that it goes straight. */
  readonly walls: "above-doors" | "through-walls";
}

/** Answers how cables lie on one storey. */
export interface CeilingWays {
  readonly between: (from: CablePlace, to: CablePlace) => CableWay;
  /** The room that a place lies in, or the nearest one; undefined on a storey without rooms. */
  readonly roomAt: (at: Point) => string | undefined;
}

/** One side of a door: the place in one of its rooms. */
interface DoorSide extends CablePlace {
  /** Index of the place on the other side. */
  readonly other: number;
  /** Through the wall, with the step between both ceilings. [m] */
  readonly through: Metres;
}

interface RoomWays {
  readonly room: Room;
  readonly region: Region;
  readonly ways: Ways;
  /** Direction of its longest wall. [rad] */
  readonly axis: number;
}

type Piece = Pick<CableWay, "points" | "length">;

/**
 * Ways of cables along the ceilings of a storey.
 *
 * In a room a cable keeps inside, round its corners, each leg along the room's longest wall and square to it. From room to room it crosses
 * walls above doors and passages alone; where none lead there it goes straight through the walls.
 *
 * @param site - The site. @param storey - Id.
 * @returns Answers for this storey; the work for each room is done once.
 * @source DIJKSTRA-1959, COMMON-PRACTICE
 * @example Two places 3 m and 4 m apart along the walls of one room: 7 m
 */
export function ceilingWays(site: Site, storey: string): CeilingWays {
  const rooms = new Map<string, RoomWays>();
  for (const room of site.rooms)
    if (room.storey === storey && isUsableOutline(room.outline)) rooms.set(room.id, roomWays(room));
  const sides: DoorSide[] = [];
  for (const opening of site.openings) sides.push(...sidesOf(opening, { rooms, first: sides.length }));
  const sidesIn = new Map<string, number[]>();
  for (const [index, { room }] of sides.entries()) sidesIn.set(room, [...(sidesIn.get(room) ?? []), index]);
  const inside = new Map<string, Piece>();
  const within = (id: string, from: Point, to: Point): Piece => {
    const key = `${id} ${from[0]} ${from[1]} ${to[0]} ${to[1]}`;
    const known = inside.get(key) ?? insideWay(rooms.get(id), from, to);
    inside.set(key, known);
    return known;
  };
  const found = new Map<number, ReadonlyMap<number, Piece>>();
  const from = (start: number): ReadonlyMap<number, Piece> => {
    const known = found.get(start) ?? waysFromSide(start, { sides, sidesIn, within });
    found.set(start, known);
    return known;
  };
  return {
    between: (one, other) => {
      const walls = inRoom(rooms.get(one.room), one.at) && inRoom(rooms.get(other.room), other.at);
      const lie = walls ? "above-doors" : "through-walls";
      if (one.room === other.room) return { ...within(one.room, one.at, other.at), walls: lie };
      const best = shortestOver(one, other, { sides, sidesIn, within, from });
      if (best) return { ...best, walls: lie };
      const { points, length } = straight(one.at, other.at, rooms.get(one.room)?.axis ?? 0);
      return { points, length, walls: "through-walls" };
    },
    roomAt: (at) => {
      const holding = [...rooms.values()].find(({ region }) => contains(region, at));
      const away = ({ region }: RoomWays): number => distanceToRings(at, ringsOf(region));
      return (holding ?? [...rooms.values()].sort((a, b) => away(a) - away(b))[0])?.room.id;
    },
  };
}

/** A board in a niche lies so far outside the outline of its room, and still in it. [m] */
const NICHE = 0.5;

const inRoom = (own: RoomWays | undefined, at: Point): boolean =>
  own !== undefined && (contains(own.region, at) || distanceToRings(at, ringsOf(own.region)) <= NICHE);

interface Doors {
  readonly sides: readonly DoorSide[];
  readonly sidesIn: ReadonlyMap<string, readonly number[]>;
  readonly within: (room: string, from: Point, to: Point) => Piece;
}

function roomWays(room: Room): RoomWays {
  const region = regionOf(room.outline, room.holes);
  const walls = room.outline.map((from, i) => {
    const to = room.outline[(i + 1) % room.outline.length] as Point;
    return {
      length: Math.hypot(to[0] - from[0], to[1] - from[1]),
      angle: Math.atan2(to[1] - from[1], to[0] - from[0]),
    };
  });
  const longest = walls.reduce((most, wall) => (wall.length > most.length + 1e-9 ? wall : most));
  return { room, region, ways: prepareWays(region), axis: longest.angle };
}

const ceilingOf = ({ floor, ceilingHeight }: Room): Metres => floor + ceilingHeight;
const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
/** Corners of cables to a hundredth of a millimetre, so that a turned plan gives the same corners turned. [m] */
const settled = (value: Metres): Metres => Math.round(value * 1e5) / 1e5;

/** Both sides of a door between two rooms of the storey. */
function sidesOf(
  opening: Opening,
  { rooms, first }: { readonly rooms: ReadonlyMap<string, RoomWays>; readonly first: number },
): readonly DoorSide[] {
  const [one, other] = opening.rooms.map((id) => (id === null ? undefined : rooms.get(id)));
  if (!one || !other || one === other || !isWalkable(opening.kind)) return [];
  const { near, far } = revealOf(opening, one.room);
  const through = opening.thickness + Math.abs(ceilingOf(one.room) - ceilingOf(other.room));
  return [
    { room: one.room.id, at: middle(...near), other: first + 1, through },
    { room: other.room.id, at: middle(...far), other: first, through },
  ];
}

/** Straight along one axis, then along the other. */
function straight(from: Point, to: Point, axis: number): Piece & { readonly elbows: readonly Point[] } {
  const [cos, sin] = [Math.cos(axis), Math.sin(axis)];
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const [along, beside] = [x * cos + y * sin, y * cos - x * sin];
  const elbows: readonly Point[] =
    Math.abs(along) < 1e-6 || Math.abs(beside) < 1e-6
      ? []
      : [
          [settled(from[0] + along * cos), settled(from[1] + along * sin)],
          [settled(from[0] - beside * sin), settled(from[1] + beside * cos)],
        ];
  const [elbow] = elbows;
  return {
    points: elbow ? [from, elbow, to] : [from, to],
    length: Math.abs(along) + Math.abs(beside),
    elbows,
  };
}

/** Inside one room: round its corners, each leg along its walls. */
function insideWay(own: RoomWays | undefined, from: Point, to: Point): Piece {
  if (!own) return straight(from, to, 0);
  const path = wayTo(waysFrom(own.ways, from), to)?.path ?? [from, to];
  const points: Point[] = [from];
  let length = 0;
  for (const [i, next] of path.slice(1).entries()) {
    const last = path[i] as Point;
    const leg = straight(last, next, own.axis);
    const elbow = leg.elbows.find((one) => contains(own.region, one));
    points.push(...(elbow ? [elbow] : []), next);
    length += leg.length;
  }
  return { points, length };
}

const joined = (one: Piece, other: Piece): Piece => ({
  points: [...one.points, ...other.points],
  length: one.length + other.length,
});

/** Shortest ways from one side of a door to the sides of all others. */
function waysFromSide(start: number, { sides, sidesIn, within }: Doors): ReadonlyMap<number, Piece> {
  const done = new Map<number, Piece>();
  const open = new Map<number, Piece>([[start, { points: [(sides[start] as DoorSide).at], length: 0 }]]);
  while (open.size > 0) {
    const [index, way] = [...open].reduce((least, one) => (one[1].length < least[1].length ? one : least));
    open.delete(index);
    done.set(index, way);
    const here = sides[index] as DoorSide;
    const opposite = sides[here.other] as DoorSide;
    const steps: readonly (readonly [number, Piece])[] = [
      [here.other, { points: [opposite.at], length: here.through }],
      ...(sidesIn.get(here.room) ?? [])
        .filter((next) => next !== index && !done.has(next))
        .map((next) => [next, within(here.room, here.at, (sides[next] as DoorSide).at)] as const),
    ];
    for (const [next, step] of steps) {
      if (done.has(next)) continue;
      const length = way.length + step.length;
      if (length < (open.get(next)?.length ?? Number.POSITIVE_INFINITY)) open.set(next, joined(way, step));
    }
  }
  return done;
}

/** The shortest way from room to room: to a door of the one, over to a door of the other. */
function shortestOver(
  one: CablePlace,
  other: CablePlace,
  doors: Doors & { readonly from: (side: number) => ReadonlyMap<number, Piece> },
): Piece | undefined {
  const { sides, sidesIn, within, from } = doors;
  const at = (index: number): Point => (sides[index] as DoorSide).at;
  let best: { readonly length: Metres; readonly pieces: readonly Piece[] } | undefined;
  for (const out of sidesIn.get(one.room) ?? []) {
    const across = from(out);
    const first = within(one.room, one.at, at(out));
    for (const into of sidesIn.get(other.room) ?? []) {
      const over = across.get(into);
      if (!over) continue;
      const last = within(other.room, at(into), other.at);
      const length = first.length + over.length + last.length;
      if (!best || length < best.length) best = { length, pieces: [first, over, last] };
    }
  }
  return best && { length: best.length, points: withoutRepeats(best.pieces.flatMap(({ points }) => points)) };
}

const withoutRepeats = (points: readonly Point[]): readonly Point[] =>
  points.filter((point, i) => {
    const last = points[i - 1];
    return !last || Math.hypot(point[0] - last[0], point[1] - last[1]) > 1e-6;
  });
