import * as Y from "yjs";
import type { Problem } from "#engine";
import { difference, loadFile } from "../commands/load-file.ts";
import type { JobDocument } from "../document/contract.ts";
import { createJobDocument } from "../document/job-document.ts";
import { type JobFile, recordKinds } from "../schema/job-file.ts";

/** How many records a merge added, changed and took away; and whether anything else of the job changed. */
export interface MergeCount {
  readonly added: number;
  readonly changed: number;
  readonly removed: number;
  readonly head: boolean;
}

/** What became of a copy. */
export type Merged =
  | {
      /** Change by change; as one difference; or the copy brought nothing that was not here. */
      readonly how: "history" | "difference" | "nothing-new";
      readonly count: MergeCount;
      readonly notes: readonly Problem[];
      readonly problems?: undefined;
    }
  | { readonly how?: undefined; readonly problems: readonly Problem[] };

/**
 * Merges a copy into the job that is here; the rules stand in RULES.md.
 *
 * @param document - The job that is here, open.
 * @param copy - The copy as it was read.
 */
export function mergeCopy(
  document: JobDocument,
  copy: { readonly job: JobFile; readonly history?: Uint8Array },
): Merged {
  const before = document.job();
  const { history } = copy;
  const relation = history && relationOf(document.ydoc, history);
  if (history && relation === "related") Y.applyUpdate(document.ydoc, history, { from: "copy" });
  else {
    const outcome = document.run(loadFile(copy.job));
    if (!outcome.done) return { problems: outcome.problems };
  }
  const count = countOf(before, document.job());
  const nothing = count.added + count.changed + count.removed === 0 && !count.head;
  return {
    how: nothing ? "nothing-new" : relation === "related" ? "history" : "difference",
    count,
    notes: history && relation === "apart" ? [{ code: "job-copy-other-beginning", values: {} }] : [],
  };
}

/** Whether two histories have a beginning in common, and go together on a trial. */
function relationOf(ydoc: Y.Doc, history: Uint8Array): "related" | "apart" {
  try {
    const trial = new Y.Doc();
    Y.applyUpdate(trial, history);
    const theirs = Y.decodeStateVector(Y.encodeStateVector(trial));
    const ours = Y.decodeStateVector(Y.encodeStateVector(ydoc));
    if (![...theirs.keys()].some((author) => ours.has(author))) return "apart";
    Y.applyUpdate(trial, Y.encodeStateAsUpdate(ydoc));
    createJobDocument(trial).job();
    return "related";
  } catch {
    return "apart";
  }
}

function countOf(before: JobFile, after: JobFile): MergeCount {
  const edits = difference(before, after);
  const known = new Map(
    recordKinds.map((kind) => [kind, new Set(before[kind].map(({ id }) => id))] as const),
  );
  const counts = { added: 0, changed: 0, removed: 0, head: false };
  for (const edit of edits)
    if (!("kind" in edit)) counts.head = true;
    else if (edit.do === "remove") counts.removed += 1;
    else if (edit.do === "put" && !known.get(edit.kind)!.has(edit.record.id)) counts.added += 1;
    else counts.changed += 1;
  return counts;
}
