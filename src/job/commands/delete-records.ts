import type { Problem } from "#engine";
import type { JobFile } from "../schema/job-file.ts";
import { anchoredInSecond } from "./anchored-opening.ts";
import type { Command, Edit, RecordRef } from "./command.ts";
import { put, recordOf, remove, set } from "./record-edits.ts";

/**
 * Deletes records with all that makes no sense without them: a storey with its rooms, a room with what stands and hangs in it.
 * A door to a room that stays becomes a door to the outside. A model that is still in use is not deleted.
 */
export const deleteRecords = (refs: readonly RecordRef[]): Command => ({
  name: "delete-records",
  edits: (job) => deletion(job, refs),
});

const inRooms = [
  "floorPieces",
  "obstacles",
  "dwellPlaces",
  "interference",
  "ceilingThings",
  "luminaires",
  "switches",
  "detectors",
] as const;

export function deletion(
  job: JobFile,
  refs: readonly RecordRef[],
): { readonly edits: readonly Edit[] } | { readonly problems: readonly Problem[] } {
  const named = (kind: RecordRef["kind"]): Set<string> =>
    new Set(refs.filter((ref) => ref.kind === kind).map((ref) => ref.id));
  const storeys = named("storeys");
  const rooms = named("rooms");
  for (const room of job.rooms) if (storeys.has(room.storey)) rooms.add(room.id);
  const gone = new Map<RecordRef["kind"], Set<string>>([
    ["storeys", storeys],
    ["rooms", rooms],
    ["openings", named("openings")],
    ["models", named("models")],
  ]);
  const underlays = named("underlays");
  for (const underlay of job.underlays) if (storeys.has(underlay.storey)) underlays.add(underlay.id);
  gone.set("underlays", underlays);
  for (const kind of inRooms) {
    const ids = named(kind);
    for (const record of job[kind]) if (rooms.has(record.room)) ids.add(record.id);
    gone.set(kind, ids);
  }
  const notes = named("notes");
  for (const note of job.notes) if (storeys.has(note.storey)) notes.add(note.id);
  gone.set("notes", notes);
  const seen = new Set(job.notes.filter(({ id }) => !notes.has(id)).flatMap(({ photos }) => photos));
  const lost = job.notes.filter(({ id }) => notes.has(id)).flatMap(({ photos }) => photos);
  gone.set("photos", new Set([...named("photos"), ...lost.filter((id) => !seen.has(id))]));
  gone.set("boards", named("boards"));
  for (const kind of ["circuits", "instruments", "openPoints"] as const) gone.set(kind, named(kind));
  const problems = modelsInUse(job, gone.get("models")!, gone.get("detectors")!);
  if (problems.length > 0) return { problems };

  const edits: Edit[] = [];
  for (const opening of job.openings) {
    if (gone.get("openings")!.has(opening.id)) continue;
    const [first, second] = opening.rooms;
    const without = { first: rooms.has(first), second: second !== null && rooms.has(second) };
    if (without.first && (second === null || without.second)) gone.get("openings")!.add(opening.id);
    else if (without.first)
      edits.push(
        put("openings", anchoredInSecond(opening, second!, recordOf(job, "rooms", second!)?.outline ?? [])),
      );
    else if (without.second)
      edits.push(
        set("openings", opening.id, {
          rooms: [first, null],
          opensInto: opening.opensInto === second ? null : opening.opensInto,
        }),
      );
  }
  for (const detector of job.detectors)
    if (!gone.get("detectors")!.has(detector.id) && detector.controls.some((room) => rooms.has(room)))
      edits.push(
        set("detectors", detector.id, { controls: detector.controls.filter((room) => !rooms.has(room)) }),
      );
  for (const [kind, ids] of gone) for (const id of ids) edits.push(remove(kind, id));
  return { edits };
}

function modelsInUse(
  job: JobFile,
  models: ReadonlySet<string>,
  detectors: ReadonlySet<string>,
): readonly Problem[] {
  return [...models].flatMap((id): readonly Problem[] => {
    const users = job.detectors.filter((detector) => detector.model === id && !detectors.has(detector.id));
    if (users.length === 0) return [];
    return [
      {
        code: "job-model-in-use",
        values: { count: users.length, title: recordOf(job, "models", id)?.title ?? id },
        records: [id, ...users.map((detector) => detector.id)],
      },
    ];
  });
}
