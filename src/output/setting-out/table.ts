import { english, type Words } from "#engine";
import { ink, muted } from "../drawing/ink.ts";
import { fitted } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint } from "../drawing/mark.ts";
import type { Speak } from "../words/speak.ts";
import { type Column, cellWords } from "./column.ts";
import { cellEdges, fittedColumns } from "./fitted-columns.ts";

export { type Column, cellWords };

export const rowHeight: Millimetres = 5.4;
export const headHeight: Millimetres = 6.4;
/** A line that goes on with its row stands closer: the row reads as one. */
export const goingOnHeight: Millimetres = 3.7;

/** Height of the head; a table whose columns need no names has none. */
export const headOf = (columns: readonly Column[]): Millimetres =>
  columns.every((column) => english(column.head) === "") ? 0 : headHeight;

const isEmpty = (cell: Words | undefined): boolean => cell !== undefined && english(cell) === "";

/** A table by hand: a head, a hairline under every row, figures flush right so that their points stand under each other. */
export function tableMarks(
  at: PaperPoint,
  table: {
    readonly columns: readonly Column[];
    readonly rows: readonly (readonly Words[])[];
    readonly speak: Speak;
    /** Lines that go on with the one above, where an empty first cell does not say it. */
    readonly goingOn?: ReadonlySet<number>;
  },
): readonly Mark[] {
  const columns = fittedColumns(table.columns, [], table.speak);
  const head = headOf(columns);
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const lefts = columns.map((_, i) => at[0] + columns.slice(0, i).reduce((sum, one) => sum + one.width, 0));
  const cells = (values: readonly Words[], y: Millimetres, weight: "regular" | "semibold"): readonly Mark[] =>
    columns.flatMap((column, i): readonly Mark[] => {
      const value = cellWords(values[i] ?? "", column.align, table.speak);
      if (value === "") return [];
      const text = fitted(value, column.width - cellEdges, { size: 2.5, weight });
      return [
        {
          kind: "text",
          at: [column.align === "start" ? lefts[i]! + 1.5 : lefts[i]! + column.width - 1.5, y],
          text,
          size: 2.5,
          anchor: column.align,
          weight,
          colour: ink,
        },
      ];
    });
  const rule = (y: Millimetres): Mark => ({
    kind: "line",
    from: [at[0], y],
    to: [at[0] + width, y],
    pen: { width: 0.18, colour: muted },
  });
  return [
    ...cells(
      columns.map((column) => column.head),
      at[1] + 4.4,
      "semibold",
    ),
    {
      kind: "line",
      from: [at[0], at[1] + head],
      to: [at[0] + width, at[1] + head],
      pen: { width: 0.35, colour: ink },
    },
    ...table.rows.flatMap((row, i): readonly Mark[] => {
      // The line above leaves its own height; this one, where it goes on, stands higher by what it saves.
      const top = at[1] + head + lineTop(i, table.goingOn);
      return [
        ...cells(row, top + 3.9, "regular"),
        // A row without a first cell goes on with the one above: no line between them.
        ...(isEmpty(table.rows[i + 1]?.[0]) || table.goingOn?.has(i + 1) ? [] : [rule(top + rowHeight)]),
      ];
    }),
  ];
}

/** Top of a line below the head: each that goes on with its row takes less. */
function lineTop(line: number, goingOn: ReadonlySet<number> = new Set()): Millimetres {
  let close = 0;
  for (let i = 1; i <= line; i++) if (goingOn.has(i)) close += 1;
  return line * rowHeight - close * (rowHeight - goingOnHeight);
}
