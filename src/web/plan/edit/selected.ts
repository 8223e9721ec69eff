import type { Opening, Point, Room, Site } from "#engine";
import type { RecordKind, RecordRef } from "../../contract.ts";
import { type PlacedKind, recordOf, roomsOn } from "../pick.ts";
import { type Bounds, boundsOf } from "../view.ts";
import type { MappedKind } from "./plan-map.ts";

/** All kinds that carry the id of their room. */
export const placedKinds = [
  "detectors",
  "dwellPlaces",
  "ceilingThings",
  "luminaires",
  "switches",
  "interference",
  "obstacles",
  "floorPieces",
] as const satisfies readonly PlacedKind[];

/** What a selection comes to once rooms stand for all that is in them: each record once. */
export interface Whole {
  readonly rooms: readonly Room[];
  /** Openings of these rooms, and those that were chosen themselves. */
  readonly openings: readonly Opening[];
  readonly placed: readonly { readonly kind: PlacedKind; readonly id: string }[];
}

/** A selection with the contents and openings of its rooms. A storey stands for its rooms. */
export function wholeOf(site: Site, refs: readonly RecordRef[]): Whole {
  const chosen = (kind: RecordKind): ReadonlySet<string> =>
    new Set(refs.filter((ref) => ref.kind === kind).map(({ id }) => id));
  const storeys = chosen("storeys");
  const roomIds = chosen("rooms");
  const rooms = site.rooms.filter((room) => roomIds.has(room.id) || storeys.has(room.storey));
  const inside = new Set(rooms.map(({ id }) => id));
  const openingIds = chosen("openings");
  return {
    rooms,
    openings: site.openings.filter(
      (one) => openingIds.has(one.id) || one.rooms.some((id) => id !== null && inside.has(id)),
    ),
    placed: placedKinds.flatMap((kind) => {
      const ids = chosen(kind);
      return (site[kind] as readonly { readonly id: string; readonly room: string }[])
        .filter((record) => ids.has(record.id) || inside.has(record.room))
        .map(({ id }) => ({ kind, id }));
    }),
  };
}

/** Corner points of a thing: what its bounds are taken from. */
export function pointsOf(site: Site, kind: MappedKind, id: string): readonly Point[] {
  switch (kind) {
    case "rooms":
      return recordOf(site, kind, id)?.outline ?? [];
    case "obstacles":
    case "floorPieces":
      return recordOf(site, kind, id)?.footprint ?? [];
    case "openings": {
      const opening = recordOf(site, kind, id);
      return opening ? [opening.from, opening.to] : [];
    }
    case "interference": {
      const source = recordOf(site, kind, id);
      return source ? [source.at, ...(source.to ? [source.to] : [])] : [];
    }
    case "detectors":
    case "dwellPlaces":
    case "ceilingThings":
    case "luminaires":
    case "switches": {
      const at = recordOf(site, kind, id)?.at;
      return at ? [at] : [];
    }
  }
}

/** Bounds of a selection: its rooms where it has any, since what hangs beside them follows; else its things, then its openings. */
export function boundsOfWhole(site: Site, whole: Whole): Bounds | undefined {
  const of = (kind: MappedKind, list: readonly { readonly id: string }[]): Point[] =>
    list.flatMap(({ id }) => pointsOf(site, kind, id));
  return boundsOf([
    ...of("rooms", whole.rooms),
    ...whole.placed.flatMap(({ kind, id }) => pointsOf(site, kind, id)),
    ...(whole.rooms.length > 0 ? [] : of("openings", whole.openings)),
  ]);
}

export const middleOfBounds = (bounds: Bounds): Point => [
  (bounds.left + bounds.right) / 2,
  (bounds.bottom + bounds.top) / 2,
];

/** All things of the same kind on the storey of one: racks as racks, detectors of one model, luminaires of one type. */
export function alike(site: Site, storey: string, of: RecordRef): readonly RecordRef[] {
  const rooms = roomsOn(site, storey);
  const sort = sortOf(site, of);
  const here = (record: object): boolean => {
    const {
      room,
      rooms: both,
      storey: own,
    } = record as {
      room?: string;
      rooms?: readonly (string | null)[];
      storey?: string;
    };
    if (room !== undefined) return rooms.has(room);
    return both ? both.some((id) => id !== null && rooms.has(id)) : own === storey;
  };
  return (site[of.kind] as readonly { readonly id: string }[])
    .filter(here)
    .map(({ id }): RecordRef => ({ kind: of.kind, id }))
    .filter((ref) => sortOf(site, ref) === sort);
}

/** What two things must share to be alike. */
function sortOf(site: Site, { kind, id }: RecordRef): string {
  const record = recordOf(site, kind, id) as
    | { readonly kind?: string; readonly model?: string; readonly type?: string; readonly use?: string }
    | undefined;
  return `${record?.kind ?? record?.model ?? record?.type ?? record?.use ?? ""}`;
}

/** What lies in a box on a storey: things by their middle, rooms and openings when they lie in it wholly. */
export function boxed(
  site: Site,
  storey: string,
  box: { readonly from: Point; readonly to: Point },
): readonly RecordRef[] {
  const rooms = roomsOn(site, storey);
  const within = ([x, y]: Point): boolean =>
    x >= Math.min(box.from[0], box.to[0]) &&
    x <= Math.max(box.from[0], box.to[0]) &&
    y >= Math.min(box.from[1], box.to[1]) &&
    y <= Math.max(box.from[1], box.to[1]);
  const whole = [...rooms.values()].filter(({ outline }) => outline.every(within));
  const inWhole = new Set(whole.map(({ id }) => id));
  return [
    ...placedKinds.flatMap((kind) =>
      (site[kind] as readonly { readonly id: string; readonly room: string }[])
        .filter(({ id, room }) => {
          const points = pointsOf(site, kind, id);
          return rooms.has(room) && !inWhole.has(room) && points.length > 0 && within(middleOfPoints(points));
        })
        .map(({ id }): RecordRef => ({ kind, id })),
    ),
    ...whole.map(({ id }): RecordRef => ({ kind: "rooms", id })),
  ];
}

const middleOfPoints = (points: readonly Point[]): Point => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];
