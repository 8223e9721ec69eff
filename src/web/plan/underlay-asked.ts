import type { Frame } from "./paint/frame.ts";
import type { View } from "./view.ts";

/** To the worker that paints the linework under the plan. Newest wins. */
export type UnderlayQuestion =
  /** The canvases that it paints to, in turns: one is on the screen, the other out of sight. */
  | { readonly ask: "canvases"; readonly canvases: readonly [OffscreenCanvas, OffscreenCanvas] }
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
  /** The canvas to paint to. */
  readonly canvas: 0 | 1;
}

export type UnderlayAnswer =
  | { readonly tell: "painted"; readonly turn: number }
  /** The browser gives no surface to paint on, or not that much memory. */
  | { readonly tell: "failed" };
