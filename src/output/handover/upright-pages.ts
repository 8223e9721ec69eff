import { english, type Supply, say, type Words } from "#engine";
import { muted } from "../drawing/ink.ts";
import { broken } from "../drawing/lettering.ts";
import type { Mark, Millimetres, PaperPoint } from "../drawing/mark.ts";
import { type SheetTitle, titleBlockSize } from "../drawing/title-block.ts";
import { fittedColumns } from "../setting-out/fitted-columns.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { type Column, goingOnHeight, headOf, rowHeight, tableMarks } from "../setting-out/table.ts";
import { cautionHeight } from "../wiring/caution-band.ts";
import { words } from "../wiring/symbols.ts";
import { brokenRow, uprightFrame, uprightFrameMarks, uprightSize } from "../wiring/table-sheets.ts";
import type { Speak } from "../words/speak.ts";

/** A table under a heading of its own; tables of a page follow each other. */
export interface Block {
  readonly heading: Words;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Words[])[];
  /** Said in place of a table without rows; such a block is left out where this is absent. */
  readonly empty?: Words;
  /** Its cells are boxes, to be filled in by hand. */
  readonly boxes?: true;
}

export interface UprightPages {
  readonly name: string;
  readonly heading: Words;
  /** Under the heading of the first page. */
  readonly intro?: readonly Words[];
  readonly blocks: readonly Block[];
  readonly title: Omit<SheetTitle, "page" | "pages">;
  /** Said once on every page, above the title block. */
  readonly notes: readonly Words[];
  readonly supply?: Supply;
  /**
   * Something drawn under the heading of the first page.
   *
   * @param free - Height that is left for it where all blocks stand on one page with it; less than nothing where they fill more.
   */
  readonly drawn?: (free: Millimetres) => Drawn | undefined;
}

/** What is drawn on a page among tables. */
export interface Drawn {
  readonly height: Millimetres;
  readonly scale: number;
  readonly marks: (top: Millimetres) => readonly Mark[];
}

/** Inside the frame, left and right of the words. */
export const inset: Millimetres = 4;
/** Width that the columns of a block share. */
export const blockWidth: Millimetres = uprightFrame.right - uprightFrame.left - 2 * inset;
const headingHeight: Millimetres = 9;
const blockHead: Millimetres = 7.5;
const blockGap: Millimetres = 4;
const noteHeight: Millimetres = 3.7;
const introHeight: Millimetres = 4.2;

/** A piece of a block that stands on one page. */
interface Piece {
  readonly heading: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** Lines that go on with the row above. */
  readonly goingOn: ReadonlySet<number>;
  readonly said: string | undefined;
  readonly boxes: boolean;
}

/** Tables as upright A4 pages: each repeats its head where it goes on, and no row stands alone under it. */
export function uprightPages(input: UprightPages): readonly UnnumberedSheet[] {
  const { supply, title } = input;
  const { speak } = title;
  const heading = speak(input.heading);
  const blocks = input.blocks.map((block) => ({
    ...block,
    columns: fittedColumns(block.columns, block.rows, speak),
  }));
  const frameTop = uprightFrame.top + (supply ? cautionHeight(supply, { frame: uprightFrame, speak }) : 0);
  const notes = input.notes.flatMap((note) => broken(speak(note), blockWidth, 2.5));
  const intro = (input.intro ?? []).flatMap((line) => broken(speak(line), blockWidth, 2.5));
  const bottom = uprightFrame.bottom - titleBlockSize[1] - notes.length * noteHeight - 3;
  const drawnTop = frameTop + headingHeight + intro.length * introHeight + 2;
  const drawn = input.drawn?.(bottom - drawnTop - heightOf(blocks, speak));
  const first = drawnTop + (drawn?.height ?? 0);
  const pages = paged(blocks, { first, next: frameTop + headingHeight + 2, bottom }, speak);
  return pages.map(
    (pieces, i): UnnumberedSheet =>
      (page, of) => ({
        name: `${input.name}-${i + 1}`,
        title: `${title.job}: ${heading}`,
        width: uprightSize[0],
        height: uprightSize[1],
        ...(i === 0 && drawn ? { scale: drawn.scale } : {}),
        marks: [
          words(
            [uprightFrame.left + inset, frameTop + 8],
            pages.length > 1 ? speak(say`${heading}, ${i + 1} of ${pages.length}`) : heading,
            { size: 5, weight: "semibold" },
          ),
          ...(i === 0
            ? [
                ...intro.map((line, n) =>
                  words([uprightFrame.left + inset, frameTop + headingHeight + 3.5 + n * introHeight], line),
                ),
                ...(drawn?.marks(drawnTop) ?? []),
              ]
            : []),
          ...pieces.flatMap(({ piece, top }) => pieceMarks(piece, top, speak)),
          ...notes.map((text, n) =>
            words(
              [
                uprightFrame.left + inset,
                uprightFrame.bottom - titleBlockSize[1] - 2 - (notes.length - 1 - n) * noteHeight,
              ],
              text,
              { colour: muted },
            ),
          ),
          ...uprightFrameMarks({ ...title, page, pages: of }, supply, i === 0 ? drawn?.scale : undefined),
        ],
      }),
  );
}

function pieceMarks(piece: Piece, top: Millimetres, speak: Speak): readonly Mark[] {
  const left = uprightFrame.left + inset;
  const head = english(piece.heading) === "" ? 0 : blockHead;
  return [
    ...(head > 0 ? [words([left, top + 5], piece.heading, { size: 3.5, weight: "semibold" })] : []),
    ...(piece.said === undefined
      ? [
          ...tableMarks([left, top + head], {
            columns: piece.columns,
            rows: piece.rows,
            goingOn: piece.goingOn,
            speak,
          }),
          ...(piece.boxes ? boxMarks([left, top + head], piece) : []),
        ]
      : [words([left + 1.5, top + head + 3.5], piece.said, { colour: muted })]),
  ];
}

/** Uprights between the columns, so that a pen finds its box. */
function boxMarks([left, top]: PaperPoint, { columns, rows, goingOn }: Piece): readonly Mark[] {
  const bottom = top + headOf(columns) + linesHeight(rows.length, goingOn);
  let x = left;
  return columns.slice(0, -1).map(({ width }): Mark => {
    x += width;
    return { kind: "line", from: [x, top + 1], to: [x, bottom], pen: { width: 0.18, colour: muted } };
  });
}

/** Height that blocks take one under the other on a page without end. */
function heightOf(blocks: readonly Block[], speak: Speak): Millimetres {
  return blocks.reduce((sum, { heading, columns, rows, empty }) => {
    if (rows.length === 0 && empty === undefined) return sum;
    const lines = rows.reduce((height, row) => height + rowOf(brokenRow(row, columns, speak).length), 0);
    const table = rows.length === 0 ? rowHeight : headOf(columns) + lines;
    return sum + (english(heading) === "" ? 0 : blockHead) + table + blockGap;
  }, 0);
}

type Placed = { readonly piece: Piece; readonly top: Millimetres };

function paged(
  blocks: readonly Block[],
  room: { readonly first: Millimetres; readonly next: Millimetres; readonly bottom: Millimetres },
  speak: Speak,
): readonly (readonly Placed[])[] {
  const pages: Placed[][] = [[]];
  let y = room.first;
  const turn = (): void => {
    pages.push([]);
    y = room.next;
  };
  const put = (piece: Piece, height: Millimetres): void => {
    pages.at(-1)!.push({ piece, top: y });
    y += height + blockGap;
  };
  for (const { heading: named, columns, rows, empty, boxes = false } of blocks) {
    const heading = speak(named);
    const head = english(heading) === "" ? 0 : blockHead;
    if (rows.length === 0) {
      if (empty === undefined) continue;
      if (y + head + rowHeight > room.bottom) turn();
      put({ heading, columns, rows: [], goingOn: new Set(), said: speak(empty), boxes }, head + rowHeight);
      continue;
    }
    let left = rows.map((row) => brokenRow(row, columns, speak));
    let part = 0;
    while (left.length > 0) {
      const name = part === 0 ? heading : english(heading) === "" ? "" : speak(say`${heading}, continued`);
      let count = whole(left, room.bottom - y - head - headOf(columns));
      // A last row alone on the next page takes the one before with it; a single row under a head waits for its next.
      if (count === left.length - 1 && count > 1) count -= 1;
      const opens = pages.at(-1)!.length === 0;
      if (!opens && count < Math.min(2, left.length)) {
        turn();
        continue;
      }
      const taken = left.slice(0, Math.max(1, count));
      left = left.slice(taken.length);
      const lines = taken.flat();
      put(
        { heading: name, columns, rows: lines, goingOn: goingOnIn(taken), said: undefined, boxes },
        head + headOf(columns) + taken.reduce((height, row) => height + rowOf(row.length), 0),
      );
      part += 1;
      if (left.length > 0) turn();
    }
  }
  return pages;
}

/** Numbers of the lines that are not the first of their row. */
function goingOnIn(rows: readonly (readonly (readonly string[])[])[]): ReadonlySet<number> {
  const numbers = new Set<number>();
  let at = 0;
  for (const row of rows) {
    for (let i = 1; i < row.length; i++) numbers.add(at + i);
    at += row.length;
  }
  return numbers;
}

/** How many rows, whole, go into so much height. */
function whole(rows: readonly (readonly (readonly string[])[])[], height: Millimetres): number {
  let used = 0;
  for (const [i, row] of rows.entries()) {
    used += rowOf(row.length);
    if (used > height + 1e-9) return i;
  }
  return rows.length;
}

/** Height of a row of so many lines. */
const rowOf = (lines: number): Millimetres => rowHeight + (lines - 1) * goingOnHeight;

/** Height of lines of which some go on with the one above. */
const linesHeight = (lines: number, goingOn: ReadonlySet<number>): Millimetres =>
  lines * rowHeight - goingOn.size * (rowHeight - goingOnHeight);
