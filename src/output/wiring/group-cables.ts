import {
  cableRoute,
  type FoundInstallation,
  lengthAllowance,
  type Metres,
  type Point,
  type RoutePoint,
  type Site,
} from "#engine";
import type { ConductorKind } from "./conductors.ts";

/** A cable of the papers, before it has a designation. Its ends are ids of records. */
export interface CableRun {
  readonly from: string;
  readonly to: string;
  readonly circuit: string | undefined;
  readonly conductors: readonly ConductorKind[];
  /** Length to lay by the plan, allowances included; undefined where an end has no place on the same storey. [m] */
  readonly length: Metres | undefined;
  /** Where it is another than that of its circuit. [mm²] */
  readonly section?: number;
}

/** Where something is, and on which storey. */
export interface Placed extends RoutePoint {
  readonly storey: string | undefined;
  /** Way down from the ceiling to it. [m] */
  readonly down: Metres;
}

/** Length to lay from a way on the plan, allowances at both ends and for waste. */
export function laid(way: Metres, down: Metres): Metres {
  return (way + down + 2 * lengthAllowance.end) * (1 + lengthAllowance.waste);
}

/**
 * Cables that loop in and out from a start through all other places, shortest first found by the engine; up and down to places below
 * the ceiling is added. Places on different storeys are taken in the order given, and lengths between storeys stay unknown.
 *
 * @param places - The start first.
 */
export function loop(
  places: readonly (Placed | { readonly id: string })[],
  circuit: string | undefined,
  conductors: readonly ConductorKind[],
): readonly CableRun[] {
  const [start] = places;
  if (start === undefined || places.length < 2) return [];
  const located = places.filter((place): place is Placed => "at" in place);
  const oneStorey =
    located.length === places.length && new Set(located.map(({ storey }) => storey)).size === 1;
  if (oneStorey) {
    const down = new Map(located.map((place) => [place.id, place.down]));
    return cableRoute(located, { style: "orthogonal", wiring: "loop" }).cables.map(
      ({ from, to, length }) => ({
        from,
        to,
        circuit,
        conductors,
        length: laid(length, (down.get(from) ?? 0) + (down.get(to) ?? 0)),
      }),
    );
  }
  return places.slice(1).map((place, i) => {
    const before = places[i]!;
    const near = "at" in before && "at" in place && before.storey === place.storey;
    return {
      from: before.id,
      to: place.id,
      circuit,
      conductors,
      length: near ? laid(steps(before.at, place.at), before.down + place.down) : undefined,
    };
  });
}

const steps = (from: Point, to: Point): Metres => Math.abs(from[0] - to[0]) + Math.abs(from[1] - to[1]);

/** Places of all records that cables go to. */
export function placesOf(site: Site, found: FoundInstallation): ReadonlyMap<string, Placed> {
  const rooms = new Map(site.rooms.map((room) => [room.id, room]));
  const inRoom = (
    one: { readonly id: string; readonly room: string; readonly at: Point },
    height?: Metres,
  ): readonly [string, Placed] => {
    const room = rooms.get(one.room);
    return [
      one.id,
      {
        id: one.id,
        at: one.at,
        storey: room?.storey,
        down: height === undefined ? 0 : Math.max(0, (room?.ceilingHeight ?? height) - height),
      },
    ];
  };
  return new Map<string, Placed>([
    ...site.detectors.map((one) => inRoom(one)),
    ...site.luminaires.map((one) => inRoom(one)),
    ...site.switches.map((one) => inRoom(one, one.height)),
    ...found.boards.flatMap((board) =>
      board.at === undefined
        ? []
        : [[board.id, { id: board.id, at: board.at, storey: board.storey, down: 0 }] as const],
    ),
    ...found.circuits.flatMap(({ board: own, contactors = [] }) => {
      const board = found.boards.find(({ id }) => id === own);
      const at = board?.at;
      return at === undefined
        ? []
        : contactors
            .filter(({ inBoard }) => inBoard === "yes")
            .map(({ id }) => [id, { id, at, storey: board?.storey, down: 0 }] as const);
    }),
  ]);
}
