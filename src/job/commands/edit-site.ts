import type { JobFile, JobRecords, RecordKind, SiteKind } from "../schema/job-file.ts";
import { fromSite, type SiteRecords } from "../site/to-site.ts";
import type { Command, Edit, RecordRef } from "./command.ts";
import { deletion } from "./delete-records.ts";
import { put, set } from "./record-edits.ts";
import { newTags } from "./tags.ts";

/** One step of an edit in the terms of the engine's snapshot: metres, radians. */
export type SiteStep = {
  [Kind in SiteKind]:
    | { readonly do: "put"; readonly kind: Kind; readonly record: SiteRecords[Kind] }
    | {
        readonly do: "set";
        readonly kind: Kind;
        readonly id: string;
        readonly fields: Partial<SiteRecords[Kind]>;
      }
    | { readonly do: "remove"; readonly kind: Kind; readonly id: string };
}[SiteKind];

/**
 * An edit made on the screen, where everybody works with the snapshot. Deleting takes along what makes no sense without the deleted;
 * a new detector whose tag is empty or already given gets the next free one.
 */
export const editSite = (name: string, steps: readonly SiteStep[]): Command => ({
  name,
  edits: (job) => {
    const edits: Edit[] = [];
    const removed: RecordRef[] = [];
    const taken: string[] = [];
    // Tags of detectors that go in the same step are free again: placing a room anew keeps its numbers.
    const going = new Set(steps.flatMap((step) => (step.do === "remove" ? [step.id] : [])));
    // Rooms and storeys that come in the same step count already: tags go by the storey.
    const coming = <Kind extends "rooms" | "storeys">(kind: Kind): readonly JobRecords[Kind][] =>
      steps.flatMap((step) =>
        step.do === "put" && step.kind === kind ? [step.record as JobRecords[Kind]] : [],
      );
    const staying = {
      ...job,
      storeys: [...job.storeys, ...coming("storeys")],
      rooms: [...job.rooms, ...coming("rooms")],
      detectors: job.detectors.filter((one) => !going.has(one.id)),
    };
    for (const step of steps) {
      if (step.do === "remove") removed.push({ kind: step.kind, id: step.id });
      else if (step.do === "set")
        edits.push(set(step.kind, step.id, fromSite(step.kind, step.fields as never) as never));
      else if (step.kind !== "detectors")
        edits.push(put(step.kind, fromSite(step.kind, step.record as never) as never));
      else {
        const record = step.record as SiteRecords["detectors"];
        const others = staying.detectors.filter((one) => one.id !== record.id).map((one) => one.tag);
        const clash = record.tag === "" || others.includes(record.tag) || taken.includes(record.tag);
        const tag = clash ? newTags(staying, { room: record.room, count: 1, taken })[0]! : record.tag;
        taken.push(tag);
        edits.push(put("detectors", fromSite("detectors", { ...record, tag }) as never));
      }
    }
    if (removed.length === 0) return { edits };
    // What the same step gives to another room does not go with the old one.
    const gone = deletion(withRecords(job, edits), removed);
    return "problems" in gone ? gone : { edits: [...edits, ...gone.edits] };
  },
});

/** The records of a job after edits of records, as far as deleting must know them. */
function withRecords(job: JobFile, edits: readonly Edit[]): JobFile {
  const changed: Partial<Record<RecordKind, ReadonlyMap<string, object>>> = {};
  for (const edit of edits) {
    if (!("kind" in edit) || edit.do === "remove") continue;
    const id = edit.do === "put" ? edit.record.id : edit.id;
    const known = (changed[edit.kind] ??
      new Map((job[edit.kind] as readonly { readonly id: string }[]).map((one) => [one.id, one]))) as Map<
      string,
      object
    >;
    changed[edit.kind] = known;
    if (edit.do === "put") known.set(id, edit.record);
    else if (known.has(id)) known.set(id, { ...known.get(id), ...edit.fields });
  }
  const lists = Object.entries(changed).map(([kind, records]) => [kind, [...records.values()]]);
  return { ...job, ...Object.fromEntries(lists) };
}
