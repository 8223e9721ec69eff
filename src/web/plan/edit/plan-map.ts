import type { LensMask, Metres, Outline, Point, Radians } from "#engine";
import { wholeTurn } from "#engine";
import type { RecordKind, RecordOf } from "../../contract.ts";

/** A motion of the plane that keeps all lengths: shifted, turned, or mirrored. */
export interface PlanMap {
  readonly at: (point: Point) => Point;
  /** Where a direction points afterwards. */
  readonly turned: (angle: Radians) => Radians;
  readonly hand: "kept" | "mirrored";
}

/** Moved by a vector. */
export const shiftBy = (by: Point): PlanMap => ({
  at: ([x, y]) => settled([x + by[0], y + by[1]]),
  turned: (angle) => angle,
  hand: "kept",
});

/** Moved by a vector onto whole millimetres, as a hand sets things down. */
export const setDownBy = (by: Point): PlanMap => ({
  ...shiftBy(by),
  at: ([x, y]) => [millimetre(x + by[0]), millimetre(y + by[1])],
});

/** Turned counter-clockwise about a place. Quarter turns are exact. */
export function turnAbout([mx, my]: Point, by: Radians): PlanMap {
  const [c, s] = exactCosines(by);
  return {
    at: ([x, y]) => settled([mx + (x - mx) * c - (y - my) * s, my + (x - mx) * s + (y - my) * c]),
    turned: (angle) => wholeTurn(angle + by),
    hand: "kept",
  };
}

/** Across: left and right change places; up: above and below do. */
export type MirrorWay = "across" | "up";

/** Mirrored in the upright (across) or level (up) line through a place. */
export const mirrorIn = ([mx, my]: Point, way: MirrorWay): PlanMap => ({
  at: ([x, y]) => settled(way === "across" ? [2 * mx - x, y] : [x, 2 * my - y]),
  turned: (angle) => wholeTurn(way === "across" ? Math.PI - angle : -angle),
  hand: "mirrored",
});

/** A thousandth of a millimetre, as the file keeps it: so a motion and its way back end where they began. */
const settled = ([x, y]: Point): Point => [finest(x), finest(y)];
/** Plan coordinates that a hand gives are kept to the millimetre. */
export const millimetre = (value: Metres): Metres => Math.round(value * 1000) / 1000;

const finest = (value: Metres): Metres => Math.round(value * 1e6) / 1e6;

function exactCosines(angle: Radians): readonly [number, number] {
  const quarter = Math.round(angle / (Math.PI / 2));
  if (Math.abs(angle - (quarter * Math.PI) / 2) > 1e-9) return [Math.cos(angle), Math.sin(angle)];
  const exact = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ] as const;
  return exact[((quarter % 4) + 4) % 4] ?? [1, 0];
}

/** Rings keep their sense: a mirrored one is read backwards. */
export const mappedRing = (ring: Outline, map: PlanMap): Outline => {
  const moved = ring.map(map.at);
  return map.hand === "mirrored" ? moved.reverse() : moved;
};

/** Kinds that have a place in the plan. */
export type MappedKind = Exclude<RecordKind, "storeys" | "models">;

type Fields = {
  readonly [K in MappedKind]: (record: RecordOf<K>, map: PlanMap) => Partial<RecordOf<K>>;
};

const fields: Fields = {
  rooms: (room, map) => ({
    outline: mappedRing(room.outline, map),
    holes: room.holes.map((hole) => mappedRing(hole, map)),
    noDevices: room.noDevices.map((ring) => mappedRing(ring, map)),
    ...(room.ceilingGrid
      ? {
          ceilingGrid: {
            ...room.ceilingGrid,
            origin: map.at(room.ceilingGrid.origin),
            turn: undirected(room.ceilingGrid.turn, map),
          },
        }
      : {}),
  }),
  floorPieces: (piece, map) => ({
    footprint: mappedRing(piece.footprint, map),
    from: map.at(piece.from),
    to: map.at(piece.to),
  }),
  // The leaf stays on its jamb and swings into its room: mirrored ends give the mirrored door.
  openings: (opening, map) => ({ from: map.at(opening.from), to: map.at(opening.to) }),
  obstacles: (obstacle, map) => ({ footprint: mappedRing(obstacle.footprint, map) }),
  dwellPlaces: (place, map) => ({ at: map.at(place.at) }),
  interference: (source, map) => ({
    at: map.at(source.at),
    ...(source.to ? { to: map.at(source.to) } : {}),
  }),
  ceilingThings: (thing, map) => ({ at: map.at(thing.at) }),
  luminaires: (one, map) => ({ at: map.at(one.at), turn: undirected(one.turn, map) }),
  switches: (one, map) => ({ at: map.at(one.at) }),
  detectors: (device, map) => ({
    at: map.at(device.at),
    turn: map.turned(device.turn),
    masks: map.hand === "mirrored" ? device.masks.map(mirroredMask) : device.masks,
  }),
};

/** The fields of a record that a motion changes. */
export const mappedFields = <K extends MappedKind>(
  kind: K,
  record: RecordOf<K>,
  map: PlanMap,
): Partial<RecordOf<K>> =>
  (fields[kind] as (record: RecordOf<K>, map: PlanMap) => Partial<RecordOf<K>>)(record, map);

/** A record carried along by a motion. */
export const mapped = <K extends MappedKind>(kind: K, record: RecordOf<K>, map: PlanMap): RecordOf<K> => ({
  ...record,
  ...mappedFields(kind, record, map),
});

/** A grid or a rectangle looks the same after half a turn, so that mirroring it needs no half turn. */
const undirected = (turn: Radians, map: PlanMap): Radians =>
  map.hand === "mirrored" ? wholeTurn(-turn) : map.turned(turn);

/** Sectors count counter-clockwise from the notch: mirrored they begin where they ended. A ring stays one. */
const mirroredMask = (mask: LensMask): LensMask =>
  mask.to - mask.from >= 2 * Math.PI - 1e-9
    ? mask
    : { ...mask, from: wholeTurn(-mask.to), to: wholeTurn(-mask.from) };
