import type { Frame } from "./paint/frame.ts";
import type { View } from "./view.ts";

/** Device pixels for one CSS pixel. */
export const densityNow = (): number => globalThis.devicePixelRatio || 1;

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
  const moved = k === 1 && x === 0 && y === 0 ? "" : `translate(${x}px, ${y}px) scale(${k})`;
  if (canvas.style.transform !== moved) canvas.style.transform = moved;
}
