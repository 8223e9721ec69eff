import type { Words } from "#engine";
import type { Speak } from "../words/speak.ts";

/**
 * Rows as CSV (RFC 4180): comma, CRLF, quotes where needed; a byte order mark, since spreadsheets take UTF-8 for something else without it.
 *
 * A cell that a spreadsheet would take for a formula, because it begins with = + - @, a tab or a line break, is led by an apostrophe:
 * names in a job come from files of strangers. Figures of our own are no texts, so that a negative one still adds up.
 */
export const csvOf = (rows: readonly (readonly (Words | number)[])[], speak: Speak): string =>
  `\ufeff${rows.map((row) => row.map((cell) => cellOf(typeof cell === "number" ? cell : speak(cell))).join(",")).join("\r\n")}\r\n`;

/** A text led by an apostrophe where a spreadsheet would take it for a formula. */
export const guarded = (text: string): string => (/^[=+\-@\t\r\n]/.test(text) ? `'${text}` : text);

function cellOf(value: string | number): string {
  const safe = typeof value === "number" ? String(value) : guarded(value);
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
