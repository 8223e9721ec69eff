import { type Problem, say } from "#engine";
import { rowsOf } from "../csv/rows.ts";

/** One row of a table with named columns. */
export interface TableRow {
  readonly line: number;
  readonly cell: (column: string) => string;
}

/**
 * Rows of a CSV under its header, whatever the order of its columns. Letters of the header may be large or small.
 *
 * @param file - Name for the sentences. @param needed - Columns that must be there.
 */
export function tableOf(
  text: string,
  file: string,
  needed: readonly string[],
): { readonly rows: readonly TableRow[] } | { readonly problems: readonly Problem[] } {
  const cut = rowsOf(text);
  if ("openQuote" in cut)
    return { problems: [{ code: "price-list-quote-open", values: { file, line: cut.openQuote } }] };
  const [head, ...rows] = cut.rows;
  const names = head?.fields.map((field) => field.toLowerCase()) ?? [];
  const missing = needed.filter((column) => !names.includes(column));
  if (missing.length > 0)
    return {
      problems: missing.map((column) => ({
        code: "price-list-column-missing",
        values: {
          file,
          column,
          line: head?.line ?? 1,
          found: names.filter(Boolean).join(", ") || say`nothing`,
        },
      })),
    };
  const wide = rows.filter(({ fields }) => fields.length > names.length);
  if (wide.length > 0)
    return {
      problems: wide.map(({ line, fields }) => ({
        code: "price-list-row-width",
        values: { file, line, found: fields.length, expected: names.length },
      })),
    };
  return {
    rows: rows
      .filter(({ fields }) => fields.some((field) => field !== ""))
      .map(({ line, fields }) => ({
        line,
        // A cell that was led by an apostrophe against formulas loses it on the way back.
        cell: (column) => (fields[names.indexOf(column)] ?? "").trim().replace(/^'(?=[=+\-@])/, ""),
      })),
  };
}

/** A number with a point or a comma before its decimals; undefined for anything else. @example "1,50" is 1.5 */
export function numberOf(text: string): number | undefined {
  if (!/^-?\d+([.,]\d+)?$/.test(text)) return undefined;
  return Number(text.replace(",", "."));
}
