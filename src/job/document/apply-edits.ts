import * as Y from "yjs";
import type { Problem } from "#engine";
import type { Edit } from "../commands/command.ts";
import { readRecord } from "../parse/read-record.ts";
import { recordSaid } from "../parse/record-words.ts";
import { type JobFile, type JobRecords, type RecordKind, recordKinds } from "../schema/job-file.ts";
import { same } from "./plain.ts";
import { placeField, planningEntries, type Shape } from "./shape.ts";

/** What a change comes to once every record of it was judged: whole records to write, and what else changes. */
export interface JudgedEdits {
  /** By kind and id: the record afterwards, or undefined where it goes. */
  readonly records: ReadonlyMap<RecordKind, ReadonlyMap<string, JobRecords[RecordKind] | undefined>>;
  readonly others: readonly Exclude<Edit, { readonly kind: RecordKind }>[];
  readonly made: readonly string[];
}

/**
 * Judges the edits of a command against the job as it is, before anything is written: one broken record refuses all of them.
 */
export function judged(
  edits: readonly Edit[],
  job: JobFile,
): JudgedEdits | { readonly problems: readonly Problem[] } {
  const records = new Map<RecordKind, Map<string, JobRecords[RecordKind] | undefined>>(
    recordKinds.map((kind) => [kind, new Map()]),
  );
  const present = new Map<RecordKind, Map<string, JobRecords[RecordKind]>>();
  const find = (kind: RecordKind, id: string): JobRecords[RecordKind] | undefined => {
    const pending = records.get(kind)!;
    if (pending.has(id)) return pending.get(id);
    if (!present.has(kind))
      present.set(
        kind,
        new Map((job[kind] as readonly JobRecords[RecordKind][]).map((record) => [record.id, record])),
      );
    return present.get(kind)!.get(id);
  };
  const problems: Problem[] = [];
  const others: JudgedEdits["others"][number][] = [];
  const made: string[] = [];
  for (const edit of edits) {
    if (!("kind" in edit)) {
      others.push(edit);
      continue;
    }
    const { kind } = edit;
    const id = edit.do === "put" ? edit.record.id : edit.id;
    const before = find(kind, id);
    if (edit.do === "remove") {
      if (before) records.get(kind)!.set(id, undefined);
      continue;
    }
    if (edit.do === "set" && !before) {
      problems.push({ code: "job-record-gone", values: { what: recordSaid(kind, id) }, records: [id] });
      continue;
    }
    const read = readRecord(kind, edit.do === "put" ? edit.record : withFields(before, edit.fields));
    if (read.record) {
      records.get(kind)!.set(id, read.record);
      if (edit.do === "put" && !before) made.push(id);
    } else problems.push(...read.problems);
  }
  return problems.length > 0 ? { problems } : { records, others, made };
}

/** A record with some fields set; a field that is set to undefined goes. */
const withFields = (record: JobRecords[RecordKind] | undefined, fields: object): Record<string, unknown> =>
  Object.fromEntries(Object.entries({ ...record, ...fields }).filter(([, value]) => value !== undefined));

/** Writes judged edits, touching only what differs, so that what others do to the rest of a record survives. Call it inside a transaction. */
export function write(shape: Shape, changes: JudgedEdits): void {
  for (const [kind, changed] of changes.records) {
    const map = shape.records[kind];
    let next = changed.size > 0 ? firstFreePlace(map) : 0;
    for (const [id, record] of changed) {
      if (record === undefined) {
        map.delete(id);
        continue;
      }
      const fields = map.get(id);
      if (fields instanceof Y.Map) writeFields(fields, record);
      else map.set(id, new Y.Map([...entriesOf(record), [placeField, next++]]));
    }
  }
  for (const edit of changes.others) writeOther(shape, edit);
}

function writeFields(fields: Y.Map<unknown>, record: JobRecords[RecordKind]): void {
  const wanted = new Map(entriesOf(record));
  for (const name of [...fields.keys()])
    if (name !== placeField && name !== "id" && !wanted.has(name)) fields.delete(name);
  for (const [name, value] of wanted)
    if (!fields.has(name) || !same(fields.get(name), value)) fields.set(name, value);
}

const entriesOf = (record: JobRecords[RecordKind]): [string, unknown][] =>
  Object.entries(record).filter(([name, value]) => name !== "id" && value !== undefined);

const firstFreePlace = (map: Y.Map<Y.Map<unknown>>): number => {
  let last = -1;
  for (const fields of map.values()) {
    const place = fields instanceof Y.Map ? fields.get(placeField) : undefined;
    if (typeof place === "number" && place > last) last = place;
  }
  return last + 1;
};

function writeOther(shape: Shape, edit: JudgedEdits["others"][number]): void {
  switch (edit.do) {
    case "name":
      // A job without a name and one whose name is empty are the same: no step of undo is made of that.
      if ((shape.head.get("name") ?? "") !== edit.name) shape.head.set("name", edit.name);
      return;
    case "version":
      writeEntry(shape.head, "version", edit.version);
      return;
    case "extra":
      writeEntry(shape.head, edit.name, edit.value);
      return;
    case "details":
      for (const [name, value] of Object.entries(edit.fields)) writeEntry(shape.details, name, value);
      return;
    case "visit":
      for (const [name, value] of Object.entries(edit.fields)) writeEntry(shape.visit, name, value);
      return;
    case "defaults": {
      const wanted = new Map(planningEntries(edit.defaults));
      for (const name of [...shape.planning.keys()]) if (!wanted.has(name)) shape.planning.delete(name);
      for (const [name, value] of wanted) writeEntry(shape.planning, name, value);
    }
  }
}

function writeEntry(map: Y.Map<unknown>, name: string, value: unknown): void {
  if (value === undefined) map.delete(name);
  else if (!same(map.get(name), value)) map.set(name, value);
}
