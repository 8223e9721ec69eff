import { day, type Said, say, type Words } from "#engine";
import type { Speak } from "../words/speak.ts";
import { ink, muted, paper } from "./ink.ts";
import { fitted, lengthOf } from "./lettering.ts";
import type { Box, LetteringSize, Mark, Millimetres, PaperPoint, TextMark } from "./mark.ts";

/** What stands in the block low right on every sheet. Empty values print as a line to fill in by hand. */
export interface SheetTitle {
  readonly job: string;
  readonly client: string;
  readonly site: string;
  readonly storey: string;
  /** Name of the sheet: "Plan", "Setting out". */
  readonly sheet: Words;
  readonly date: string;
  readonly revision: string;
  readonly drawnBy: string;
  readonly checkedBy: string;
  /** How far it has come on site; planned if absent. */
  readonly status?: Words;
  /** What the sheet speaks. */
  readonly speak: Speak;
  readonly page: number;
  readonly pages: number;
}

export const titleBlockSize: readonly [Millimetres, Millimetres] = [180, 42];

/** What every planned sheet says until somebody walked it. */
export const plannedWords = say`Planned, not yet tested on site`;

const thin = { width: 0.25, colour: ink } as const;

/** The title block with its lower right corner at a place. */
export function titleBlock(
  corner: PaperPoint,
  title: SheetTitle & { readonly scale: string },
): readonly Mark[] {
  const { speak } = title;
  const left = corner[0] - titleBlockSize[0];
  const top = corner[1] - titleBlockSize[1];
  const cell = (
    x: Millimetres,
    row: number,
    width: Millimetres,
    caption: Said,
    value: string,
    size: "usual" | "large" = "usual",
  ): readonly Mark[] =>
    cellMarks({
      left: left + x,
      top: top + row,
      width,
      caption: speak(caption),
      value,
      size: size === "large" ? 3.5 : 2.5,
    });
  const rows = [11, 21, 31];
  const block: Box = { left, top, right: corner[0], bottom: corner[1] };
  return [
    {
      kind: "area",
      rings: [corners(block)],
      fills: [{ kind: "solid", colour: paper }],
      pen: { width: 0.5, colour: ink },
    },
    ...rows.map((y): Mark => ({ kind: "line", from: [left, top + y], to: [corner[0], top + y], pen: thin })),
    ...[
      [112, 0, 42],
      [36, 11, 31],
      [146, 11, 31],
    ].map(
      ([x, from, to]): Mark => ({
        kind: "line",
        from: [left + x!, top + from!],
        to: [left + x!, top + to!],
        pen: thin,
      }),
    ),
    ...cell(0, 0, 112, say`Job`, title.job, "large"),
    ...cell(112, 0, 68, say`Sheet`, speak(title.sheet), "large"),
    ...cell(0, 11, 36, say`Storey`, title.storey),
    ...cell(36, 11, 76, say`Client`, title.client),
    ...cell(112, 11, 34, say`Date`, speak(day(title.date))),
    ...cell(146, 11, 34, say`Revision`, title.revision),
    ...cell(0, 21, 36, say`Drawn by`, title.drawnBy),
    ...cell(36, 21, 76, say`Site`, title.site),
    ...cell(112, 21, 34, say`Scale`, title.scale),
    ...cell(146, 21, 34, say`Page`, speak(say`${title.page} of ${title.pages}`)),
    ...cell(112, 31, 68, say`Checked by`, title.checkedBy),
    text([left + 2.5, corner[1] - 3.8], speak(title.status ?? plannedWords), 3.5, "semibold"),
  ];
}

function cellMarks(cell: {
  readonly left: Millimetres;
  readonly top: Millimetres;
  readonly width: Millimetres;
  readonly caption: string;
  readonly value: string;
  readonly size: LetteringSize;
}): readonly Mark[] {
  const weight = cell.size === 3.5 ? "semibold" : "regular";
  const room = cell.width - 5;
  // A name that is too long in large letters is written smaller before it is cut.
  const size = lengthOf(cell.value, cell.size, weight) <= room ? cell.size : 2.5;
  const caption: Mark = {
    ...text([cell.left + 2.5, cell.top + 3.9], cell.caption, 2.5, "regular"),
    colour: muted,
  };
  if (cell.value.trim() === "") return [caption];
  return [
    caption,
    text(
      [cell.left + 2.5, cell.top + (cell.size === 3.5 ? 9.2 : 8.4)],
      fitted(cell.value, room, { size, weight }),
      size,
      weight,
    ),
  ];
}

function text(at: PaperPoint, words: string, size: LetteringSize, weight: TextMark["weight"]): TextMark {
  return { kind: "text", at, text: words, size, anchor: "start", weight, colour: ink };
}

export const corners = (box: Box): readonly PaperPoint[] => [
  [box.left, box.top],
  [box.right, box.top],
  [box.right, box.bottom],
  [box.left, box.bottom],
];
