import type { JobRecords, RecordInputs, RecordKind } from "../schema/job-file.ts";
import type { Edit, Fields } from "./command.ts";

// A union over all kinds cannot be built from a generic kind without a word to the compiler; it is said here, once.

export const put = <Kind extends RecordKind>(
  kind: Kind,
  record: RecordInputs[Kind] | JobRecords[Kind],
): Edit => ({ do: "put", kind, record }) as unknown as Edit;

export const set = <Kind extends RecordKind>(kind: Kind, id: string, fields: Fields<Kind>): Edit =>
  ({ do: "set", kind, id, fields }) as unknown as Edit;

export const remove = (kind: RecordKind, id: string): Edit => ({ do: "remove", kind, id }) as Edit;

/** A record of a job by kind and id. */
export const recordOf = <Kind extends RecordKind>(
  job: { readonly [K in RecordKind]: readonly JobRecords[K][] },
  kind: Kind,
  id: string,
): JobRecords[Kind] | undefined =>
  (job[kind] as readonly JobRecords[Kind][]).find((record) => record.id === id);
