import { lengthOf } from "./lettering.ts";
import type { Millimetres } from "./mark.ts";

/**
 * Widths of the columns of a legend: equal where every entry fits, otherwise each as wide as its longest entry asks, so that no
 * language loses the end of a word as long as all of them go in side by side.
 *
 * @param texts - Entries, column after column.
 * @param rows - Entries in a column, at least 1.
 */
export function columnWidths(
  texts: readonly string[],
  rows: number,
  on: {
    /** Width of all columns together. */
    readonly room: Millimetres;
    /** What a column needs beside its words. */
    readonly beside: Millimetres;
    /** No equal column is wider than this. */
    readonly most?: Millimetres;
  },
): readonly Millimetres[] {
  const columns = Math.max(1, Math.ceil(texts.length / rows));
  const even = Math.min(on.most ?? Number.POSITIVE_INFINITY, on.room / columns);
  const needs = Array.from({ length: columns }, (_, i) =>
    Math.max(0, ...texts.slice(i * rows, (i + 1) * rows).map((text) => lengthOf(text, 2.5) + on.beside)),
  );
  if (needs.every((need) => need <= even)) return needs.map(() => even);
  const asked = needs.reduce((sum, need) => sum + need, 0);
  return needs.map((need) =>
    asked > on.room ? (need * on.room) / asked : need + (on.room - asked) / columns,
  );
}

/** Where each column begins. */
export const leftsOf = (widths: readonly Millimetres[], left: Millimetres): readonly Millimetres[] =>
  widths.map((_, i) => widths.slice(0, i).reduce((sum, width) => sum + width, left));
