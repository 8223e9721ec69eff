import type { Metres, Point } from "#engine";

/** Space between rooms that are laid out: the wall that will stand there, until somebody measures. */
export const wallBetween: Metres = 0.15;
/** Space between what is there and what is laid out beside it. */
export const besideSpace: Metres = 1;

/** How much wider than high a picture is that fits a screen. */
const screenShape = 1.5;

/** What lies on the storey already. [m] */
export interface Bounds {
  readonly left: Metres;
  readonly right: Metres;
  readonly bottom: Metres;
  readonly top: Metres;
}

export interface Rectangle {
  readonly length: Metres;
  readonly width: Metres;
}

/**
 * Places rectangles in rows, in their order, as one reads: from the left, the rows downwards, upper sides of a row in line.
 * With nothing there the lower left corner is the origin; else they begin to the right of it, in line with its upper edge,
 * or below it, in line with its left edge: whichever keeps the whole nearer to the shape of a screen.
 *
 * @returns The lower left corner of each. [m]
 * @example packedInRows([{ length: 3, width: 4 }, { length: 3, width: 4 }], undefined) = [[0, 0], [3.15, 0]]
 */
export function packedInRows(rectangles: readonly Rectangle[], there: Bounds | undefined): readonly Point[] {
  const most = rowLength(rectangles);
  const corners: Point[] = [];
  let [x, top, deepest, widest] = [0, 0, 0, 0];
  for (const { length, width } of rectangles) {
    if (x > 0 && x + length > most) {
      top -= deepest + wallBetween;
      [x, deepest] = [0, 0];
    }
    corners.push([x, top - width]);
    widest = Math.max(widest, x + length);
    x += length + wallBetween;
    deepest = Math.max(deepest, width);
  }
  const size = { length: widest, width: deepest - top };
  const [right, up] = there ? beside(there, size) : [0, size.width];
  return corners.map(([cx, cy]): Point => [tidy(cx + right), tidy(cy + up)]);
}

/** Where the upper left corner goes. */
function beside(there: Bounds, { length, width }: Rectangle): Point {
  const [wide, high] = [there.right - there.left, there.top - there.bottom];
  const unlike = (across: Metres, up: Metres): number => Math.abs(Math.log(across / up / screenShape));
  const toTheRight = unlike(wide + besideSpace + length, Math.max(high, width));
  const below = unlike(Math.max(wide, length), high + besideSpace + width);
  return toTheRight <= below
    ? [there.right + besideSpace, there.top]
    : [there.left, there.bottom - besideSpace];
}

/** Half again as wide as high makes a picture that fits a screen; the longest room must fit too. */
function rowLength(rectangles: readonly Rectangle[]): Metres {
  const area = rectangles.reduce(
    (sum, { length, width }) => sum + (length + wallBetween) * (width + wallBetween),
    0,
  );
  return Math.max(Math.sqrt(screenShape * area), ...rectangles.map(({ length }) => length));
}

/** A micrometre: sums of walls stay figures that one can read. */
const tidy = (value: Metres): Metres => Math.round(value * 1e6) / 1e6;
