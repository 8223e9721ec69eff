import { addedKinds, type JobFile, type KeptKind } from "../schema/job-file.ts";
import type { Command, Edit } from "./command.ts";
import { deletion } from "./delete-records.ts";
import { recordOf } from "./record-edits.ts";

/** One step of an edit of what calculations do not look at: drawings, boards, circuits, notes, photographs, the visit, the title block. */
export type KeptStep =
  | Extract<Edit, { readonly kind: KeptKind }>
  | Extract<Edit, { readonly do: "visit" | "details" }>;

/** Changes such records in one step. Deleting takes along what makes no sense without the deleted: photographs with their note. */
export const editKept = (name: string, steps: readonly KeptStep[]): Command => ({
  name,
  edits: (job) => {
    const rewritten = steps.filter((step) => isRewriting(step, job));
    if (rewritten.length > 0)
      return {
        problems: rewritten.map((step) => {
          const id = step.do === "put" ? step.record.id : "id" in step ? step.id : "";
          return { code: "job-entry-stands", values: { id }, records: [id] };
        }),
      };
    const removed = steps.filter((step) => step.do === "remove");
    const others = steps.filter((step) => step.do !== "remove");
    if (removed.length === 0) return { edits: others };
    const gone = deletion(
      job,
      removed.map(({ kind, id }) => ({ kind, id })),
    );
    return "problems" in gone ? gone : { edits: [...others, ...gone.edits] };
  },
});

/** Whether a step would change what was once recorded. */
function isRewriting(step: KeptStep, job: JobFile): boolean {
  if (!("kind" in step) || !(addedKinds as readonly string[]).includes(step.kind)) return false;
  return step.do !== "put" || recordOf(job, step.kind, step.record.id) !== undefined;
}
