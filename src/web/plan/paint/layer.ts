import type { View } from "../view.ts";
import type { Frame } from "./frame.ts";
import type { Palette } from "./palette.ts";
import { type Brush, inPixels, type Surface } from "./surface.ts";

/** A canvas of the plan, and what it was last painted for. */
export interface Layer {
  readonly canvas: OffscreenCanvas;
  readonly context: Brush;
  readonly painted: Painted | undefined;
}

/** For which view, and which part of the screen; all of it where there is no frame. */
interface Painted {
  readonly view: View;
  readonly frame: Frame | undefined;
  readonly density: number;
}

export function layerOn(canvas: OffscreenCanvas): Layer {
  const context = canvas.getContext("2d");
  if (!context) throw new Error("There is no surface to paint on.");
  return { canvas, context, painted: undefined };
}

/** The layer made ready to be painted from nothing. What a canvas costs in a frame is its size, so that it covers its frame alone. */
export function emptied(
  layer: Layer,
  to: {
    readonly view: View;
    readonly palette: Palette;
    readonly density: number;
    readonly frame?: Frame | undefined;
  },
): Surface {
  const { view, palette, density, frame } = to;
  const painted = { view, frame, density };
  cover(layer, painted);
  (layer as { painted: Painted }).painted = painted;
  const { context } = layer;
  const surface: Surface = {
    context,
    view,
    palette,
    density,
    frame,
    content: frame ? "changing" : "lasting",
  };
  inPixels(surface);
  const { left, top, width, height } = frameOf(painted);
  context.clearRect(left, top, width, height);
  return surface;
}

const frameOf = ({ frame, view }: Painted): Frame =>
  frame ?? { left: 0, top: 0, width: view.width, height: view.height };

/** Makes a canvas as large as the part of the screen that it covers. */
function cover({ canvas, painted }: Layer, next: Painted): void {
  const [was, is] = [painted && frameOf(painted), frameOf(next)];
  if (was && painted?.density === next.density && sameSize(was, is)) return;
  canvas.width = Math.max(1, Math.round(is.width * next.density));
  canvas.height = Math.max(1, Math.round(is.height * next.density));
}

const sameSize = (a: Frame, b: Frame): boolean => a.width === b.width && a.height === b.height;
