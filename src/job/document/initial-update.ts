import * as Y from "yjs";
import { loadFile } from "../commands/load-file.ts";
import type { JobFile } from "../schema/job-file.ts";
import { authorOfJob } from "./author.ts";
import { createJobDocument } from "./job-document.ts";

/**
 * The first update of a new job's document: everything that the file says. The same job gives the same update everywhere, so that two
 * devices that both begin with it have not edited it twice; another job gives one by another author, so that the two never mix unseen.
 */
export function initialUpdate(job: JobFile): Uint8Array {
  const ydoc = new Y.Doc();
  ydoc.clientID = authorOfJob(job);
  const document = createJobDocument(ydoc);
  const outcome = document.run(loadFile(job));
  document.close();
  if (!outcome.done)
    throw new Error(`A job that was read cannot be loaded: ${JSON.stringify(outcome.problems)}`);
  return Y.encodeStateAsUpdate(ydoc);
}
