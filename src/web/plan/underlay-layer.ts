import { densityNow, lay, place } from "./laid.ts";
import type { Frame } from "./paint/frame.ts";
import type { Picture } from "./picture.ts";
import type { UnderlayAnswer, UnderlayQuestion, UnderlayWish } from "./underlay-asked.ts";
import type { View } from "./view.ts";

/** Linework of a foreign file, as ink on the painted building: painted by a worker and shown when it is ready. */
interface UnderlayLayer {
  readonly show: (picture: Picture) => void;
  readonly place: (view: View) => void;
  readonly stop: () => void;
}

/** Pictures hold at most so many device pixels: what is wider than the screen is given up first. */
const mostPixels = 6e6;

/** @param onTrouble - Called once where the linework cannot be painted; it is not tried again until the page is loaded anew. */
export function underlayOn(canvas: HTMLCanvasElement, onTrouble: () => void): UnderlayLayer {
  const context = canvas.getContext("bitmaprenderer");
  let worker: Worker | undefined;
  let state: "sound" | "broken" = "sound";
  let asked: { readonly wish: UnderlayWish; readonly lines: readonly Float64Array[] } | undefined;
  let shown: UnderlayWish | undefined;
  let viewed: View | undefined;

  const ask = (question: UnderlayQuestion): void => {
    if (state === "broken") return;
    try {
      worker ??= started();
      worker.postMessage(question);
    } catch {
      fail();
    }
  };
  const fail = (): void => {
    if (state === "broken") return;
    state = "broken";
    worker?.terminate();
    shown = undefined;
    context?.transferFromImageBitmap(null);
    onTrouble();
  };
  const started = (): Worker => {
    const made = new Worker(new URL("./underlay-worker.ts", import.meta.url), {
      type: "module",
      name: "underlay",
    });
    made.onmessage = ({ data }: MessageEvent<UnderlayAnswer>) => {
      if (data.tell === "failed") return fail();
      if (data.turn !== asked?.wish.turn) return data.bitmap.close();
      shown = asked.wish;
      lay(canvas, shown.frame);
      context?.transferFromImageBitmap(data.bitmap);
      if (viewed) place(canvas, shown, viewed);
    };
    // Its script cannot be loaded, or threw.
    made.onerror = fail;
    return made;
  };

  return {
    show: (picture) => {
      const lines = linesOn(picture);
      const wish: UnderlayWish = {
        turn: (asked?.wish.turn ?? 0) + 1,
        view: picture.view,
        frame: frameOf(picture.view),
        density: densityNow(),
        colour: picture.palette.edge,
      };
      const sameLines = asked !== undefined && sameList(asked.lines, lines);
      if (sameLines && asked && sameWish(asked.wish, wish)) return;
      if (!asked && lines.length === 0) return;
      asked = { wish, lines };
      if (lines.length === 0) {
        shown = undefined;
        context?.transferFromImageBitmap(null);
        ask({ ask: "lines", lines });
        return;
      }
      if (!sameLines) ask({ ask: "lines", lines });
      ask({ ask: "paint", ...wish });
    },
    place: (view) => {
      viewed = view;
      if (shown) place(canvas, shown, view);
    },
    stop: () => worker?.terminate(),
  };
}

const linesOn = ({ underlays, storey }: Picture): readonly Float64Array[] =>
  underlays.filter((one) => one.storey === storey && one.lines.length > 0).map(({ lines }) => lines);

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

const sameWish = (a: UnderlayWish, b: UnderlayWish): boolean =>
  a.view === b.view && a.density === b.density && a.colour === b.colour;

/** The screen and half of it on every side, less where that would be too many pixels. */
function frameOf({ width, height }: View): Frame {
  const whole = width * height * densityNow() ** 2;
  const margin = Math.max(0, Math.min(0.5, (Math.sqrt(mostPixels / whole) - 1) / 2));
  const [wide, high] = [Math.ceil(width * margin), Math.ceil(height * margin)];
  return { left: -wide, top: -high, width: width + 2 * wide, height: height + 2 * high };
}
