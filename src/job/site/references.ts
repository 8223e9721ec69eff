import { type Said, say } from "#engine";
import type { JobRecords, RecordKind } from "../schema/job-file.ts";

/** A reference to something that is not in the job. */
export interface LostReference {
  /** What is missing, in the words of the trade, with its id. */
  readonly what: Said;
  readonly room?: string;
}

type Present = Readonly<Partial<Record<RecordKind, ReadonlySet<string>>>>;

/** The first reference of a record that leads nowhere; undefined where all of them hold. */
export function lostReference<Kind extends RecordKind>(
  kind: Kind,
  record: JobRecords[Kind],
  present: Present,
): LostReference | undefined {
  return (checks[kind] as (record: JobRecords[Kind], present: Present) => LostReference | undefined)(
    record,
    present,
  );
}

const has = (present: Present, kind: RecordKind, id: string): boolean => present[kind]?.has(id) ?? false;

const inRoom = (record: { readonly room: string }, present: Present): LostReference | undefined =>
  has(present, "rooms", record.room) ? undefined : { what: say`the room “${record.room}”` };

const checks: {
  readonly [Kind in RecordKind]: (record: JobRecords[Kind], present: Present) => LostReference | undefined;
} = {
  storeys: () => undefined,
  rooms: (room, present) =>
    has(present, "storeys", room.storey) ? undefined : { what: say`the storey “${room.storey}”` },
  underlays: (underlay, present) =>
    has(present, "storeys", underlay.storey) ? undefined : { what: say`the storey “${underlay.storey}”` },
  floorPieces: inRoom,
  openings: (opening, present) => {
    const lost = opening.rooms.find((room) => room !== null && !has(present, "rooms", room));
    const other = opening.rooms.find((room) => room !== null && room !== lost);
    return lost == null
      ? undefined
      : { what: say`the room “${lost}”`, ...(other != null && { room: other }) };
  },
  obstacles: inRoom,
  dwellPlaces: inRoom,
  interference: inRoom,
  ceilingThings: inRoom,
  luminaires: inRoom,
  switches: inRoom,
  models: () => undefined,
  detectors: (detector, present) =>
    inRoom(detector, present) ??
    (has(present, "models", detector.model)
      ? undefined
      : { what: say`the model “${detector.model}”`, room: detector.room }),
  // A circuit whose board is gone is still a circuit.
  boards: () => undefined,
  circuits: () => undefined,
  photos: () => undefined,
  // What was recorded of something that is gone stays on record.
  instruments: () => undefined,
  testEntries: () => undefined,
  openPoints: () => undefined,
  signatures: () => undefined,
  revisions: () => undefined,
  swaps: () => undefined,
  notes: (note, present) =>
    has(present, "storeys", note.storey) ? undefined : { what: say`the storey “${note.storey}”` },
};
