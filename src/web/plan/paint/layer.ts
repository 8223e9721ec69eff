import type { View } from "../view.ts";
import type { Palette } from "./palette.ts";
import { type Frame, inPixels, type Surface } from "./surface.ts";

/** A canvas of the plan, and what it was last painted for. */
export interface Layer {
  readonly canvas: HTMLCanvasElement;
  readonly context: CanvasRenderingContext2D;
  readonly painted: Painted | undefined;
}

/** For which view, and which part of the screen; all of it where there is no frame. */
interface Painted {
  readonly view: View;
  readonly frame: Frame | undefined;
  readonly density: number;
}

export const layerOn = (canvas: HTMLCanvasElement): Layer => ({
  canvas,
  context: canvas.getContext("2d") as CanvasRenderingContext2D,
  painted: undefined,
});

/** Device pixels for one CSS pixel. */
export const densityNow = (): number => globalThis.devicePixelRatio || 1;

/** The layer made ready to be painted from nothing. What a canvas costs in a frame is its size, so that it covers its frame alone. */
export function emptied(
  layer: Layer,
  to: { readonly view: View; readonly palette: Palette; readonly frame?: Frame | undefined },
): Surface {
  const painted = { view: to.view, frame: to.frame, density: densityNow() };
  cover(layer, painted);
  (layer as { painted: Painted }).painted = painted;
  const surface = surfaceOf(layer, to.palette, painted);
  inPixels(surface);
  const { left, top, width, height } = frameOf(painted);
  surface.context.clearRect(left, top, width, height);
  return surface;
}

/** The layer as it was painted, to paint a part of it anew. */
export const again = (layer: Layer, palette: Palette): Surface | undefined =>
  layer.painted && surfaceOf(layer, palette, layer.painted);

const surfaceOf = ({ context }: Layer, palette: Palette, { view, frame, density }: Painted): Surface => ({
  context,
  view,
  palette,
  density,
  frame,
  content: frame ? "changing" : "lasting",
});

const frameOf = ({ frame, view }: Painted): Frame =>
  frame ?? { left: 0, top: 0, width: view.width, height: view.height };

/** Makes a canvas as large as the part of the screen that it covers. */
function cover({ canvas, painted }: Layer, next: Painted): void {
  const [was, is] = [painted && frameOf(painted), frameOf(next)];
  if (was && painted?.density === next.density && sameFrame(was, is)) return;
  canvas.width = Math.round(is.width * next.density);
  canvas.height = Math.round(is.height * next.density);
  lay(canvas, is);
}

export const sameFrame = (a: Frame | undefined, b: Frame | undefined): boolean =>
  a === b || (a?.left === b?.left && a?.top === b?.top && a?.width === b?.width && a?.height === b?.height);

/** Lays a canvas over a part of the screen. */
export function lay(canvas: HTMLCanvasElement, { left, top, width, height }: Frame): void {
  canvas.style.inset = `${top}px auto auto ${left}px`;
  canvas.style.inlineSize = `${width}px`;
  canvas.style.blockSize = `${height}px`;
}

/** Moves a painted canvas to where another view shows its picture. */
export function place(
  canvas: HTMLCanvasElement,
  painted: { readonly view: View; readonly frame: Frame | undefined },
  shown: View,
): void {
  const { view, frame } = painted;
  const k = shown.scale / view.scale;
  const middle = (of: View): [number, number] => [
    of.width / 2 - of.x * of.scale,
    of.height / 2 + of.y * of.scale,
  ];
  const [was, is] = [middle(view), middle(shown)];
  const x = is[0] - k * was[0] + (k - 1) * (frame?.left ?? 0);
  const y = is[1] - k * was[1] + (k - 1) * (frame?.top ?? 0);
  const moved = view === shown ? "" : `translate(${x}px, ${y}px) scale(${k})`;
  if (canvas.style.transform !== moved) canvas.style.transform = moved;
}
