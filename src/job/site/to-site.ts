import {
  type CeilingThing,
  type Detector,
  type DetectorModel,
  type DwellPlace,
  degreesOf,
  type FloorPiece,
  type Interference,
  type Luminaire,
  type Obstacle,
  type Opening,
  type Room,
  radiansOf,
  type Storey,
  type Switch,
  type ZoneRow,
} from "#engine";
import type { JobModel, JobRecords, SiteKind } from "../schema/job-file.ts";

/** The engine's record of each kind. */
export interface SiteRecords {
  readonly storeys: Storey;
  readonly rooms: Room;
  readonly floorPieces: FloorPiece;
  readonly openings: Opening;
  readonly obstacles: Obstacle;
  readonly dwellPlaces: DwellPlace;
  readonly interference: Interference;
  readonly ceilingThings: CeilingThing;
  readonly luminaires: Luminaire;
  readonly switches: Switch;
  readonly models: DetectorModel;
  readonly detectors: Detector;
}

/** A record for the engine: degrees become radians, rows and outlines of a data sheet stand in order. */
export function toSite<Kind extends SiteKind>(kind: Kind, record: JobRecords[Kind]): SiteRecords[Kind] {
  return (into[kind] as (record: JobRecords[Kind]) => SiteRecords[Kind])(record);
}

/** A record of the engine, or some of its fields, for the file: radians become degrees. */
export function fromSite<Kind extends SiteKind, Part extends Partial<SiteRecords[Kind]>>(
  kind: Kind,
  part: Part,
): { readonly [Name in keyof Part]: Name extends keyof JobRecords[Kind] ? JobRecords[Kind][Name] : never } {
  const turned = Object.entries(part as Readonly<Record<string, unknown>>).map(([name, value]) => {
    const turn = turns[kind]?.[name] as ((value: unknown) => unknown) | undefined;
    return [name, value === undefined ? undefined : turn ? turn(value) : settled(value)];
  });
  return Object.fromEntries(turned) as never;
}

const into: { readonly [Kind in SiteKind]: (record: JobRecords[Kind]) => SiteRecords[Kind] } = {
  storeys: (storey) => storey,
  rooms: (room) =>
    room.ceilingGrid === undefined
      ? (room as Room)
      : ({ ...room, ceilingGrid: { ...room.ceilingGrid, turn: radiansOf(room.ceilingGrid.turn) } } as Room),
  floorPieces: (piece) => ({
    ...piece,
    from: piece.from ?? piece.footprint[0]!,
    to: piece.to ?? piece.footprint[0]!,
  }),
  openings: (opening) => ({ ...opening, angle: radiansOf(opening.angle) }),
  obstacles: (obstacle) => obstacle,
  dwellPlaces: (place) => place,
  interference: (source) => source,
  ceilingThings: (thing) => thing,
  luminaires: (luminaire) => ({ ...luminaire, turn: radiansOf(luminaire.turn) }) as Luminaire,
  switches: (one) => one as Switch,
  models: modelForSite,
  detectors: (detector) => ({
    ...detector,
    controls: detector.controls.length > 0 ? detector.controls : [detector.room],
    turn: radiansOf(detector.turn),
    masks: detector.masks.map((mask) => ({
      ...mask,
      from: radiansOf(mask.from),
      to: radiansOf(mask.to),
      inner: radiansOf(mask.inner),
      outer: radiansOf(mask.outer),
    })),
  }),
};

type JobRow = NonNullable<JobModel["zones"]["towards"]>[number];

/** The kinds of zone that this version calculates with; a newer one's stay in the file, and out of the engine. */
const zoneKinds = ["seated", "towards", "across", "sound"] as const;

function modelForSite(model: JobModel): DetectorModel {
  const zones = Object.fromEntries(
    zoneKinds.flatMap((kind) => {
      const rows = model.zones[kind] as readonly JobRow[] | undefined;
      return rows ? [[kind, [...rows].sort((a, b) => a.height - b.height).map(rowForSite)]] : [];
    }),
  );
  const lens = model.lens && {
    ...model.lens,
    rings: model.lens.rings.map((ring) => ({ ...ring, offNadir: radiansOf(ring.offNadir) })),
  };
  return { ...model, zones, ...(lens && { lens }) } as DetectorModel;
}

const rowForSite = (row: JobRow): ZoneRow =>
  "outline" in row && Array.isArray(row.outline)
    ? {
        ...row,
        outline: [...(row.outline as readonly (readonly [number, number])[])]
          .sort((a, b) => a[0] - b[0])
          .map(([angle, radius]): [number, number] => [radiansOf(angle), radius]),
      }
    : (row as ZoneRow);

type Turn = (value: never) => unknown;

/** Fields that hold angles, by kind. Whatever stands in the file is rounded far below what matters, so that it reads well. */
const turns: { readonly [Kind in SiteKind]?: Readonly<Record<string, Turn>> } = {
  rooms: {
    ceilingGrid: (grid: NonNullable<Room["ceilingGrid"]>) => settled({ ...grid, turn: angle(grid.turn) }),
  },
  openings: { angle: (value: number) => angle(value) },
  luminaires: { turn: (value: number) => angle(value) },
  detectors: {
    turn: (value: number) => angle(value),
    masks: (masks: Detector["masks"]) =>
      masks.map((mask) => ({
        ...mask,
        from: angle(mask.from),
        to: angle(mask.to),
        inner: angle(mask.inner),
        outer: angle(mask.outer),
      })),
  },
  models: {
    zones: (zones: DetectorModel["zones"]) =>
      Object.fromEntries(
        Object.entries(zones)
          .filter(([, rows]) => rows !== undefined)
          .map(([kind, rows]) => [
            kind,
            rows.map((row) =>
              "outline" in row
                ? settled({ ...row, outline: row.outline.map(([turn, radius]) => [angle(turn), radius]) })
                : settled(row),
            ),
          ]),
      ),
    lens: (lens: NonNullable<DetectorModel["lens"]>) =>
      settled({ ...lens, rings: lens.rings.map((ring) => ({ ...ring, offNadir: angle(ring.offNadir) })) }),
  },
};

/** [°], to a millionth of a degree. */
const angle = (radians: number): number => Math.round(degreesOf(radians) * 1e6) / 1e6;

/** Lengths to a thousandth of a millimetre, as they stand in the file; the same value where nothing is rounded. */
function settled<Value>(value: Value): Value {
  if (typeof value === "number") return (Math.round(value * 1e6) / 1e6) as Value;
  if (Array.isArray(value)) return value.map((part) => settled(part as unknown)) as Value;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, part]) => [name, settled(part as unknown)]),
  ) as Value;
}
