import { breath } from "../breath.ts";
import { strokeLines } from "./paint/lines.ts";
import type { UnderlayAnswer, UnderlayQuestion, UnderlayWish } from "./underlay-asked.ts";

/** Paints the linework under the plan beside the screen, so that the hand never waits for hundreds of thousands of lines. */
let lines: readonly Float64Array[] = [];
let wish: UnderlayWish | undefined;
let running = false;
let shown: readonly (ImageBitmapRenderingContext | null)[] = [];

addEventListener("message", ({ data }: MessageEvent<UnderlayQuestion>) => {
  if (data.ask === "canvases") shown = data.canvases.map((canvas) => canvas.getContext("bitmaprenderer"));
  else if (data.ask === "lines") lines = data.lines;
  else wish = data;
  if (!running) void work();
});

async function work(): Promise<void> {
  running = true;
  while (wish) {
    const asked = wish;
    wish = undefined;
    try {
      const bitmap = await painted(asked);
      if (!bitmap) continue;
      const surface = shown[asked.canvas];
      if (!surface) throw new Error("There is no surface to show it on.");
      surface.canvas.width = bitmap.width;
      surface.canvas.height = bitmap.height;
      surface.transferFromImageBitmap(bitmap);
      // It goes to the screen when this task ends: only then is the page told.
      await breath();
      await breath();
      postMessage({ tell: "painted", turn: asked.turn } satisfies UnderlayAnswer);
    } catch {
      postMessage({ tell: "failed" } satisfies UnderlayAnswer);
    }
  }
  running = false;
}

/** @returns Nothing where something newer was asked for meanwhile. */
async function painted(asked: UnderlayWish): Promise<ImageBitmap | undefined> {
  const { view, frame, density, colour } = asked;
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(frame.width * density)),
    Math.max(1, Math.round(frame.height * density)),
  );
  const context = canvas.getContext("2d");
  if (!context) throw new Error("There is no surface to paint on.");
  context.strokeStyle = colour;
  context.lineWidth = density;
  const scale = view.scale * density;
  const to = {
    scale,
    x: (view.width / 2 - frame.left) * density - view.x * scale,
    y: (view.height / 2 - frame.top) * density + view.y * scale,
    width: canvas.width,
    height: canvas.height,
  };
  for (const _ of strokeLines(context, lines, to)) {
    await breath();
    if (wish) return undefined;
  }
  return canvas.transferToImageBitmap();
}
