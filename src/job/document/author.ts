import { printOf } from "../commands/record-print.ts";

/**
 * An author for changes that follow from something alone: whoever makes them anywhere makes the same bytes, so that they are one change and not two.
 *
 * Of two that differ, one in 4 · 10⁹ pairs would meet by chance.
 */
export const authorOf = (what: object): number =>
  // As text: an update follows the order of fields too, and one author may not write one thing in two orders.
  Number.parseInt(printOf({ text: JSON.stringify(what) }).slice(0, 8), 16);
