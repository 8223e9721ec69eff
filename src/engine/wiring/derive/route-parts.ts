import type { Point } from "../../geometry/index.ts";
import type { Metres } from "../../quantity/index.ts";
import type { Room, Site, Storey } from "../../site/index.ts";
import type { WiringModel } from "../model.ts";
import type { FoundBoard, FoundCircuit, FoundInstallation, PinnedStretch } from "../of-site/found.ts";
import { BOARD_TOP, boardRise } from "./board-rise.ts";
import type { CablePlace, CableWay, CeilingWays } from "./ceiling-ways.ts";
import type { RouteNode, RoutePart } from "./circuit-route.ts";

/**
 * What one circuit has to reach, storey by storey, each with the place that its supply comes from.
 *
 * @param site - The site. @param found - Boards and circuits. @param about - The wiring, the circuit, ways by storey.
 * @returns Parts; empty where the board has no place, or nothing hangs on the circuit.
 * @example Luminaires on two storeys: two parts, the other one with a rise from storey to storey
 */
export function partsOf(
  site: Site,
  found: FoundInstallation,
  about: {
    readonly model: WiringModel;
    readonly circuit: FoundCircuit;
    readonly waysOn: (storey: string) => CeilingWays;
  },
): readonly RoutePart[] {
  const { circuit, waysOn } = about;
  const board = found.boards.find(({ id }) => id === circuit.board);
  const storey = site.storeys.find(({ id }) => id === board?.storey);
  if (!board?.at || !storey) return [];
  const rooms = new Map(site.rooms.map((room) => [room.id, room]));
  const nodes = nodesOf(site, about, rooms);
  const home = waysOn(storey.id).roomAt(board.at);
  const up = home === undefined ? 0 : boardRise(rooms.get(home));
  return site.storeys.flatMap((other): readonly RoutePart[] => {
    const here = nodes.filter(({ node }) => node.storey === other.id);
    const ways = waysOn(other.id);
    const room = ways.roomAt(board.at as Point);
    if (here.length === 0 || room === undefined) return [];
    return [
      {
        start: startOf(board, { room, storey: other.id }),
        rise: other === storey ? up : riser({ storey, other, up, ceiling: ceilingOf(rooms.get(room)) }),
        groups: groupsOf(here),
        lines: circuit.phases === "three-phase" ? 3 : 1,
        buttons: buttonsOf(site, { rooms, detectors: here }),
        between:
          other === storey && circuit.via && circuit.via.length > 0
            ? viaPlaces(ways, { start: board.id, via: circuit.via })
            : ways.between,
        led: ledWays(ways, circuit.pinned ?? []),
      },
    ];
  });
}

/** Ways that leave the board through the places that a person pinned, in their order. */
function viaPlaces(
  ways: CeilingWays,
  { start, via }: { readonly start: string; readonly via: readonly Point[] },
): CeilingWays["between"] {
  const places = via.map((at): CablePlace => ({ at, room: ways.roomAt(at) ?? "" }));
  return (from, to) => {
    return "id" in from && from.id === start ? past(ways, [from, ...places, to]) : ways.between(from, to);
  };
}

/** The way of a stretch that a person leads past places, whichever of its ends the cable comes from; undefined for all others. */
function ledWays(ways: CeilingWays, pinned: readonly PinnedStretch[]): RoutePart["led"] {
  return (from, to) => {
    const own = pinned.find(
      (one) => (one.from === from.id && one.to === to.id) || (one.from === to.id && one.to === from.id),
    );
    if (!own || own.via.length === 0) return undefined;
    const places = (own.from === from.id ? own.via : own.via.toReversed()).map(
      (at): CablePlace => ({ at, room: ways.roomAt(at) ?? "" }),
    );
    return past(ways, [from, ...places, to]);
  };
}

/** One way from stop to stop. */
function past(ways: CeilingWays, stops: readonly CablePlace[]): CableWay {
  const legs = stops.slice(1).map((stop, i) => ways.between(stops[i] as CablePlace, stop));
  return {
    points: legs.flatMap(({ points }, i) => (i === 0 ? points : points.slice(1))),
    length: legs.reduce((sum, { length }) => sum + length, 0),
    walls: legs.some(({ walls }) => walls === "through-walls") ? "through-walls" : "above-doors",
  };
}

const ceilingOf = (room: Room | undefined): Metres => (room ? room.floor + room.ceilingHeight : BOARD_TOP);

const startOf = (
  board: FoundBoard,
  place: { readonly room: string; readonly storey: string },
): RouteNode => ({
  id: board.id,
  kind: "board",
  at: board.at as Point,
  ...place,
});

/** From the top of the board to the ceiling of another storey. */
const riser = (way: {
  readonly storey: Storey;
  readonly other: Storey;
  readonly up: Metres;
  readonly ceiling: Metres;
}): Metres => Math.abs(way.other.elevation + way.ceiling - way.storey.elevation - BOARD_TOP);

interface Reached {
  readonly node: RouteNode;
  readonly switchedLine: string | undefined;
}

/** Luminaires and detectors of a circuit with the line that switches them, or that they switch. */
function nodesOf(
  site: Site,
  { model, circuit }: { readonly model: WiringModel; readonly circuit: FoundCircuit },
  rooms: ReadonlyMap<string, Room>,
): readonly Reached[] {
  const place = (
    record: { readonly id: string; readonly room: string; readonly at: Point },
    kind: RouteNode["kind"],
  ) => ({
    id: record.id,
    kind,
    at: record.at,
    room: record.room,
    storey: rooms.get(record.room)?.storey ?? "",
  });
  const loads = new Map(
    model.loads.filter((load) => load.circuit === circuit.id).map((load) => [load.id, load]),
  );
  const fed = new Map(
    model.detectors
      .filter(({ line }) => line.kind === "line" && line.circuit === circuit.id)
      .map((one) => [one.id, one]),
  );
  return [
    ...site.detectors.flatMap((one): readonly Reached[] => {
      const wired = fed.get(one.id);
      return wired ? [{ node: place(one, "detector"), switchedLine: wired.output }] : [];
    }),
    ...site.luminaires.flatMap((one): readonly Reached[] => {
      const load = loads.get(one.id);
      return load ? [{ node: place(one, "luminaire"), switchedLine: load.switchedLine }] : [];
    }),
  ];
}

/** What hangs on one switched line goes together; a detector that only signals stands for itself. */
function groupsOf(here: readonly Reached[]): RoutePart["groups"] {
  const lines = new Set(
    here.flatMap(({ switchedLine }) => (switchedLine === undefined ? [] : [switchedLine])),
  );
  const group = (own: readonly Reached[]): RoutePart["groups"][number] => ({
    detectors: own.filter(({ node }) => node.kind === "detector").map(({ node }) => node),
    luminaires: own.filter(({ node }) => node.kind === "luminaire").map(({ node }) => node),
  });
  const loose = here.filter(({ switchedLine }) => switchedLine === undefined);
  return [
    ...[...lines].map((line) => group(here.filter(({ switchedLine }) => switchedLine === line))),
    ...loose.filter(({ node }) => node.kind === "detector").map((one) => group([one])),
    group(loose.filter(({ node }) => node.kind === "luminaire")),
  ].filter(({ detectors, luminaires }) => detectors.length + luminaires.length > 0);
}

function buttonsOf(
  site: Site,
  { rooms, detectors }: { readonly rooms: ReadonlyMap<string, Room>; readonly detectors: readonly Reached[] },
): RoutePart["buttons"] {
  const own = new Map(
    detectors.flatMap(({ node }) => (node.kind === "detector" ? [[node.id, node] as const] : [])),
  );
  return site.switches.flatMap((one) => {
    const detector = one.planned === "removed" ? undefined : one.detectors?.find((id) => own.has(id));
    const room = rooms.get(one.room);
    if (detector === undefined || room?.storey !== own.get(detector)?.storey) return [];
    const node: RouteNode = {
      id: one.id,
      kind: "button",
      at: one.at,
      room: one.room,
      storey: room?.storey ?? "",
    };
    return [{ node, detector, fall: Math.max(0, ceilingOf(room) - one.height) }];
  });
}
