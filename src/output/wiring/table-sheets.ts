import { type Supply, say, type Words } from "#engine";
import { ink, muted } from "../drawing/ink.ts";
import { broken } from "../drawing/lettering.ts";
import type { Box, Mark, Millimetres } from "../drawing/mark.ts";
import { corners, type SheetTitle, titleBlock, titleBlockSize } from "../drawing/title-block.ts";
import { cellEdges, fittedColumns } from "../setting-out/fitted-columns.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { type Column, cellWords, headHeight, rowHeight, tableMarks } from "../setting-out/table.ts";
import type { Speak } from "../words/speak.ts";
import { cautionHeight, cautionMarks } from "./caution-band.ts";
import { words } from "./symbols.ts";

/** An upright A4 sheet inside its edges: the title block fills its width. */
export const uprightFrame: Box = { left: 20, top: 10, right: 200, bottom: 287 };
export const uprightSize: readonly [Millimetres, Millimetres] = [210, 297];

export interface Table {
  readonly columns: readonly Column[];
  /** Rows of cells; a cell that is too long goes on in lines below, and stays together with its row. */
  readonly rows: readonly (readonly Words[])[];
}

export interface TableSheetsInput {
  readonly name: string;
  readonly heading: Words;
  readonly table: Table;
  readonly title: Omit<SheetTitle, "page" | "pages">;
  /** The caution of wiring pages stands on top where there is a supply to be killed by. */
  readonly supply?: Supply;
  /** Said once on every page, above the title block. */
  readonly notes: readonly Words[];
}

/** A table as upright A4 sheets: the head on each, no row alone on the last. */
export function tableSheets(input: TableSheetsInput): readonly UnnumberedSheet[] {
  const { table, supply, notes } = input;
  const { speak } = input.title;
  const heading = speak(input.heading);
  const top = uprightFrame.top + (supply ? cautionHeight(supply, { frame: uprightFrame, speak }) : 0);
  const noteLines = notes.flatMap((note) =>
    broken(speak(note), uprightFrame.right - uprightFrame.left - 8, 2.5),
  );
  const tableTop = top + 12;
  const bottom = uprightFrame.bottom - titleBlockSize[1] - noteLines.length * 3.7 - 3;
  const most = Math.max(1, Math.floor((bottom - tableTop - headHeight) / rowHeight));
  const columns = fittedColumns(table.columns, table.rows, speak);
  const chunks = chunked(
    table.rows.map((row) => brokenRow(row, columns, speak)),
    most,
  );
  return chunks.map(
    (rows, i): UnnumberedSheet =>
      (page, pages) => ({
        name: `${input.name}-${i + 1}`,
        title: `${input.title.job}: ${heading}`,
        width: uprightSize[0],
        height: uprightSize[1],
        marks: [
          words(
            [uprightFrame.left + 4, top + 8],
            chunks.length > 1 ? speak(say`${heading}, ${i + 1} of ${chunks.length}`) : heading,
            { size: 5, weight: "semibold" },
          ),
          ...tableMarks([uprightFrame.left, tableTop], { columns, rows, speak }),
          ...noteLines.map((text, n) =>
            words(
              [
                uprightFrame.left + 4,
                uprightFrame.bottom - titleBlockSize[1] - 2 - (noteLines.length - 1 - n) * 3.7,
              ],
              text,
              { colour: muted },
            ),
          ),
          ...uprightFrameMarks({ ...input.title, page, pages }, supply),
        ],
      }),
  );
}

/** Frame, title block and caution of an upright sheet. */
export const uprightFrameMarks = (
  title: SheetTitle,
  supply: Supply | undefined,
  scale?: number,
): readonly Mark[] => [
  { kind: "area", rings: [corners(uprightFrame)], fills: [], pen: { width: 0.5, colour: ink } },
  ...titleBlock([uprightFrame.right, uprightFrame.bottom], {
    ...title,
    scale: scale === undefined ? title.speak(say`not to scale (${"A4"})`) : `1 : ${scale} (A4)`,
  }),
  ...(supply ? cautionMarks(supply, { frame: uprightFrame, speak: title.speak }) : []),
];

/** Lines of one row, the first with the row's first cell; a word longer than its column stays whole and is cut by the table. */
export function brokenRow(
  row: readonly Words[],
  given: readonly Column[],
  speak: Speak,
): readonly (readonly string[])[] {
  const columns = fittedColumns(given, [], speak);
  const cells = row.map((cell, i) =>
    broken(cellWords(cell, columns[i]!.align, speak), columns[i]!.width - cellEdges, 2.5),
  );
  const lines = Math.max(1, ...cells.map((cell) => cell.length));
  return Array.from({ length: lines }, (_, i) => cells.map((cell) => cell[i] ?? ""));
}

/** Rows shared among pages, whole; a last row alone takes the one before with it. */
function chunked(
  rows: readonly (readonly (readonly string[])[])[],
  most: number,
): readonly (readonly (readonly string[])[])[] {
  const pages: (readonly (readonly string[])[])[][] = [[]];
  let used = 0;
  for (const row of rows) {
    if (used > 0 && used + row.length > most) {
      pages.push([]);
      used = 0;
    }
    pages.at(-1)!.push(row);
    used += row.length;
  }
  const [last, before] = [pages.at(-1)!, pages.at(-2)];
  if (last.length === 1 && before && before.length > 2) last.unshift(before.pop()!);
  return pages.map((page) => page.flat());
}
