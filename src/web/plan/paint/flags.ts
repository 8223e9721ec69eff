import type { Finding } from "#engine";
import type { Pixel } from "../view.ts";
import type { Palette } from "./palette.ts";
import { family, inPixels, onScreen, pixelOf, type Surface } from "./surface.ts";

interface FlagMark {
  readonly number: number;
  readonly severity: Finding["severity"];
  readonly at: readonly [number, number];
  readonly current: boolean;
}

const pole = 24;

/** Numbered flags where something needs attention; those that would cover each other stand side by side. */
export function paintFlags(surface: Surface, flags: readonly FlagMark[]): void {
  inPixels(surface);
  for (const { flag, head, foot } of placedFlags(surface, flags)) paintFlag(surface, flag, { head, foot });
}

/** Where the heads of the flags stand; the flag that a pixel hits is found from the same places. */
export function placedFlags(
  surface: Pick<Surface, "view">,
  flags: readonly FlagMark[],
): readonly { readonly flag: FlagMark; readonly head: Pixel; readonly foot: Pixel }[] {
  const taken: Pixel[] = [];
  return flags.flatMap((flag) => {
    const foot = pixelOf(surface as Surface, flag.at);
    if (!onScreen(surface.view, foot)) return [];
    let head: Pixel = { px: foot.px, py: foot.py - pole };
    while (taken.some(({ px, py }) => Math.abs(px - head.px) < 24 && Math.abs(py - head.py) < 20))
      head = { px: head.px + 26, py: head.py };
    taken.push(head);
    return [{ flag, head, foot }];
  });
}

/** The shape tells the severity as the lists do: octagon, triangle, ring. Colour only helps. */
function paintFlag(
  surface: Surface,
  flag: FlagMark,
  at: { readonly head: Pixel; readonly foot: Pixel },
): void {
  const { context, palette } = surface;
  const { head, foot } = at;
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.25;
  context.beginPath();
  context.moveTo(foot.px, foot.py);
  context.lineTo(head.px, head.py + 9);
  context.stroke();
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
}

/** Dark ink on the light hues, light on the dark blue. */
const onFlag = (palette: Palette, severity: FlagMark["severity"]): string =>
  severity === "note" && palette.ink === "#1e2430" ? "#ffffff" : "#14171c";

function shape(
  context: CanvasRenderingContext2D,
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
      points.forEach(([x, y], i) =>
        i === 0 ? context.moveTo(px + x, py + y) : context.lineTo(px + x, py + y),
      );
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
