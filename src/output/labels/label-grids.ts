import type { Millimetres } from "../drawing/mark.ts";

/** How labels lie on an upright A4 sheet. [mm] */
export interface LabelGrid {
  readonly columns: number;
  readonly rows: number;
  readonly width: Millimetres;
  readonly height: Millimetres;
  /** Upper left corner of the first label. */
  readonly left: Millimetres;
  readonly top: Millimetres;
  /** From column to column and from row to row, the label included. */
  readonly acrossPitch: Millimetres;
  readonly downPitch: Millimetres;
}

const grid = (
  columns: number,
  rows: number,
  [width, height]: readonly [number, number],
  [acrossPitch, downPitch]: readonly [number, number],
): LabelGrid => ({
  columns,
  rows,
  width,
  height,
  acrossPitch,
  downPitch,
  left: (210 - (columns - 1) * acrossPitch - width) / 2,
  top: (297 - (rows - 1) * downPitch - height) / 2,
});

/** Sheets of labels as they are sold everywhere, by columns × rows; the grid stands in the middle of the sheet. */
export const labelGrids = {
  "3x7": grid(3, 7, [63.5, 38.1], [66, 38.1]),
  "3x8": grid(3, 8, [70, 36], [70, 36]),
  "2x7": grid(2, 7, [99.1, 38.1], [101.6, 38.1]),
  "4x10": grid(4, 10, [48.5, 25.4], [48.5, 25.4]),
} as const satisfies Record<string, LabelGrid>;

export type LabelGridName = keyof typeof labelGrids;
