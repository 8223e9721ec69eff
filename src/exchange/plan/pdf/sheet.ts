import type { Matrix } from "../page/matrix.ts";

/** What a page says of its size and turn. */
export interface PageFrame {
  /** Least x, least y, largest x, largest y. */
  readonly view: readonly number[];
  /** Clockwise, a multiple of 90. [°] */
  readonly rotate: number;
  /** Points in one page unit. */
  readonly userUnit: number;
}

/**
 * From page units to points on the sheet as it is shown: origin lower left, y up.
 *
 * @source ISO-32000, table of page entries: CropBox, Rotate, UserUnit
 */
export function sheetOf({ view, rotate, userUnit }: PageFrame): {
  readonly matrix: Matrix;
  /** [pt] */
  readonly size: readonly [number, number];
} {
  const [x0, y0, x1, y1] = view as [number, number, number, number];
  const u = userUnit > 0 && Number.isFinite(userUnit) ? userUnit : 1;
  const [w, h] = [(x1 - x0) * u, (y1 - y0) * u];
  switch (((rotate % 360) + 360) % 360) {
    case 90:
      return { matrix: [0, -u, u, 0, -y0 * u, x1 * u], size: [h, w] };
    case 180:
      return { matrix: [-u, 0, 0, -u, x1 * u, y1 * u], size: [w, h] };
    case 270:
      return { matrix: [0, u, -u, 0, y1 * u, -x0 * u], size: [h, w] };
    default:
      return { matrix: [u, 0, 0, u, -x0 * u, -y0 * u], size: [w, h] };
  }
}
