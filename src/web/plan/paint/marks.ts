import type { CeilingThing, Detector, DwellPlace, Interference, Switch } from "#engine";
import type { Pixel } from "../view.ts";
import { faded } from "./palette.ts";
import { type Brush, family, inPixels, onScreen, pixelOf, type Surface, writeText } from "./surface.ts";

/** Below so many pixels for a metre a whole storey is on a small screen: signs are drawn smaller, words left out. */
export const smallScale = 18;

/** Radius of a detector's mark on the screen. */
export const markRadius = 10;

/** Smallest ring that holds its letter. */
const leastLettered = 8;

/** The detector: a ring with the class letter B, a notch that shows its turn, the ring doubled where it hears. */
export function paintDetector(
  surface: Surface,
  device: Detector,
  how: { readonly hears: boolean; readonly chosen: boolean; readonly ghost?: boolean; readonly tag: boolean },
): void {
  const { context, view, palette } = surface;
  const { px, py } = pixelOf(surface, device.at);
  if (!onScreen(view, { px, py })) return;
  const radius = view.scale < 10 ? 6 : view.scale < smallScale ? leastLettered : markRadius;
  context.globalAlpha = how.ghost ? 0.55 : 1;
  context.beginPath();
  context.arc(px, py, radius + (how.hears ? 3.5 : 0) + 2, 0, 2 * Math.PI);
  context.fillStyle = palette.plan;
  context.fill();
  const ink = how.chosen ? palette.focus : palette.ink;
  context.strokeStyle = ink;
  context.lineWidth = 1.75;
  context.beginPath();
  context.arc(px, py, radius, 0, 2 * Math.PI);
  context.stroke();
  if (how.hears) {
    context.lineWidth = 1;
    context.beginPath();
    context.arc(px, py, radius + 3.5, 0, 2 * Math.PI);
    context.stroke();
  }
  paintNotch(context, { px, py }, { turn: device.turn, radius, ink });
  if (radius >= leastLettered) {
    context.font = `600 ${radius === markRadius ? 12 : 10}px ${family}`;
    context.textAlign = "center";
    context.textBaseline = "middle";
    context.fillStyle = ink;
    context.fillText("B", px, py + 0.5);
  }
  if (how.tag && (how.chosen || view.scale >= smallScale))
    writeText(surface, device.pinned ? `${device.tag} ·` : device.tag, {
      pixel: { px: px + radius + (how.hears ? 9 : 6), py: py + radius + 1 },
      colour: ink,
      strong: how.chosen,
      align: "left",
    });
  context.globalAlpha = 1;
}

/** A solid wedge that cuts into the ring from outside. */
function paintNotch(
  context: Brush,
  { px, py }: Pixel,
  how: { readonly turn: number; readonly radius: number; readonly ink: string },
): void {
  const half = 0.36;
  const point = (angle: number, radius: number): [number, number] => [
    px + Math.cos(angle) * radius,
    py - Math.sin(angle) * radius,
  ];
  context.beginPath();
  context.moveTo(...point(how.turn, how.radius - 4));
  context.lineTo(...point(how.turn + half, how.radius + 1));
  context.lineTo(...point(how.turn - half, how.radius + 1));
  context.closePath();
  context.fillStyle = how.ink;
  context.fill();
}

/** A dwell place: the disc in which the person stays. */
export function paintDwellPlace(surface: Surface, place: DwellPlace, chosen: boolean): void {
  const { context, view, palette } = surface;
  const { px, py } = pixelOf(surface, place.at);
  if (!onScreen(view, { px, py }, 80) || view.scale < 10) return;
  context.beginPath();
  context.arc(px, py, place.radius * view.scale, 0, 2 * Math.PI);
  context.strokeStyle = chosen ? palette.focus : faded(palette["dwell-line"], 0.85);
  context.lineWidth = chosen ? 2 : 1;
  context.setLineDash([4, 3]);
  context.stroke();
  context.setLineDash([]);
  context.beginPath();
  context.arc(px, py, 2, 0, 2 * Math.PI);
  context.fillStyle = chosen ? palette.focus : palette["dwell-line"];
  context.fill();
}

/** A source of false triggering: a triangle; a line source is drawn along its length. */
export function paintSource(surface: Surface, source: Interference, chosen: boolean): void {
  const { context, view, palette } = surface;
  const at = pixelOf(surface, source.at);
  const colour = chosen ? palette.focus : palette.interference;
  if (source.to) {
    const to = pixelOf(surface, source.to);
    context.beginPath();
    context.moveTo(at.px, at.py);
    context.lineTo(to.px, to.py);
    context.strokeStyle = colour;
    context.lineWidth = 3;
    context.stroke();
  }
  if (!onScreen(view, at)) return;
  const r = view.scale < 14 ? 6 : 9;
  context.beginPath();
  context.moveTo(at.px, at.py - r);
  context.lineTo(at.px + r * 0.95, at.py + r * 0.7);
  context.lineTo(at.px - r * 0.95, at.py + r * 0.7);
  context.closePath();
  context.fillStyle = palette.plan;
  context.fill();
  context.fillStyle = faded(palette.interference, 0.35);
  context.fill();
  context.strokeStyle = colour;
  context.lineWidth = chosen ? 2.25 : 1.5;
  context.stroke();
}

/** What else hangs on the ceiling: a small square with a cross. */
export function paintCeilingThing(surface: Surface, thing: CeilingThing, chosen: boolean): void {
  const { context, view, palette } = surface;
  const { px, py } = pixelOf(surface, thing.at);
  if (!onScreen(view, { px, py }) || view.scale < 16) return;
  context.strokeStyle = chosen ? palette.focus : palette.edge;
  context.lineWidth = chosen ? 2 : 1.25;
  context.beginPath();
  context.rect(px - 4.5, py - 4.5, 9, 9);
  context.moveTo(px - 4.5, py - 4.5);
  context.lineTo(px + 4.5, py + 4.5);
  context.moveTo(px + 4.5, py - 4.5);
  context.lineTo(px - 4.5, py + 4.5);
  context.stroke();
}

/** Drawn to scale, always in a corner. */
export function paintScaleBar(
  surface: Surface,
  bar: { readonly pixels: number; readonly text: string; readonly at: Pixel },
): void {
  const { context, palette } = surface;
  inPixels(surface);
  const { px, py } = bar.at;
  context.strokeStyle = palette.paper;
  context.lineWidth = 5;
  const stroke = (): void => {
    context.beginPath();
    context.moveTo(px, py - 5);
    context.lineTo(px, py);
    context.lineTo(px + bar.pixels, py);
    context.lineTo(px + bar.pixels, py - 5);
    context.stroke();
  };
  stroke();
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.5;
  stroke();
  writeText(surface, bar.text, {
    pixel: { px: px + bar.pixels / 2, py: py - 10 },
    colour: palette.ink,
    rim: palette.paper,
  });
}

/** A switch on the wall as circuit diagrams on plans draw it: a small ring with a stroke that ends in a hook; a button has a dot instead. */
export function paintSwitch(surface: Surface, one: Switch, chosen: boolean): void {
  const { context, view, palette } = surface;
  const { px, py } = pixelOf(surface, one.at);
  if (!onScreen(view, { px, py })) return;
  const size = view.scale < smallScale ? 2.5 : 4;
  const ink = chosen ? palette.focus : palette.ink;
  context.strokeStyle = ink;
  context.fillStyle = palette.plan;
  context.lineWidth = chosen ? 2 : 1.25;
  context.beginPath();
  context.arc(px, py, size, 0, 2 * Math.PI);
  context.fill();
  context.stroke();
  context.beginPath();
  if (one.kind === "push-button") {
    context.fillStyle = ink;
    context.arc(px, py, size / 2, 0, 2 * Math.PI);
    context.fill();
    return;
  }
  const arms = one.kind === "two-way" || one.kind === "intermediate" ? [1, -1] : [1];
  for (const arm of arms) {
    const along = arm * Math.SQRT1_2;
    const end = { px: px + 3.2 * size * along, py: py - 3.2 * size * Math.SQRT1_2 * arm };
    context.moveTo(px + size * along, py - size * Math.SQRT1_2 * arm);
    context.lineTo(end.px, end.py);
    context.lineTo(end.px + size * along, end.py + size * Math.SQRT1_2 * arm);
  }
  context.stroke();
}
