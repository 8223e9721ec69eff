import * as Y from "yjs";
import { authorOf, authorOfJob } from "../document/author.ts";
import { initialUpdate } from "../document/initial-update.ts";
import type { JobFile } from "../schema/job-file.ts";

/** Between a job's identity and the mark of where its history began; no identity holds two hyphens in a row. */
const mark = "--";
/** Part of the document, and of no file, that says under which id a store keeps it where that is not the identity. */
const keptMap = "kept";

/** A job that a store begins to keep. */
export interface BegunJob {
  /** Under which it is kept and synced: the identity, or the identity with the mark of another beginning. */
  readonly id: string;
  readonly update: Uint8Array;
}

/**
 * Begins to keep a job.
 *
 * One that brings its history is kept where the history is kept elsewhere, so that they sync as one. One that says whose copy it is and
 * brings none begins a history of its own: it is kept apart, because two histories that began apart would push out each other's records.
 *
 * @param read.job - The job; without an identity it gets one.
 * @param newId - Makes ids that no one else makes.
 */
export function beginJob(
  read: { readonly job: JobFile; readonly history?: Uint8Array },
  newId: () => string,
): BegunJob {
  const { job, history } = read;
  if (job.id === undefined) {
    const id = newId();
    return { id, update: initialUpdate({ ...job, id }) };
  }
  const ydoc = new Y.Doc();
  if (history === undefined) {
    const id = `${job.id}${mark}${authorOfJob(job).toString(36)}`;
    Y.applyUpdate(ydoc, initialUpdate(job));
    ydoc.clientID = authorOf({ kept: id });
    ydoc.getMap(keptMap).set("id", id);
    return { id, update: Y.encodeStateAsUpdate(ydoc) };
  }
  Y.applyUpdate(ydoc, history);
  const kept = ydoc.getMap(keptMap).get("id");
  return { id: typeof kept === "string" && identityOf(kept) === job.id ? kept : job.id, update: history };
}

/** Which job a store keeps under an id. @example identityOf("a1--x9") is a1 */
export const identityOf = (keptAs: string): string => keptAs.split(mark, 1)[0]!;

/** The job without what it is known by: the copy becomes a job of its own. */
export function separateJob(job: JobFile): JobFile {
  const { id: _, ...rest } = job;
  return rest;
}
