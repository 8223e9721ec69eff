import type { Frame } from "./paint/frame.ts";
import type { View } from "./view.ts";

/** To the worker that paints the linework under the plan. Newest wins. */
export type UnderlayQuestion =
  /** x1 y1 x2 y2 of each line, in the plan; once for as long as they are the same. [m] */
  | { readonly ask: "lines"; readonly lines: readonly Float64Array[] }
  | ({ readonly ask: "paint" } & UnderlayWish);

export interface UnderlayWish {
  readonly turn: number;
  readonly view: View;
  /** The part to paint, wider than the screen, so that a small pan shows nothing blank. [px] */
  readonly frame: Frame;
  readonly density: number;
  readonly colour: string;
}

export type UnderlayAnswer =
  | { readonly tell: "painted"; readonly turn: number; readonly bitmap: ImageBitmap }
  /** The browser gives no surface to paint on, or not that much memory. */
  | { readonly tell: "failed" };
