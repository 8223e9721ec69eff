import * as Y from "yjs";
import { loadFile } from "../commands/load-file.ts";
import type { JobFile } from "../schema/job-file.ts";
import { createJobDocument } from "./job-document.ts";

/** Author of first updates. The same job gives the same update everywhere, so that two devices that both begin with it have not edited it twice. */
const nobody = 1;

/** The first update of a new job's document: everything that the file says. */
export function initialUpdate(job: JobFile): Uint8Array {
  const ydoc = new Y.Doc();
  ydoc.clientID = nobody;
  const document = createJobDocument(ydoc);
  const outcome = document.run(loadFile(job));
  document.close();
  if (!outcome.done)
    throw new Error(`A job that was read cannot be loaded: ${JSON.stringify(outcome.problems)}`);
  return Y.encodeStateAsUpdate(ydoc);
}
