import * as Y from "yjs";
import type { Problem } from "#engine";
import { readRecord } from "../parse/read-record.ts";
import { placeSaid } from "../parse/record-words.ts";
import {
  headSchemas,
  type JobFile,
  type JobRecords,
  jobFormat,
  jobVersion,
  type RecordKind,
  recordKinds,
} from "../schema/job-file.ts";
import { same } from "./plain.ts";
import { placeField, planningFrom, type Shape } from "./shape.ts";

/** The job of a Yjs document, read again only where it changed. */
export interface DocumentReader {
  readonly job: () => JobFile;
  /** Records that cannot be used as they came together; they stay in the document. */
  readonly problems: () => readonly Problem[];
  /** Takes note of what a transaction changed. */
  readonly changed: (events: readonly Y.YEvent<Y.AbstractType<unknown>>[], part: Y.Map<unknown>) => void;
}

interface KnownRecord {
  readonly place: number;
  readonly record: JobRecords[RecordKind] | undefined;
  readonly problems: readonly Problem[];
}

export function documentReader(shape: Shape): DocumentReader {
  const known = new Map<RecordKind, Map<string, KnownRecord>>(recordKinds.map((kind) => [kind, new Map()]));
  const staleLists = new Set<RecordKind>(recordKinds);
  let head = true;
  let job: JobFile | undefined;
  let problems: readonly Problem[] = [];

  const readOne = (kind: RecordKind, id: string, fields: unknown): KnownRecord => {
    const raw = plainRecord(id, fields);
    const before = known.get(kind)!.get(id);
    const place = typeof raw.place === "number" ? raw.place : Number.MAX_SAFE_INTEGER;
    const read = readRecord(kind, raw.fields);
    if (!read.record)
      return {
        place,
        record: undefined,
        problems: read.problems.map((problem) => ({
          code: "job-record-broken",
          values: { place: placeSaid(kind, raw.fields), reason: problem.values.reason ?? problem.code },
          records: [id],
        })),
      };
    const kept = before?.record && same(before.record, read.record) ? before.record : read.record;
    return { place, record: kept, problems: [] };
  };

  const list = (kind: RecordKind): readonly JobRecords[RecordKind][] => {
    const records = known.get(kind)!;
    for (const [id, fields] of shape.records[kind])
      if (!records.has(id)) records.set(id, readOne(kind, id, fields));
    const sorted = [...records]
      .filter(([, entry]) => entry.record)
      .sort(([idA, a], [idB, b]) => a.place - b.place || (idA < idB ? -1 : 1))
      .map(([, entry]) => entry.record!);
    const before = job?.[kind] as readonly JobRecords[RecordKind][] | undefined;
    return before && before.length === sorted.length && before.every((record, i) => record === sorted[i])
      ? before
      : sorted;
  };

  const update = (): JobFile => {
    if (job && !head && staleLists.size === 0) return job;
    const next: Record<string, unknown> = head || !job ? readHead(shape, job) : { ...job };
    for (const kind of recordKinds) next[kind] = staleLists.has(kind) || !job ? list(kind) : job[kind];
    problems = [...known.values()].flatMap((records) =>
      [...records.values()].flatMap((entry) => entry.problems),
    );
    staleLists.clear();
    head = false;
    job = next as unknown as JobFile;
    return job;
  };

  return {
    job: update,
    problems: () => {
      update();
      return problems;
    },
    changed: (events, part) => {
      const kind = recordKinds.find((name) => (shape.records[name] as Y.Map<unknown>) === part);
      if (kind === undefined) {
        head = true;
        return;
      }
      staleLists.add(kind);
      const records = known.get(kind)!;
      for (const event of events) {
        const ids = event.path.length > 0 ? [String(event.path[0])] : [...event.changes.keys.keys()];
        for (const id of ids) {
          const fields = shape.records[kind].get(id);
          if (fields === undefined) records.delete(id);
          else records.set(id, readOne(kind, id, fields));
        }
      }
    },
  };
}

/** Fields of a record as plain values; its id is its key. */
function plainRecord(
  id: string,
  fields: unknown,
): { readonly fields: Record<string, unknown>; readonly place: unknown } {
  if (!(fields instanceof Y.Map)) return { fields: { id }, place: undefined };
  const plain: Record<string, unknown> = { id };
  for (const [name, value] of fields as Y.Map<unknown>)
    if (name !== placeField && name !== "id") plain[name] = value;
  return { fields: plain, place: fields.get(placeField) };
}

function readHead(shape: Shape, before: JobFile | undefined): Record<string, unknown> {
  const version = shape.head.get("version");
  const read = {
    name: headSchemas.name.safeParse(shape.head.get("name")).data ?? "",
    details: headSchemas.details.safeParse(Object.fromEntries(shape.details.entries())).data ?? {},
    visit: headSchemas.visit.safeParse(Object.fromEntries(shape.visit.entries())).data ?? {},
    defaults: headSchemas.defaults.safeParse(planningFrom(shape.planning.entries())).data ?? {},
  };
  const extras = [...shape.head.entries()].filter(
    ([name, value]) =>
      name !== "name" && name !== "version" && (name !== "id" || headSchemas.id.safeParse(value).success),
  );
  return {
    format: jobFormat,
    version: typeof version === "number" ? version : jobVersion,
    name: read.name,
    details: before && same(before.details, read.details) ? before.details : read.details,
    defaults: before && same(before.defaults, read.defaults) ? before.defaults : read.defaults,
    visit: before && same(before.visit, read.visit) ? before.visit : read.visit,
    ...Object.fromEntries(extras.sort(([a], [b]) => (a < b ? -1 : 1))),
  };
}
