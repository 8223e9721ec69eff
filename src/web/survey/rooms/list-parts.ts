import type { ListLine } from "./list-cells.ts";
import { type Item, isBare } from "./list-figures.ts";
import type { Heading, ListColumn, ListUnit } from "./list-headings.ts";
import { writtenUse } from "./uses.ts";

/** Why a line was not understood: no two sides, figures that nobody can tell apart, a size that no room has, a strange word. */
export type ListTrouble = "no-sides" | "too-many" | "side" | "height" | "word" | "use" | "long";

/** One line in its parts, before its figures are lengths. */
export interface Parts {
  readonly number: string;
  readonly name: string;
  readonly use: string;
  readonly sides: readonly [Figure, Figure];
  readonly height: Figure | undefined;
}
interface Figure {
  readonly text: string;
  /** Unit of its column's heading. */
  readonly unit: ListUnit | undefined;
}
export type Reading<T> = T | { readonly why: ListTrouble; readonly part: string };

type Cell = readonly Item[];

/** How many figures most lines end with, two or three; a line with one more has a figure in its name. */
export function usualFigures(lines: readonly Cell[]): number {
  const counts = lines.map((items) => trailing(items).length).filter((count) => count === 2 || count === 3);
  return counts.filter((count) => count === 2).length > counts.length / 2 ? 2 : 3;
}

/** The figures at the end of a line. */
function trailing(items: Cell): Cell {
  let from = items.length;
  while (from > 0 && items[from - 1]!.kind === "figure") from -= 1;
  return items.slice(from);
}

/** A line of a list whose columns have headings. */
export function partsByHeading({ cells }: ListLine, headings: readonly Heading[]): Reading<Parts> {
  const at = (column: ListColumn): number => headings.findIndex((heading) => heading.column === column);
  const cell = (column: ListColumn): string => (cells[at(column)] ?? "").trim();
  const figure = (column: ListColumn): Figure => ({ text: cell(column), unit: headings[at(column)]?.unit });
  if (cell("length") === "" || cell("width") === "") return { why: "no-sides", part: "" };
  return {
    number: cell("number"),
    name: cell("name"),
    use: cell("use"),
    sides: [figure("length"), figure("width")],
    height: cell("height") === "" ? undefined : figure("height"),
  };
}

/**
 * A line without headings, by the kind of what stands in it.
 *
 * @param how.usual - How many figures most lines end with.
 * @param how.celled - The cells are those of the list; else the line is one cell.
 */
export function partsByKind(
  cells: readonly Cell[],
  how: { readonly usual: number; readonly celled: boolean },
): Reading<Parts> {
  const { usual } = how;
  // "101 Office 3.42 × 4.10, 2.70": the comma parts nothing that is not parted anyway.
  const celled = how.celled && !cells.some((cell) => hasWords(cell) && trailing(cell).length >= 2);
  const filled = (celled ? cells : [cells.flat()]).filter((cell) => cell.length > 0);
  const mark = markOf(filled, celled);
  const left = mark === "" ? filled : celled ? filled.slice(1) : [filled[0]!.slice(1)];
  const { name, figures, after } = celled ? fromCells(left) : fromRow(left.flat());
  if (figures.length < 2) return { why: "no-sides", part: "" };
  if (after !== "" && writtenUse(after) === undefined) return { why: "word", part: after };
  const before = figuresBefore(figures, { named: name !== "", usual });
  const more = figures.slice(0, before);
  if (more.length > 1 || (more[0] !== undefined && (!isWhole(more[0]) || (celled && name !== ""))))
    return { why: "too-many", part: figures.join("  ") };
  const [length, width, height] = figures.slice(before).map((text): Figure => ({ text, unit: undefined }));
  return {
    number: mark === "" && name === "" ? more.join("") : mark,
    name: name === "" ? "" : [name, ...more].join(" "),
    use: after,
    sides: [length!, width!],
    height,
  };
}

/** How many of the figures stand before the sides: the number of a room without a name, or a figure at the end of a name. */
function figuresBefore(
  figures: readonly string[],
  { named, usual }: { readonly named: boolean; readonly usual: number },
): number {
  if (figures.length > 3) return figures.length - (named ? usual : 3);
  if (figures.length < 3) return 0;
  if (named) return usual === 2 && isWhole(figures[0]!) ? 1 : 0;
  return beginsWithNumber(figures) ? 1 : 0;
}

/** What stands at the end of a name (Office 2) or is a room's number, where it is a figure at all. */
const isWhole = (text: string): boolean => /^\d+$/.test(text);

/** "101" in "101  3.42  4.10": whole, with a last figure that has decimals and could not be a height beside a side. */
function beginsWithNumber(figures: readonly string[]): boolean {
  const [first, last] = [Number(figures[0]), Number(figures[2]!.replace(",", "."))];
  return Number.isInteger(first) && !Number.isInteger(last) && !(first <= 60 && last >= 2 && last <= 4);
}

/** The mark of a room before its name: a figure, or letters with figures, where words follow. */
function markOf(filled: readonly Cell[], celled: boolean): string {
  const first = celled ? filled[0] : filled[0]?.slice(0, 1);
  const rest = celled ? filled.slice(1).flat() : filled[0]?.slice(1);
  if (first?.length !== 1 || !rest?.some(({ kind }) => kind === "word")) return "";
  const { kind, text } = first[0]!;
  if (!/\d/.test(text) || (kind === "figure" && !isBare(text))) return "";
  return celled || rest[0]?.kind === "word" ? text : "";
}

interface Found {
  readonly name: string;
  readonly figures: readonly string[];
  /** Words that stand elsewhere than before the figures. */
  readonly after: string;
}

/** In cells the first with words is the name. */
function fromCells(cells: readonly Cell[]): Found {
  const [first, ...others] = cells.filter(hasWords);
  return {
    name: joined(first ?? []),
    figures: cells.filter((cell) => !hasWords(cell)).flatMap((cell) => cell.map(({ text }) => text)),
    after: others.map(joined).join(" "),
  };
}

/** In a row of words the name stands before the last figures, and what stands behind them is the use. */
function fromRow(items: Cell): Found {
  let end = items.length;
  while (end > 0 && items[end - 1]!.kind === "word") end -= 1;
  const figures = trailing(items.slice(0, end));
  return {
    name: joined(items.slice(0, end - figures.length)),
    figures: figures.map(({ text }) => text),
    after: joined(items.slice(end)),
  };
}

const hasWords = (cell: Cell): boolean => cell.some(({ kind }) => kind === "word");

const joined = (items: Cell): string => items.map(({ text }) => text).join(" ");
