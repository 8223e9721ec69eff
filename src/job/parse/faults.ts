import type { JobRecords, RecordKind } from "../schema/job-file.ts";

/** Faults that concern several fields of one record, as ends of sentences. */
export function faultsOf<Kind extends RecordKind>(kind: Kind, record: JobRecords[Kind]): readonly string[] {
  return (checks[kind] as ((record: JobRecords[Kind]) => readonly string[]) | undefined)?.(record) ?? [];
}

const checks: { readonly [Kind in RecordKind]?: (record: JobRecords[Kind]) => readonly string[] } = {
  floorPieces: (piece) => [
    ...when(piece.high < piece.low, `high (${piece.high}) lies below low (${piece.low})`),
    ...when(
      piece.kind === "flight" && (!piece.from || !piece.to || same(piece.from, piece.to)),
      "a flight needs from and to: the edges where it begins and where it ends",
    ),
  ],
  openings: (opening) => [
    ...when(same(opening.from, opening.to), "from and to are the same point"),
    ...when(opening.head <= opening.sill, `head (${opening.head}) must lie above sill (${opening.sill})`),
    ...when(opening.rooms[0] === opening.rooms[1], "it joins a room to itself"),
    ...when(
      opening.opensInto !== null && !opening.rooms.includes(opening.opensInto),
      `opensInto is “${opening.opensInto}”, which is none of its rooms`,
    ),
  ],
  obstacles: (obstacle) =>
    when(obstacle.top <= obstacle.base, `top (${obstacle.top}) must lie above base (${obstacle.base})`),
  models: (model) => [
    ...when(
      model.mounting.max < model.mounting.min,
      `mounting.max (${model.mounting.max}) lies below mounting.min (${model.mounting.min})`,
    ),
    ...(["seated", "towards", "across", "sound"] as const).flatMap((kind) => {
      const heights = (model.zones[kind] ?? []).map((row) => row.height);
      return when(new Set(heights).size < heights.length, `zones.${kind} has two rows for one height`);
    }),
  ],
};

const when = (wrong: boolean, reason: string): readonly string[] => (wrong ? [reason] : []);

const same = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-4;
