import { same } from "../document/plain.ts";
import { headSchemas, type JobFile, type JobRecords, jobVersion, recordKinds } from "../schema/job-file.ts";
import type { Command, Edit } from "./command.ts";
import { put, remove } from "./record-edits.ts";

/**
 * Brings an edited file back into the job as a difference: one step that can be undone, and that leaves alone what did not change.
 * A file of a newer program is taken only into an empty job, which can then only be looked at.
 */
export const loadFile = (file: JobFile): Command => ({
  name: "load-file",
  edits: (job) => {
    const newer = file.version > jobVersion;
    if (newer && recordKinds.some((kind) => job[kind].length > 0))
      return { problems: [{ code: "job-newer", values: { version: file.version, newest: jobVersion } }] };
    const edits = difference(job, file);
    return { edits: newer ? [...edits, { do: "version", version: file.version }] : edits };
  },
});

/** The edits that make `after` of `before`, but for the order of records. */
export function difference(before: JobFile, after: JobFile): readonly Edit[] {
  const edits: Edit[] = [];
  for (const kind of recordKinds) {
    const old = new Map(
      (before[kind] as readonly JobRecords[typeof kind][]).map((record) => [record.id, record]),
    );
    for (const record of after[kind] as readonly JobRecords[typeof kind][]) {
      if (!same(old.get(record.id), record)) edits.push(put(kind, record));
      old.delete(record.id);
    }
    for (const id of old.keys()) edits.push(remove(kind, id));
  }
  // A job keeps the identity that it has.
  if (before.id === undefined && after.id !== undefined)
    edits.push({ do: "extra", name: "id", value: after.id });
  if (before.name !== after.name) edits.push({ do: "name", name: after.name });
  const gone = Object.fromEntries(Object.keys(before.details).map((name) => [name, undefined]));
  if (!same(before.details, after.details))
    edits.push({ do: "details", fields: { ...gone, ...after.details } });
  const unseen = Object.fromEntries(Object.keys(before.visit).map((name) => [name, undefined]));
  if (!same(before.visit, after.visit)) edits.push({ do: "visit", fields: { ...unseen, ...after.visit } });
  if (!same(before.defaults, after.defaults)) edits.push({ do: "defaults", defaults: after.defaults });
  const extras = new Set([...Object.keys(before), ...Object.keys(after)].filter((name) => !known.has(name)));
  // In an order of their own: the same file makes the same update wherever it is read.
  for (const name of [...extras].sort()) {
    const [old, now] = [extraOf(before, name), extraOf(after, name)];
    if (!same(old, now)) edits.push({ do: "extra", name, value: now });
  }
  return edits;
}

const known = new Set<string>([...Object.keys(headSchemas), ...recordKinds]);
const extraOf = (job: JobFile, name: string): unknown =>
  (job as unknown as Readonly<Record<string, unknown>>)[name];
