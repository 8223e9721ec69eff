import { type Matrix, product } from "../page/matrix.ts";
import type { PdfReader } from "./open-pdf.ts";
import type { OperationList } from "./page-paths.ts";

/** A picture that a page shows. */
export interface PagePicture {
  /** Name under which the package keeps it, or the picture itself. */
  readonly stored: string | object;
  /** From the unit square, its upper side at y = 1, to the sheet. */
  readonly matrix: Matrix;
  /** Colour of a stencil; undefined: the picture has its own. */
  readonly ink: readonly [number, number, number] | undefined;
}

/**
 * Pictures of a page, in the order in which they are painted. Clips are taken as none; what a soft mask is made of is left out.
 *
 * @source ISO-32000, sections 8.4 (state), 8.9 (images), 8.10 (forms)
 */
export function picturesOn(
  list: OperationList,
  { operations: op, matrix }: { readonly operations: PdfReader["OPS"]; readonly matrix: Matrix },
): readonly PagePicture[] {
  const pictures: PagePicture[] = [];
  let state: { readonly matrix: Matrix; readonly ink: readonly [number, number, number] } = {
    matrix,
    ink: [0, 0, 0],
  };
  const saved: (typeof state)[] = [];
  let masks = 0;
  const save = (): void => void saved.push(state);
  const back = (): void => {
    state = saved.pop() ?? state;
  };
  const put = (stored: unknown, ink: PagePicture["ink"]): void => {
    if (masks > 0 || (typeof stored !== "string" && (typeof stored !== "object" || stored === null))) return;
    pictures.push({ stored, matrix: state.matrix, ink });
  };
  const does = new Map<number | undefined, (args: readonly unknown[]) => void>([
    [op.save, save],
    [op.restore, back],
    [
      op.transform,
      (args) => {
        state = { ...state, matrix: product(state.matrix, args as unknown as Matrix) };
      },
    ],
    [
      op.paintFormXObjectBegin,
      ([inner]) => {
        save();
        if (inner)
          state = {
            ...state,
            matrix: product(state.matrix, Array.from(inner as ArrayLike<number>) as unknown as Matrix),
          };
      },
    ],
    [op.paintFormXObjectEnd, back],
    [
      op.beginGroup,
      ([group]) => {
        save();
        if (masks > 0 || (group as { readonly smask?: unknown } | null)?.smask) masks += 1;
      },
    ],
    [
      op.endGroup,
      () => {
        if (masks > 0) masks -= 1;
        back();
      },
    ],
    [
      op.setFillRGBColor,
      ([colour]) => {
        state = { ...state, ink: rgbOf(String(colour)) };
      },
    ],
    [op.paintImageXObject, ([stored]) => put(stored, undefined)],
    [op.paintInlineImageXObject, ([stored]) => put(stored, undefined)],
    [
      op.paintImageMaskXObject,
      ([mask]) => {
        const { data } = (mask ?? {}) as { readonly data?: unknown };
        put(typeof data === "string" ? data : mask, state.ink);
      },
    ],
  ]);
  list.fnArray.forEach((operation, i) => {
    does.get(operation)?.(list.argsArray[i] ?? []);
  });
  return pictures;
}

/** "#102030" as three bytes; anything else is black. */
const rgbOf = (colour: string): readonly [number, number, number] => {
  const value = /^#([0-9a-f]{6})$/i.exec(colour)?.[1];
  const all = value === undefined ? 0 : Number.parseInt(value, 16);
  return [all >> 16, (all >> 8) & 255, all & 255];
};
