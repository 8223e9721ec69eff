import { say, type Words } from "#engine";
import type { Matrix } from "../page/matrix.ts";
import type { SvgElement } from "./element.ts";
import { isPhysical, lengthOf, numbersOf } from "./lengths.ts";

/** The sheet that a drawing lies on. */
export interface SvgSheet {
  /** From the file's coordinates to the drawing's: the same size, y up, origin in the lower left corner of the sheet. */
  readonly matrix: Matrix;
  /** [drawing units]; undefined where the file does not say it */
  readonly size: readonly [number, number] | undefined;
  /** Metres of paper in one drawing unit. [m] */
  readonly paperMetres: number;
  readonly unit: Words;
}

/** A CSS pixel. [m] @source W3C-SVG2, section 8.9 */
const pixelMetres = 0.0254 / 96;

/** The sheet of an svg element that is the whole file. @source W3C-SVG2, section 8.2 */
export function sheetOf(root: SvgElement): SvgSheet {
  const { attributes: a } = root;
  const box = boxOf(a.viewBox);
  const width = positive(lengthOf(a.width, { whole: box?.[2] })) ?? box?.[2];
  const height = positive(lengthOf(a.height, { whole: box?.[3] })) ?? box?.[3];
  if (!box) {
    const size = width && height ? ([width, height] as const) : undefined;
    return { matrix: [1, 0, 0, -1, 0, height ?? 0], size, ...unitOf(pixelMetres) };
  }
  const [x, y, w, h] = box;
  const [sx, sy] = [width! / w, height! / h];
  if (a.preserveAspectRatio?.startsWith("none"))
    return {
      matrix: [1, 0, 0, -sy / sx, -x, ((y + h) * sy) / sx],
      size: [w, (h * sy) / sx],
      ...unitOf(pixelMetres * sx),
    };
  // Where the sheet has other proportions than the box, it shows more of the drawing on two sides.
  const scale = Math.min(sx, sy);
  const size = [width! / scale, height! / scale] as const;
  const matrix: Matrix = [1, 0, 0, -1, (size[0] - w) / 2 - x, y + h + (size[1] - h) / 2];
  const printed = isPhysical(a.width) || isPhysical(a.height);
  return { matrix, size, ...unitOf(pixelMetres * scale, printed) };
}

/** The matrix of an svg or symbol inside another: its box into the place that it is given. */
export function innerMatrix(
  element: SvgElement,
  place: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): Matrix {
  const box = boxOf(element.attributes.viewBox);
  if (!box || !(place.width > 0 && place.height > 0)) return [1, 0, 0, 1, place.x, place.y];
  const [x, y, w, h] = box;
  const [sx, sy] = [place.width / w, place.height / h];
  if (element.attributes.preserveAspectRatio?.startsWith("none"))
    return [sx, 0, 0, sy, place.x - x * sx, place.y - y * sy];
  const scale = Math.min(sx, sy);
  const [left, top] = [(place.width - w * scale) / 2, (place.height - h * scale) / 2];
  return [scale, 0, 0, scale, place.x + left - x * scale, place.y + top - y * scale];
}

const boxOf = (text: string | undefined): readonly [number, number, number, number] | undefined => {
  const [x, y, w, h, ...more] = numbersOf(text);
  return w !== undefined && h !== undefined && w > 0 && h > 0 && more.length === 0 && Number.isFinite(w * h)
    ? [x!, y!, w, h]
    : undefined;
};

const positive = (value: number | undefined): number | undefined =>
  value !== undefined && value > 0 && Number.isFinite(value) ? value : undefined;

const unitOf = (metres: number, printed = true): { paperMetres: number; unit: Words } => {
  const word = words.find(([size]) => Math.abs(metres / size - 1) < 1e-4)?.[1];
  return { paperMetres: metres, unit: printed && word ? word : metres === pixelMetres ? "px" : "units" };
};

const words: readonly (readonly [number, Words])[] = [
  [0.001, "mm"],
  [0.01, "cm"],
  [0.0254, "in"],
  [0.0254 / 72, say`points`],
  [0.0254 / 96, "px"],
];
