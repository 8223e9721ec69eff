import type { Point } from "#engine";
import { type Pixel, toPixel, type View } from "../view.ts";
import type { Frame } from "./frame.ts";
import type { Palette } from "./palette.ts";

/** Plans are painted beside the page, by a worker. */
export type Brush = OffscreenCanvasRenderingContext2D;

/** What every painter gets. */
export interface Surface {
  readonly context: Brush;
  readonly view: View;
  readonly palette: Palette;
  /** Device pixels for one CSS pixel. */
  readonly density: number;
  /** The part of the screen that the canvas covers; all of it where absent. */
  readonly frame?: Frame | undefined;
  /** "changing": shown for a frame or two; texts are written straight on, since keeping a picture of each would cost more. */
  readonly content?: "lasting" | "changing";
}

/** Draw in plan metres from here on. One CSS pixel is 1 / scale wide. */
export function inMetres({ context, view, density, frame }: Surface): void {
  const k = view.scale * density;
  context.setTransform(
    k,
    0,
    0,
    -k,
    (view.width / 2 - view.x * view.scale - (frame?.left ?? 0)) * density,
    (view.height / 2 + view.y * view.scale - (frame?.top ?? 0)) * density,
  );
}

/** Draw in CSS pixels from here on. */
export function inPixels({ context, density, frame }: Surface): void {
  context.setTransform(density, 0, 0, density, -(frame?.left ?? 0) * density, -(frame?.top ?? 0) * density);
}

export const family = '"Inter", system-ui, sans-serif';

interface Sprite {
  readonly canvas: OffscreenCanvas;
  readonly width: number;
}

const sprites = new Map<string, Sprite>();
const mostSprites = 1500;
const spriteHigh = 24;

/** A text with its rim as a small picture: drawn once, then only copied, since letters are what costs most in a frame. */
function spriteOf(
  text: string,
  look: { readonly font: string; readonly colour: string; readonly rim: string; readonly density: number },
): Sprite | undefined {
  const key = `${look.font}|${look.colour}|${look.rim}|${look.density}|${text}`;
  const known = sprites.get(key);
  if (known) return known;
  const canvas = new OffscreenCanvas(1, 1);
  const brush = canvas.getContext("2d");
  if (!brush) return undefined;
  brush.font = look.font;
  const width = Math.ceil(brush.measureText(text).width) + 8;
  canvas.width = Math.ceil(width * look.density);
  canvas.height = Math.ceil(spriteHigh * look.density);
  brush.scale(look.density, look.density);
  brush.font = look.font;
  brush.textBaseline = "middle";
  if (look.rim !== "transparent") {
    brush.lineJoin = "round";
    brush.strokeStyle = look.rim;
    brush.lineWidth = 3;
    brush.strokeText(text, 4, spriteHigh / 2);
  }
  brush.fillStyle = look.colour;
  brush.fillText(text, 4, spriteHigh / 2);
  if (sprites.size > mostSprites) sprites.clear();
  const sprite = { canvas, width };
  sprites.set(key, sprite);
  return sprite;
}

/** Letters that were drawn before the face had loaded are drawn again. */
export function forgetLetters(): void {
  sprites.clear();
  widths.clear();
}

const widths = new Map<string, number>();
const mostWidths = 2000;

/** Width of a text, measured once. [px] */
export function textWidth({ context }: Surface, text: string, font: string): number {
  const key = `${font} ${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  context.font = font;
  const { width } = context.measureText(text);
  if (widths.size > mostWidths) widths.clear();
  widths.set(key, width);
  return width;
}

/** Writes a text with a rim of the paper's colour, so that no line runs through it. */
export function writeText(
  surface: Surface,
  text: string,
  at: {
    readonly pixel: Pixel;
    readonly colour: string;
    readonly size?: number;
    readonly strong?: boolean;
    readonly align?: "center" | "left";
    readonly rim?: string;
  },
): void {
  const { context, palette, density } = surface;
  const font = `${at.strong ? 600 : 400} ${at.size ?? 13}px ${family}`;
  if (surface.content === "changing") {
    context.font = font;
    context.textAlign = at.align ?? "center";
    context.textBaseline = "middle";
    context.lineJoin = "round";
    context.lineWidth = 3;
    context.strokeStyle = at.rim ?? palette.plan;
    context.strokeText(text, at.pixel.px, at.pixel.py);
    context.fillStyle = at.colour;
    context.fillText(text, at.pixel.px, at.pixel.py);
    return;
  }
  const sprite = spriteOf(text, { font, colour: at.colour, rim: at.rim ?? palette.plan, density });
  if (!sprite) return;
  const left = at.align === "left" ? at.pixel.px - 4 : at.pixel.px - sprite.width / 2;
  const top = at.pixel.py - spriteHigh / 2;
  // On whole device pixels letters stay sharp.
  const whole = (value: number): number => Math.round(value * density) / density;
  context.drawImage(
    sprite.canvas,
    whole(left),
    whole(top),
    sprite.canvas.width / density,
    sprite.canvas.height / density,
  );
}

export const pixelOf = (surface: Surface, point: Point): Pixel => toPixel(surface.view, point);

/** Whether a pixel is on the screen, with some room around. */
export const onScreen = (view: View, pixel: Pixel, margin = 40): boolean =>
  pixel.px > -margin &&
  pixel.py > -margin &&
  pixel.px < view.width + margin &&
  pixel.py < view.height + margin;
