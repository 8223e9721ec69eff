import { drawnSpoken } from "../texts/drawn.ts";
import { densityNow, lay, place } from "./laid.ts";
import { type Frame, sameFrame } from "./paint/frame.ts";
import type { PaintAnswer, PaintQuestion, PictureLayer } from "./paint-asked.ts";
import type { Picture } from "./picture.ts";
import { changeBetween } from "./picture-change.ts";
import { underlayOn } from "./underlay-layer.ts";
import type { View } from "./view.ts";

export interface Painter {
  readonly show: (picture: Picture) => void;
  readonly stop: () => void;
}

/** The hand rests when the view has not changed for so long. */
const settleMilliseconds = 90;

/** A canvas of the page, and where what is on it was painted for. */
interface Shown {
  readonly canvas: HTMLCanvasElement;
  painted: { readonly view: View; readonly frame: Frame } | undefined;
}

/**
 * Shows the plan on canvases, one above the other. A worker paints them; the page only lays what comes into its place, and
 * moves it while one pans or zooms: what was painted for another view is there until its turn comes.
 *
 * @param hosts - Below and above the pictures that lie under the plan.
 */
export function painterOn(
  hosts: { readonly below: HTMLElement; readonly above: HTMLElement },
  on: { readonly underlayTrouble: () => void; readonly trouble: () => void },
): Painter {
  const made: HTMLCanvasElement[] = [];
  const canvasIn = (host: HTMLElement, name: string): HTMLCanvasElement => {
    const canvas = document.createElement("canvas");
    canvas.className = name;
    made.push(canvas);
    return host.appendChild(canvas);
  };
  const shown = (canvas: HTMLCanvasElement): Shown => ({ canvas, painted: undefined });
  const base = shown(canvasIn(hosts.below, "plan-base"));
  const linework = [canvasIn(hosts.below, "plan-linework"), canvasIn(hosts.below, "plan-linework")] as const;
  const [zones, heldZones, words, signs, heldSigns] = (
    ["plan-zones", "plan-held-zones", "plan-words", "plan-signs", "plan-held-signs"] as const
  ).map((name) => shown(canvasIn(hosts.above, name))) as [Shown, Shown, Shown, Shown, Shown];
  const pictures: Readonly<Record<PictureLayer, Shown>> = { base, zones, words, signs };
  const held = { zones: heldZones, signs: heldSigns };
  const brushes = new Map(
    Object.values(pictures).map(({ canvas }) => [canvas, canvas.getContext("bitmaprenderer")]),
  );
  const underlay = underlayOn(linework, on.underlayTrouble);
  const worker = new Worker(new URL("./paint-worker.ts", import.meta.url), { type: "module", name: "paint" });
  const ask = (question: PaintQuestion, transfer: Transferable[] = []): void =>
    worker.postMessage(question, transfer);
  const spoken = drawnSpoken();
  if (spoken) ask({ ask: "speak", spoken });
  const canvases = {
    zones: heldZones.canvas.transferControlToOffscreen(),
    signs: heldSigns.canvas.transferControlToOffscreen(),
  };
  ask({ ask: "canvases", ...canvases }, [canvases.zones, canvases.signs]);

  let next: Picture | undefined;
  /** What the worker has. */
  let sent: { readonly picture: Picture; readonly density: number } | undefined;
  let waiting = 0;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let resting = false;

  const wait = (): void => {
    waiting ||= requestAnimationFrame(paint);
  };
  const rest = (): void => {
    resting = true;
    wait();
  };
  const paint = (): void => {
    waiting = 0;
    if (!next || next.view.width === 0) return;
    const picture = next;
    clearTimeout(settling);
    // While one pans or zooms the finished picture is moved; it is painted afresh when the hand rests or has gone far.
    if (sent && onlyViewed(sent.picture, picture) && !resting && !isFar(sent.picture.view, picture.view))
      settling = setTimeout(rest, settleMilliseconds);
    else send(picture);
    resting = false;
    for (const one of [...Object.values(pictures), ...Object.values(held)]) placeFor(one, picture.view);
    underlay.place(picture.view);
  };
  const placeFor = ({ canvas, painted }: Shown, view: View): void => {
    if (painted) place(canvas, painted, view);
  };
  const send = (picture: Picture): void => {
    const density = densityNow();
    const change = changeBetween(sent?.picture, picture, density);
    const same = Object.keys(change.fields).length === 0 && !change.site && !change.results;
    if (!same || sent?.density !== density) ask({ ask: "picture", change });
    sent = { picture, density };
    underlay.show(picture);
  };

  worker.onerror = on.trouble;
  worker.onmessage = ({ data }: MessageEvent<PaintAnswer>) => {
    if (data.tell === "failed") return on.trouble();
    if (data.tell === "held") {
      lie(held[data.layer], data.view, data.frame);
      return;
    }
    const layer = pictures[data.layer];
    const { canvas } = layer;
    const { bitmap, view } = data;
    // To empty a canvas costs as much as to fill it: one with nothing on it is left out of the picture.
    canvas.style.visibility = bitmap ? "" : "hidden";
    if (bitmap) {
      if (canvas.width !== bitmap.width || canvas.height !== bitmap.height)
        [canvas.width, canvas.height] = [bitmap.width, bitmap.height];
      brushes.get(canvas)?.transferFromImageBitmap(bitmap);
    }
    lie(layer, view, { left: 0, top: 0, width: view.width, height: view.height });
  };
  const lie = (layer: Shown, view: View, frame: Frame): void => {
    const before = layer.painted;
    layer.painted = { view, frame };
    if (!sameFrame(before?.frame, frame)) lay(layer.canvas, frame);
    if (next) placeFor(layer, next.view);
  };

  return {
    show: (picture) => {
      next = picture;
      wait();
    },
    stop: () => {
      cancelAnimationFrame(waiting);
      clearTimeout(settling);
      worker.terminate();
      underlay.stop();
      for (const canvas of made) canvas.remove();
    },
  };
}

/** Whether two pictures differ in the view alone. */
function onlyViewed(a: Picture, b: Picture): boolean {
  if (b.held || a.view === b.view || a.view.width !== b.view.width || a.view.height !== b.view.height)
    return false;
  return (
    (Object.keys(a) as (keyof Picture)[]).every(
      (key) =>
        key === "view" ||
        key === "insets" ||
        key === "grips" ||
        key === "toolState" ||
        key === "preview" ||
        a[key] === b[key],
    ) &&
    (a.toolState.on === b.toolState.on || b.toolState.on === "pan" || b.toolState.on === "rest")
  );
}

/** So far moved or zoomed that the old picture would not do. */
function isFar(from: View, to: View): boolean {
  const shift = Math.max(
    (Math.abs(from.x - to.x) * to.scale) / to.width,
    (Math.abs(from.y - to.y) * to.scale) / to.height,
  );
  const zoom = to.scale / from.scale;
  return shift > 0.5 || zoom > 2.5 || zoom < 0.5;
}
