import type { Words } from "#engine";
import { lengthOf, wordsOf } from "../drawing/lettering.ts";
import type { Millimetres } from "../drawing/mark.ts";
import type { Speak } from "../words/speak.ts";
import type { Column } from "./column.ts";
import { cellWords } from "./column.ts";

/** Cells keep this clear of their columns, on both sides together. */
export const cellEdges: Millimetres = 3;
/** A single word that asks for more is a name of somebody's own, and is cut; where columns are many, shorter ones are. */
const longestWords: readonly Millimetres[] = [32, 26, 22];

/**
 * The same columns, in all as wide, each of them at least as wide as its head and as the longest word in it: words of one language are longer
 * than those of another. What one column takes comes off those that have most to spare; where all of them have enough, nothing moves.
 *
 * @param rows - What will stand in them; none where only the heads matter.
 */
export function fittedColumns(
  columns: readonly Column[],
  rows: readonly (readonly Words[])[],
  speak: Speak,
): readonly Column[] {
  const total = sum(columns.map(({ width }) => width));
  const needs = longestWords
    .map((longest) =>
      columns.map((column, i) =>
        needOf(
          column,
          rows.map((row) => row[i] ?? ""),
          { speak, longest },
        ),
      ),
    )
    .reduce((roomy, tight) => (sum(roomy) > total ? tight : roomy));
  const widths = columns.map(({ width }, i) => Math.max(width, needs[i]!));
  let over = sum(widths) - total;
  for (let round = 0; over > least && round < 8 * columns.length; round++) {
    const spare = widths.map((width, i) => width - needs[i]!);
    const widest = spare.indexOf(Math.max(...spare));
    const taken = Math.min(over, Math.max(spare[widest]! / 2, Math.min(spare[widest]!, least)));
    widths[widest]! -= taken;
    over -= taken;
  }
  // Nothing to spare anywhere: all give way alike, and some word is cut.
  const share = over > least ? 1 - over / sum(widths) : 1;
  return columns.map((column, i) => ({ ...column, width: widths[i]! * share }));
}

const least: Millimetres = 0.01;

function needOf(
  { head, align }: Column,
  cells: readonly Words[],
  by: { readonly speak: Speak; readonly longest: Millimetres },
): Millimetres {
  const title = by.speak(head);
  let need = title === "" ? 0 : lengthOf(title, 2.5, "semibold");
  for (const cell of cells)
    for (const word of wordsOf(cellWords(cell, align, by.speak))) {
      const length = lengthOf(word, 2.5);
      if (length <= by.longest) need = Math.max(need, length);
    }
  return need + cellEdges + least;
}

const sum = (lengths: readonly Millimetres[]): Millimetres => lengths.reduce((total, one) => total + one, 0);
