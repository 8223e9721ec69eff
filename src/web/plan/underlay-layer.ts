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

/** What the worker handed over is on its way to the screen for some frames. */
const swapFrames = 3;

/** Pictures hold at most so many device pixels: what is wider than the screen is given up first. */
const mostPixels = 6e6;

/**
 * The worker hands its pictures to the screen itself: to take one of several million pixels over would hold up the page. Two canvases in turns:
 * what is painted for another view is out of sight until all of it is there.
 *
 * @param canvases - One above the other.
 * @param onTrouble - Called once where the linework cannot be painted; it is not tried again until the page is loaded anew.
 */
export function underlayOn(
  canvases: readonly [HTMLCanvasElement, HTMLCanvasElement],
  onTrouble: () => void,
): UnderlayLayer {
  let worker: Worker | undefined;
  let state: "sound" | "broken" = "sound";
  let asked: { readonly wish: UnderlayWish; readonly lines: readonly Float64Array[] } | undefined;
  let shown: UnderlayWish | undefined;
  let viewed: View | undefined;
  /** The canvas on the screen. */
  let front: 0 | 1 = 0;
  /** What is painted is about to come on the screen; what is asked for meanwhile waits until its canvas is free. */
  let swapping = 0;
  for (const canvas of canvases) hide(canvas);

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
    clear();
    onTrouble();
  };
  const clear = (): void => {
    shown = undefined;
    cancelAnimationFrame(swapping);
    swapping = 0;
    for (const canvas of canvases) hide(canvas);
  };
  const back = (): 0 | 1 => (front === 0 ? 1 : 0);
  const paint = ({ wish }: NonNullable<typeof asked>): void => {
    if (!swapping) ask({ ask: "paint", ...wish, canvas: back() });
  };
  const swap = (wish: UnderlayWish): void => {
    const [old, canvas] = [canvases[front], canvases[back()]];
    lay(canvas, wish.frame);
    let frames = swapFrames;
    const wait = (): void => {
      swapping = requestAnimationFrame(frames-- > 0 ? wait : come);
    };
    const come = (): void => {
      swapping = 0;
      front = back();
      shown = wish;
      if (viewed) place(canvas, wish, viewed);
      canvas.style.opacity = "";
      hide(old);
      if (asked && asked.wish.turn !== wish.turn && asked.lines.length > 0) paint(asked);
    };
    wait();
  };
  const started = (): Worker => {
    const made = new Worker(new URL("./underlay-worker.ts", import.meta.url), {
      type: "module",
      name: "underlay",
    });
    made.onmessage = ({ data }: MessageEvent<UnderlayAnswer>) => {
      if (data.tell === "failed") return fail();
      if (data.turn === asked?.wish.turn) swap(asked.wish);
    };
    // Its script cannot be loaded, or threw.
    made.onerror = fail;
    const [a, b] = [canvases[0].transferControlToOffscreen(), canvases[1].transferControlToOffscreen()];
    made.postMessage({ ask: "canvases", canvases: [a, b] } satisfies UnderlayQuestion, [a, b]);
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
        canvas: back(),
      };
      const sameLines = asked !== undefined && sameList(asked.lines, lines);
      if (sameLines && asked && sameWish(asked.wish, wish)) return;
      if (!asked && lines.length === 0) return;
      asked = { wish, lines };
      if (lines.length === 0) {
        clear();
        ask({ ask: "lines", lines });
        return;
      }
      if (!sameLines) ask({ ask: "lines", lines });
      paint(asked);
    },
    place: (view) => {
      viewed = view;
      if (shown) place(canvases[front], shown, view);
    },
    stop: () => {
      cancelAnimationFrame(swapping);
      worker?.terminate();
    },
  };
}

/** Not drawn, and yet ready to be: a canvas that is not shown at all would hold its picture back. */
function hide(canvas: HTMLCanvasElement): void {
  canvas.style.opacity = "0";
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
