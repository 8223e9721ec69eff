import type { Point } from "#engine";
import { applied } from "../jobs/apply.ts";
import { paintBase } from "./paint/base.ts";
import { type Frame, inPixels, type Surface } from "./paint/surface.ts";
import { paintZones } from "./paint/zones.ts";
import { paintHeld, paintMoving, paintWords, pathsOf } from "./painted.ts";
import type { Picture } from "./picture.ts";
import { type Scene, sceneOf } from "./scene.ts";
import { boundsOfResults, changedBetween, differ, type Results, resultsIn, resultsOf } from "./still.ts";
import { type Bounds, boundsOf, toPixel, type View } from "./view.ts";

export interface Painter {
  readonly show: (picture: Picture) => void;
  readonly scene: () => Scene | undefined;
  readonly stop: () => void;
}

/**
 * Paints the plan on canvases, one above the other: the building, the zones, the zones that a drag changes, words and signs,
 * and what moves under the hand. Each is painted only when something that it shows has changed, once a frame at most:
 * while one drags, that is the two small ones.
 */
export function painterOn(layers: readonly HTMLCanvasElement[]): Painter {
  const contexts = layers.map((canvas) => canvas.getContext("2d")) as CanvasRenderingContext2D[];
  let next: Picture | undefined;
  let painted: Picture | undefined;
  let waiting = 0;
  let density = 0;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let resting = false;
  let scene: Scene | undefined;
  let still: Results | undefined;
  let held: Results | undefined;
  let frame: Frame | undefined;

  const reframe = (to: Frame | undefined, view: View): void => {
    frame = to;
    for (const layer of heldLayers) cover(layers[layer] as HTMLCanvasElement, view, { frame, density });
  };
  const paint = (): void => {
    waiting = 0;
    if (!next || next.view.width === 0) return;
    const picture = next;
    const before = painted;
    if (before && onlyViewed(before, picture)) {
      // While one pans or zooms the finished picture is moved; it is painted afresh when the hand rests or has gone far.
      place(layers, before.view, picture.view);
      clearTimeout(settling);
      if (!isFar(before.view, picture.view)) {
        settling = setTimeout(() => {
          resting = true;
          waiting ||= requestAnimationFrame(paint);
        }, settleMilliseconds);
        if (!resting) return;
      }
    }
    resting = false;
    clearTimeout(settling);
    place(layers, picture.view, picture.view);
    painted = picture;
    const resized = sized(layers, picture.view, density);
    if (resized) {
      density = globalThis.devicePixelRatio || 1;
      frame = undefined;
    }
    const moved =
      resized ||
      !before ||
      before.view !== picture.view ||
      before.palette !== picture.palette ||
      before.units !== picture.units;
    const surface = (layer: number): Surface => ({
      context: contexts[layer] as CanvasRenderingContext2D,
      view: picture.view,
      palette: picture.palette,
      density,
      frame: heldLayers.includes(layer) ? frame : undefined,
      content: picture.held && heldLayers.includes(layer) ? "changing" : "lasting",
    });
    const rebuilt = !scene || !before || !sameGround(before, picture);
    if (rebuilt) scene = sceneOf(picture.site, picture.storey, picture.underlays);
    if (moved || rebuilt) {
      paintBase(cleared(surface(0)), scene as Scene);
    }
    const shownChanged =
      moved || rebuilt || before?.shown !== picture.shown || before.focus !== picture.focus;
    const known = still;
    if (!known || !before || !sameResults(before, picture)) still = kept(known, resultsOf(picture, "still"));
    const now = still as Results;
    if (shownChanged || !known) paintZones(cleared(surface(1)), pathsOf(now), picture.shown);
    else if (known !== now) paintChanged(surface(1), { known, now, shown: picture.shown });
    const answered =
      shownChanged || before?.held !== picture.held || before.calculated !== picture.calculated;
    if (picture.held) {
      if (answered || !held) held = resultsOf(picture, "held");
      const framed = frameOf(picture, held, before?.held && frame);
      const reframed = !sameFrame(framed, frame);
      if (reframed) reframe(framed, picture.view);
      if (answered || reframed) paintHeld(cleared(surface(2)), picture, pathsOf(held, "changing"));
    } else if (held) {
      held = undefined;
      reframe(undefined, picture.view);
    }
    if (shownChanged || known !== now || !sameSigns(before as Picture, picture))
      paintWords(cleared(surface(3)), { picture, scene: scene as Scene, paths: pathsOf(now) });
    paintMoving(cleared(surface(4)), picture);
  };

  return {
    show: (picture) => {
      next = picture;
      waiting ||= requestAnimationFrame(paint);
    },
    scene: () => scene,
    stop: () => {
      cancelAnimationFrame(waiting);
      clearTimeout(settling);
    },
  };
}

/** The hand rests when the view has not changed for so long. */
const settleMilliseconds = 90;

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

/** Moves the painted layers to where another view would show them. */
function place(layers: readonly HTMLCanvasElement[], painted: View, shown: View): void {
  const k = shown.scale / painted.scale;
  const x = (painted.x - shown.x) * shown.scale + (shown.width / 2) * (1 - k);
  const y = (shown.y - painted.y) * shown.scale + (shown.height / 2) * (1 - k);
  const moved = painted === shown ? "" : `translate(${x}px, ${y}px) scale(${k})`;
  for (const canvas of layers) if (canvas.style.transform !== moved) canvas.style.transform = moved;
}

/** Records that the fixed drawing is made of. */
const groundKinds = ["rooms", "openings", "obstacles", "floorPieces", "luminaires"] as const;

const sameGround = (a: Picture, b: Picture): boolean =>
  a.storey === b.storey &&
  a.underlays === b.underlays &&
  groundKinds.every((kind) => a.site[kind] === b.site[kind]);

/** Whether the results are surely the same; which of them differ is looked at where they may not be. */
const sameResults = (a: Picture, b: Picture): boolean =>
  a.storey === b.storey &&
  a.tried === b.tried &&
  a.site === b.site &&
  a.held === b.held &&
  a.calculated === b.calculated;

/** The results that were known where the new ones hold the same, so that nothing is painted again for them. */
const kept = (known: Results | undefined, now: Results): Results =>
  known && !differ(known, now) ? known : now;

/** Room for the width of lines, waves and dots. [px] */
const lineRoom = 4;

/** Paints zones anew only where they differ from those that were painted before. */
function paintChanged(
  surface: Surface,
  of: { readonly known: Results; readonly now: Results; readonly shown: Picture["shown"] },
): void {
  const changed = changedBetween(of.known, of.now);
  if (!changed) return;
  const { context, view } = surface;
  const room = lineRoom / view.scale;
  const { px, py } = toPixel(view, [changed.left - room, changed.top + room]);
  const end = toPixel(view, [changed.right + room, changed.bottom - room]);
  const [left, top] = [Math.floor(px), Math.floor(py)];
  const [width, height] = [Math.ceil(end.px) - left, Math.ceil(end.py) - top];
  inPixels(surface);
  context.save();
  context.beginPath();
  context.rect(left, top, width, height);
  context.clip();
  context.clearRect(left, top, width, height);
  paintZones(surface, pathsOf(resultsIn(of.now, grown(changed, 2 * room))), of.shown);
  context.restore();
}

const grown = (bounds: Bounds, by: number): Bounds => ({
  left: bounds.left - by,
  right: bounds.right + by,
  bottom: bounds.bottom - by,
  top: bounds.top + by,
});

/** Whether the words and signs above the zones are the same, the zones themselves aside. */
const sameSigns = (a: Picture, b: Picture): boolean =>
  a.site === b.site &&
  a.tried === b.tried &&
  a.flags === b.flags &&
  a.selection === b.selection &&
  a.insets.left === b.insets.left &&
  a.insets.bottom === b.insets.bottom;

function sized(layers: readonly HTMLCanvasElement[], view: View, density: number): boolean {
  const now = globalThis.devicePixelRatio || 1;
  const [width, height] = [Math.round(view.width * now), Math.round(view.height * now)];
  if (density === now && layers[0]?.width === width && layers[0].height === height) return false;
  for (const canvas of layers) cover(canvas, view, { frame: undefined, density: now });
  return true;
}

/** Makes a canvas as large as the part of the screen that it covers, and lays it there. */
function cover(
  canvas: HTMLCanvasElement,
  view: View,
  { frame, density }: { readonly frame: Frame | undefined; readonly density: number },
): void {
  const { left, top, width, height } = frame ?? { left: 0, top: 0, width: view.width, height: view.height };
  canvas.width = Math.round(width * density);
  canvas.height = Math.round(height * density);
  canvas.style.inset = frame ? `${top}px auto auto ${left}px` : "";
  canvas.style.inlineSize = frame ? `${width}px` : "";
  canvas.style.blockSize = frame ? `${height}px` : "";
}

/** Layers that hold little while one drags: what a canvas costs in a frame is its size. */
const heldLayers: readonly number[] = [2, 4];

/** Room for tags, grips and figures beside a device. [px] */
const signRoom = 96;
/** Frames grow in steps of so many pixels, so that they seldom do. */
const frameStep = 64;

/** The part of the screen that a drag paints to: its rooms, its zones, what is under the hand. It only grows while one drags. */
function frameOf(picture: Picture, held: Results, before: Frame | undefined): Frame {
  const { view, site } = picture;
  const places = [...(picture.held?.rooms ?? [])].flatMap(
    (id) => site.rooms.find((room) => room.id === id)?.outline ?? [],
  );
  const found = boundsOfResults(held);
  const ends: Point[] = found
    ? [
        [found.left, found.bottom],
        [found.right, found.top],
      ]
    : [];
  const moved = applied(site, picture.preview).detectors.filter(({ id }) => picture.held?.devices.has(id));
  const pixels = [...places, ...ends, ...moved.map(({ at }) => at)].map((point) => toPixel(view, point));
  const needed = boundsOf(pixels.map(({ px, py }): Point => [px, py]));
  const known = before ?? { left: Infinity, top: Infinity, width: -Infinity, height: -Infinity };
  const least = (value: number, edge: number): number =>
    Math.max(0, Math.min(edge, Math.floor((value - signRoom) / frameStep) * frameStep));
  const most = (value: number, edge: number, whole: number): number =>
    Math.min(whole, Math.max(edge, Math.ceil((value + signRoom) / frameStep) * frameStep));
  const left = least(needed?.left ?? 0, known.left);
  const top = least(needed?.bottom ?? 0, known.top);
  const right = most(needed?.right ?? 0, before ? known.left + known.width : -Infinity, view.width);
  const bottom = most(needed?.top ?? 0, before ? known.top + known.height : -Infinity, view.height);
  return { left, top, width: Math.max(1, right - left), height: Math.max(1, bottom - top) };
}

const sameFrame = (a: Frame | undefined, b: Frame | undefined): boolean =>
  a === b || (a?.left === b?.left && a?.top === b?.top && a?.width === b?.width && a?.height === b?.height);

/** The surface with nothing on it. */
function cleared(surface: Surface): Surface {
  inPixels(surface);
  const { left, top, width, height } = surface.frame ?? { left: 0, top: 0, ...surface.view };
  surface.context.clearRect(left, top, width, height);
  return surface;
}
