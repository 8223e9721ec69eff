import type { Point } from "#engine";
import type { JobFile, JobRecords, RecordKind } from "../schema/job-file.ts";
import { anchoredInSecond } from "./anchored-opening.ts";
import { gone } from "./change-records.ts";
import type { Command, CommandWorld, Edit, RecordRef } from "./command.ts";
import { put, recordOf } from "./record-edits.ts";
import { inReadingOrder, newTags } from "./tags.ts";

/**
 * Makes a second one beside the first; a room comes with what stands and hangs in it, its doors lead outside, its detectors get tags of their own.
 *
 * @param options.by - How far to the side. [m]
 */
export const duplicateRecord = (ref: RecordRef, options: { readonly by: Point }): Command => ({
  name: "duplicate-record",
  edits: (job, world) => {
    const record = recordOf(job, ref.kind, ref.id);
    if (!record) return { problems: [gone(ref.kind, ref.id)] };
    if (ref.kind === "rooms")
      return { edits: roomCopy(job, world, record as JobRecords["rooms"], options.by) };
    const copy = { ...shifted(record, options.by), id: world.newId(ref.kind) };
    if (ref.kind !== "detectors") return { edits: [put(ref.kind, copy)] };
    const detector = copy as JobRecords["detectors"];
    return {
      edits: [
        put("detectors", {
          ...detector,
          pinned: false,
          tag: newTags(job, { room: detector.room, count: 1 })[0]!,
        }),
      ],
    };
  },
});

const contents = [
  "floorPieces",
  "obstacles",
  "dwellPlaces",
  "interference",
  "ceilingThings",
  "luminaires",
  "switches",
] as const;

function roomCopy(job: JobFile, world: CommandWorld, room: JobRecords["rooms"], by: Point): readonly Edit[] {
  const id = world.newId("rooms");
  const edits: Edit[] = [put("rooms", { ...shifted(room, by), id })];
  for (const kind of contents)
    for (const record of job[kind])
      if (record.room === room.id)
        edits.push(put(kind, { ...shifted(record, by), id: world.newId(kind), room: id } as never));
  for (const opening of job.openings) {
    if (!opening.rooms.includes(room.id)) continue;
    const own = opening.rooms[0] === room.id ? opening : anchoredInSecond(opening, room.id, room.outline);
    const into = own.opensInto === room.id ? id : null;
    edits.push(
      put("openings", {
        ...shifted(own, by),
        id: world.newId("openings"),
        rooms: [id, null],
        opensInto: into,
      }),
    );
  }
  const detectors = inReadingOrder(job.detectors.filter((detector) => detector.room === room.id));
  const tags = newTags(job, { room: room.id, count: detectors.length });
  for (const [index, detector] of detectors.entries())
    edits.push(
      put("detectors", {
        ...shifted(detector, by),
        id: world.newId("detectors"),
        room: id,
        controls: detector.controls.map((other) => (other === room.id ? id : other)),
        tag: tags[index]!,
        pinned: false,
      }),
    );
  return edits;
}

/** A record with every place of the plan in it moved. */
export function shifted<Kept extends JobRecords[RecordKind]>(record: Kept, by: Point): Kept {
  const moved = (place: Point): [number, number] => [tidy(place[0] + by[0]), tidy(place[1] + by[1])];
  const copy: Record<string, unknown> = { ...record };
  for (const field of ["at", "from", "to"])
    if (Array.isArray(copy[field])) copy[field] = moved(copy[field] as never);
  for (const field of ["outline", "footprint"])
    if (Array.isArray(copy[field])) copy[field] = (copy[field] as readonly Point[]).map(moved);
  for (const field of ["holes", "noDevices"])
    if (Array.isArray(copy[field]))
      copy[field] = (copy[field] as readonly (readonly Point[])[]).map((ring) => ring.map(moved));
  const grid = copy.ceilingGrid as JobRecords["rooms"]["ceilingGrid"];
  if (grid) copy.ceilingGrid = { ...grid, origin: moved(grid.origin) };
  return copy as unknown as Kept;
}

const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;
