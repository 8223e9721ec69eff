import * as Y from "yjs";
import type { JobFile } from "../schema/job-file.ts";
import type { JobDocument } from "./contract.ts";
import { initialUpdate } from "./initial-update.ts";
import { createJobDocument, type DocumentWorld } from "./job-document.ts";

/** The document of a job that was read: with the history that came with it, else at the beginning of one. */
export function documentOfRead(
  read: { readonly job: JobFile; readonly history?: Uint8Array },
  world?: DocumentWorld,
): JobDocument {
  const ydoc = new Y.Doc();
  Y.applyUpdate(ydoc, read.history ?? initialUpdate(read.job));
  return createJobDocument(ydoc, world);
}

/** Everything that a document holds, as one Yjs update. */
export const historyOf = ({ ydoc }: JobDocument): Uint8Array => Y.encodeStateAsUpdate(ydoc);
