import type { Point } from "#engine";
import { type Pixel, toPixel, type View } from "../view.ts";
import type { Palette } from "./palette.ts";

/** What every painter gets. */
export interface Surface {
  readonly context: CanvasRenderingContext2D;
  readonly view: View;
  readonly palette: Palette;
  /** Device pixels for one CSS pixel. */
  readonly density: number;
}

/** Draw in plan metres from here on. One CSS pixel is 1 / scale wide. */
export function inMetres({ context, view, density }: Surface): void {
  const k = view.scale * density;
  context.setTransform(
    k,
    0,
    0,
    -k,
    (view.width / 2 - view.x * view.scale) * density,
    (view.height / 2 + view.y * view.scale) * density,
  );
}

/** Draw in CSS pixels from here on. */
export function inPixels({ context, density }: Surface): void {
  context.setTransform(density, 0, 0, density, 0, 0);
}

export const family = '"Inter", system-ui, sans-serif';

/** Writes a text with a rim of the paper's colour, so that no line runs through it. */
export function writeText(
  surface: Surface,
  text: string,
  at: {
    readonly pixel: Pixel;
    readonly colour: string;
    readonly size?: number;
    readonly strong?: boolean;
    readonly align?: CanvasTextAlign;
    readonly rim?: string;
  },
): void {
  const { context, palette } = surface;
  context.font = `${at.strong ? 600 : 400} ${at.size ?? 13}px ${family}`;
  context.textAlign = at.align ?? "center";
  context.textBaseline = "middle";
  context.lineJoin = "round";
  context.strokeStyle = at.rim ?? palette.plan;
  context.lineWidth = 3;
  context.strokeText(text, at.pixel.px, at.pixel.py);
  context.fillStyle = at.colour;
  context.fillText(text, at.pixel.px, at.pixel.py);
}

export const pixelOf = (surface: Surface, point: Point): Pixel => toPixel(surface.view, point);

/** Whether a pixel is on the screen, with some room around. */
export const onScreen = (view: View, pixel: Pixel, margin = 40): boolean =>
  pixel.px > -margin &&
  pixel.py > -margin &&
  pixel.px < view.width + margin &&
  pixel.py < view.height + margin;
