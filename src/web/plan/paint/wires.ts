import type { Point } from "#engine";
import { toPixel } from "../view.ts";
import type { WireRun, Wires } from "../wires.ts";
import type { Lettering } from "./lettering.ts";
import { smallScale } from "./marks.ts";
import { inPixels, onScreen, pixelOf, type Surface } from "./surface.ts";

/** What is switched together as hair lines, circuits as broken lines above them, boards last. */
export function paintWires(surface: Surface, { runs, boards, pins, lost }: Wires): void {
  inPixels(surface);
  const { context, palette } = surface;
  context.lineCap = "round";
  context.lineJoin = "round";
  // What one looks at lies above the others.
  for (const kind of ["switches", "feeds"] as const)
    for (const look of ["other", "plain", "chosen"] as const)
      for (const run of runs) if (run.kind === kind && run.look === look) strokeRun(surface, run);
  context.globalAlpha = 1;
  context.setLineDash([]);
  context.lineCap = "butt";
  for (const at of lost) {
    const { px, py } = pixelOf(surface, at);
    if (!onScreen(surface.view, { px, py })) continue;
    context.beginPath();
    context.arc(px, py, surface.view.scale < smallScale ? 4 : 7, 0, 2 * Math.PI);
    context.strokeStyle = palette.should;
    context.lineWidth = 2;
    context.setLineDash([3, 3]);
    context.stroke();
    context.setLineDash([]);
  }
  for (const at of pins) paintPin(surface, at);
  for (const { at } of boards) paintBoard(surface, at);
}

function strokeRun(surface: Surface, run: WireRun): void {
  const { context, view, palette } = surface;
  const small = view.scale < smallScale;
  const feeds = run.kind === "feeds";
  // In the small picture of a whole storey there is no room for lanes.
  const beside = small || !feeds ? 0 : run.beside;
  context.globalAlpha = run.look === "other" ? 0.28 : 1;
  context.strokeStyle = feeds ? palette.towards : palette.muted;
  context.lineWidth = (feeds ? 1.75 : 1) * (run.look === "chosen" ? 1.75 : 1) * (small ? 0.75 : 1);
  context.setLineDash(feeds ? [...run.pattern] : [1, 3]);
  context.beginPath();
  for (const line of run.lines) {
    line.forEach((point, i) => {
      const { px, py } = toPixel(view, point);
      if (i === 0) context.moveTo(px + beside, py + beside);
      else context.lineTo(px + beside, py + beside);
    });
  }
  context.stroke();
  if (!feeds || small) return;
  // A dot where the cable goes in and out.
  context.setLineDash([]);
  context.fillStyle = palette.towards;
  for (const line of run.lines) {
    const end = line.at(-1);
    if (!end) continue;
    const { px, py } = toPixel(view, end);
    context.beginPath();
    context.arc(px + beside, py + beside, run.look === "chosen" ? 3.5 : 2.5, 0, 2 * Math.PI);
    context.fill();
  }
}

/** A place that the cable passes: a square that one can take hold of. */
function paintPin(surface: Surface, at: Point): void {
  const { context, palette, view } = surface;
  const { px, py } = pixelOf(surface, at);
  if (!onScreen(view, { px, py })) return;
  context.beginPath();
  context.rect(px - 5, py - 5, 10, 10);
  context.fillStyle = palette.plan;
  context.fill();
  context.strokeStyle = palette.towards;
  context.lineWidth = 2;
  context.stroke();
}

/** A board: a box, half of it filled. */
function paintBoard(surface: Surface, at: Point): void {
  const { context, palette, view } = surface;
  const { px, py } = pixelOf(surface, at);
  if (!onScreen(view, { px, py })) return;
  const [wide, high] = view.scale < smallScale ? [7, 4] : [11, 6];
  context.fillStyle = palette.plan;
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.5;
  context.beginPath();
  context.rect(px - wide, py - high, 2 * wide, 2 * high);
  context.fill();
  context.stroke();
  context.beginPath();
  context.rect(px - wide, py, 2 * wide, high);
  context.fillStyle = palette.ink;
  context.fill();
}

/** Names of circuits in the middle of their longest line, names of boards beside them. */
export function paintWireNames(surface: Surface, wires: Wires, lettering: Lettering): void {
  inPixels(surface);
  const { view, palette } = surface;
  for (const { name, at } of wires.boards) {
    const { px, py } = toPixel(view, at);
    lettering.block({ px, py }, { wide: 13, high: 8 });
    if (view.scale >= smallScale)
      lettering.writeGroup([{ text: name, pixel: { px, py }, colour: palette.ink, strong: true }], {
        shifts: [17, -17, 33, -33].map((down) => ({ px: 0, py: down })),
        otherwise: "leave out",
      });
  }
  const named = wires.runs.filter(
    ({ kind, label, look }) => kind === "feeds" && label !== "" && look !== "other",
  );
  for (const run of named) {
    const places = run.lines
      .flatMap((line) => line.slice(1).map((to, i) => [line[i] as Point, to] as const))
      .sort((a, b) => long(b) - long(a));
    // The first of the longer lines beside which there is room.
    for (const [from, to] of places.slice(0, 6)) {
      const pixel = toPixel(view, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
      if (!onScreen(view, pixel, 0)) continue;
      if (lettering.write(run.label, { pixel, colour: palette.towards, strong: run.look === "chosen" }))
        break;
    }
  }
}

const long = ([a, b]: readonly [Point, Point]): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
