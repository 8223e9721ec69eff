import { type Said, say } from "#engine";
import type { JobRecords, RecordKind } from "../schema/job-file.ts";

/** Faults that concern several fields of one record, as ends of sentences. */
export function faultsOf<Kind extends RecordKind>(kind: Kind, record: JobRecords[Kind]): readonly Said[] {
  return (checks[kind] as ((record: JobRecords[Kind]) => readonly Said[]) | undefined)?.(record) ?? [];
}

const checks: { readonly [Kind in RecordKind]?: (record: JobRecords[Kind]) => readonly Said[] } = {
  floorPieces: (piece) => [
    ...when(piece.high < piece.low, say`high (${piece.high}) lies below low (${piece.low})`),
    ...when(
      piece.kind === "flight" && (!piece.from || !piece.to || same(piece.from, piece.to)),
      say`a flight needs from and to: the edges where it begins and where it ends`,
    ),
  ],
  openings: (opening) => [
    ...when(same(opening.from, opening.to), say`from and to are the same point`),
    ...when(opening.head <= opening.sill, say`head (${opening.head}) must lie above sill (${opening.sill})`),
    ...when(opening.rooms[0] === opening.rooms[1], say`it joins a room to itself`),
    ...when(
      opening.opensInto !== null && !opening.rooms.includes(opening.opensInto),
      say`opensInto is “${opening.opensInto ?? ""}”, which is none of its rooms`,
    ),
  ],
  obstacles: (obstacle) =>
    when(obstacle.top <= obstacle.base, say`top (${obstacle.top}) must lie above base (${obstacle.base})`),
  models: (model) => [
    ...when(
      model.mounting.max < model.mounting.min,
      say`mounting.max (${model.mounting.max}) lies below mounting.min (${model.mounting.min})`,
    ),
    ...(["seated", "towards", "across", "sound"] as const).flatMap((kind) => {
      const heights = (model.zones[kind] ?? []).map((row) => row.height);
      return when(new Set(heights).size < heights.length, say`zones.${kind} has two rows for one height`);
    }),
  ],
};

const when = (wrong: boolean, reason: Said): readonly Said[] => (wrong ? [reason] : []);

const same = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-4;
