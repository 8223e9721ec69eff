import { toPixel } from "../view.ts";
import type { WalkMark, WalkMarks } from "../walks.ts";
import { inPixels, type Surface, writeText } from "./surface.ts";

/** Half of a station's disc. [px] */
export const discHalf = 13;

/** Ways of the stations as lines with arrows, the one that one is at in strong ink. */
export function paintWalkWays(surface: Surface, { stations }: WalkMarks): void {
  inPixels(surface);
  for (const station of [...stations].sort((a, b) => Number(a.current) - Number(b.current)))
    paintWay(surface, station);
}

function paintWay(surface: Surface, { path, current, back }: WalkMark): void {
  const { context, palette, view } = surface;
  const pixels = path.map((at) => toPixel(view, at));
  if (pixels.length < 2) return;
  context.globalAlpha = current ? 1 : 0.45;
  context.strokeStyle = palette.ink;
  context.lineWidth = current ? 3 : 1.5;
  context.lineJoin = "round";
  context.setLineDash(current ? [] : [5, 4]);
  context.beginPath();
  for (const [i, { px, py }] of pixels.entries())
    if (i === 0) context.moveTo(px, py);
    else context.lineTo(px, py);
  context.stroke();
  context.setLineDash([]);
  context.fillStyle = palette.ink;
  const ends = back ? [pixels, [...pixels].reverse()] : [pixels];
  for (const way of ends) {
    const [before, end] = [way.at(-2), way.at(-1)];
    if (!before || !end) continue;
    const angle = Math.atan2(end.py - before.py, end.px - before.px);
    context.beginPath();
    context.moveTo(end.px, end.py);
    for (const side of [-0.45, 0.45])
      context.lineTo(end.px - 11 * Math.cos(angle + side), end.py - 11 * Math.sin(angle + side));
    context.fill();
  }
  context.globalAlpha = 1;
}

/** Discs with the numbers of the stations; a mark beside them tells what was found. */
export function paintWalkNumbers(surface: Surface, { stations }: WalkMarks): void {
  inPixels(surface);
  const { context, palette, view } = surface;
  for (const { number, path, verdict, current } of [...stations].sort(
    (a, b) => Number(a.current) - Number(b.current),
  )) {
    const at = path[0];
    if (!at) continue;
    const { px, py } = toPixel(view, at);
    context.beginPath();
    context.arc(px, py, current ? discHalf + 3 : discHalf, 0, 2 * Math.PI);
    context.fillStyle = current ? palette.ink : palette.plan;
    context.strokeStyle = verdict === "fail" ? palette.must : palette.ink;
    context.lineWidth = verdict === "fail" ? 3 : 1.5;
    context.fill();
    context.stroke();
    writeText(surface, String(number), {
      pixel: { px, py },
      colour: current ? palette.plan : palette.ink,
      strong: true,
      rim: "transparent",
    });
    if (verdict === "not-proven") continue;
    context.strokeStyle = verdict === "pass" ? palette.seated : palette.must;
    context.lineWidth = 3;
    context.beginPath();
    const [x, y] = [px + discHalf + 2, py - discHalf + 2];
    if (verdict === "pass") {
      context.moveTo(x - 5, y);
      context.lineTo(x - 1, y + 4);
      context.lineTo(x + 6, y - 5);
    } else {
      context.moveTo(x - 5, y - 5);
      context.lineTo(x + 5, y + 5);
      context.moveTo(x + 5, y - 5);
      context.lineTo(x - 5, y + 5);
    }
    context.stroke();
  }
}
