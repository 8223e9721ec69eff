import type { Finding } from "#engine";
import type { Pixel, View } from "../view.ts";
import { smallScale } from "./marks.ts";
import type { Palette } from "./palette.ts";
import { type Brush, family, inPixels, onScreen, pixelOf, type Surface } from "./surface.ts";

interface FlagMark {
  readonly number: number;
  readonly severity: Finding["severity"];
  readonly at: readonly [number, number];
  readonly current: boolean;
}

const pole = 24;

/** Size of a flag: smaller where a whole storey is on a small screen. */
const sizeOf = (view: View): number => (view.scale < smallScale ? 0.8 : 1);

/** Numbered flags where something needs attention; those that would cover each other share one pole. */
export function paintFlags(surface: Surface, flags: readonly FlagMark[]): void {
  inPixels(surface);
  for (const placed of placedFlags(surface, flags)) paintFlag(surface, placed);
}

export interface PlacedFlag {
  /** The one whose number is shown: the highlighted, else the gravest. */
  readonly flag: FlagMark;
  /** Numbers of all that share the pole. */
  readonly numbers: readonly number[];
  readonly head: Pixel;
  readonly foot: Pixel;
}

/** Where the heads of the flags stand; the flag that a pixel hits is found from the same places. */
export function placedFlags(
  surface: Pick<Surface, "view">,
  flags: readonly FlagMark[],
): readonly PlacedFlag[] {
  const placed: { flag: FlagMark; numbers: number[]; head: Pixel; foot: Pixel }[] = [];
  // Findings come in order of gravity: the first on a pole is the gravest.
  const size = sizeOf(surface.view);
  for (const flag of [...flags].sort((a, b) => Number(b.current) - Number(a.current))) {
    const foot = pixelOf(surface as Surface, flag.at);
    if (!onScreen(surface.view, foot)) continue;
    const near = placed.find(
      (one) => Math.abs(one.foot.px - foot.px) < 30 * size && Math.abs(one.foot.py - foot.py) < 26 * size,
    );
    if (near) near.numbers.push(flag.number);
    else
      placed.push({ flag, numbers: [flag.number], foot, head: { px: foot.px, py: foot.py - pole * size } });
  }
  return placed;
}

/** The shape tells the severity as the lists do: octagon, triangle, ring. Colour only helps. */
function paintFlag(surface: Surface, { flag, head, foot, numbers }: PlacedFlag): void {
  const { context, palette } = surface;
  const size = sizeOf(surface.view);
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.25;
  context.beginPath();
  context.moveTo(foot.px, foot.py);
  context.lineTo(head.px, head.py + 9 * size);
  context.stroke();
  // Saving and restoring costs more than the flag: only where it is drawn smaller.
  if (size !== 1) {
    context.save();
    context.translate(head.px, head.py);
    context.scale(size, size);
    context.translate(-head.px, -head.py);
  }
  const text = String(flag.number);
  context.beginPath();
  shape(context, flag.severity, { ...head, wide: text.length > 2 ? 4 : 0 });
  context.lineJoin = "round";
  context.fillStyle = flag.current ? palette[flag.severity] : palette.plan;
  context.fill();
  context.strokeStyle = palette[flag.severity];
  context.lineWidth = flag.current ? 3 : 2;
  context.stroke();
  context.font = `600 12px ${family}`;
  context.textAlign = "center";
  context.textBaseline = "middle";
  context.fillStyle = flag.current ? onFlag(palette, flag.severity) : palette.ink;
  context.fillText(text, head.px, head.py + (flag.severity === "should" ? 3 : 0.5));
  if (numbers.length > 1) {
    context.font = `600 11px ${family}`;
    context.textAlign = "left";
    context.strokeStyle = palette.plan;
    context.lineWidth = 3;
    const more = `+${numbers.length - 1}`;
    context.strokeText(more, head.px + 14, head.py - 7);
    context.fillStyle = palette.ink;
    context.fillText(more, head.px + 14, head.py - 7);
  }
  if (size !== 1) context.restore();
}

/** Dark ink on the light hues, light on the dark blue. */
const onFlag = (palette: Palette, severity: FlagMark["severity"]): string =>
  severity === "note" && palette.ink === "#1e2430" ? "#ffffff" : "#14171c";

function shape(
  context: Brush,
  severity: FlagMark["severity"],
  { px, py, wide }: Pixel & { readonly wide: number },
): void {
  switch (severity) {
    case "must": {
      const [long, short] = [11 + wide, 5];
      const points: readonly (readonly [number, number])[] = [
        [-long, -short],
        [-short - wide, -11],
        [short + wide, -11],
        [long, -short],
        [long, short],
        [short + wide, 11],
        [-short - wide, 11],
        [-long, short],
      ];
      for (const [i, [x, y]] of points.entries()) {
        if (i === 0) context.moveTo(px + x, py + y);
        else context.lineTo(px + x, py + y);
      }
      context.closePath();
      return;
    }
    case "should":
      context.moveTo(px, py - 14);
      context.lineTo(px + 15 + wide, py + 11);
      context.lineTo(px - 15 - wide, py + 11);
      context.closePath();
      return;
    case "note":
      context.roundRect(px - 11 - wide, py - 11, 22 + 2 * wide, 22, 11);
  }
}
