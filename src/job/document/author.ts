import { printOf } from "../commands/record-print.ts";
import type { JobFile } from "../schema/job-file.ts";

/**
 * An author for changes that follow from something alone: whoever makes them anywhere makes the same bytes, so that they are one change and not two.
 *
 * Of two that differ, one in 4 · 10⁹ pairs would meet by chance.
 */
export const authorOf = (what: object): number =>
  // As text: an update follows the order of fields too, and one author may not write one thing in two orders.
  Number.parseInt(printOf({ text: JSON.stringify(what) }).slice(0, 8), 16);

/** The author of a job's first update. The order of the fields at the top of a file is nobody's choice. */
export const authorOfJob = (job: JobFile): number =>
  authorOf(Object.entries(job).sort(([a], [b]) => (a < b ? -1 : 1)));
