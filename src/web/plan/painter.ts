import { signsFrame, zonesFrame } from "./held-frame.ts";
import { paintBase } from "./paint/base.ts";
import { again, densityNow, emptied, type Layer, layerOn, place } from "./paint/layer.ts";
import { inPixels, type Surface } from "./paint/surface.ts";
import { paintWires } from "./paint/wires.ts";
import { paintZones } from "./paint/zones.ts";
import { paintHeld, paintMoving, paintWords, pathsOf } from "./painted.ts";
import type { Picture } from "./picture.ts";
import { type Scene, sceneOf } from "./scene.ts";
import { changedBetween, differ, type Results, resultsIn, resultsOf } from "./still.ts";
import { underlayOn } from "./underlay-layer.ts";
import { type Bounds, toPixel, type View } from "./view.ts";

export interface Painter {
  readonly show: (picture: Picture) => void;
  readonly scene: () => Scene | undefined;
  readonly stop: () => void;
}

/** What takes long to paint: one of them in a frame, in this order. */
const heavy = ["base", "zones", "words"] as const;
type Heavy = (typeof heavy)[number];

/** With so much spent in a frame, what else takes long waits for the next one. [ms] */
const longEnough = 4;

/** The hand rests when the view has not changed for so long. */
const settleMilliseconds = 90;

/**
 * Paints the plan on canvases, one above the other: the building, linework of a foreign file, the zones, the zones that a drag
 * changes, words and signs, and what moves under the hand. Each is painted only when something that it shows has changed,
 * once a frame at most: while one drags, that is the two small ones. Each knows for which view it was painted, and is moved
 * to the one on show until its turn comes.
 */
export function painterOn(canvases: readonly HTMLCanvasElement[], onTrouble: () => void): Painter {
  const [lowest, linework, ...upper] = canvases as [HTMLCanvasElement, ...HTMLCanvasElement[]];
  const underlay = underlayOn(linework as HTMLCanvasElement, onTrouble);
  const [base, zones, heldZones, words, moving] = [lowest, ...upper].map(layerOn) as [
    Layer,
    Layer,
    Layer,
    Layer,
    Layer,
  ];
  const due = new Set<Heavy>();
  let next: Picture | undefined;
  let seen: Picture | undefined;
  let waiting = 0;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let resting = false;
  let density = 0;
  let scene: Scene | undefined;
  let still: Results = { zones: new Map(), rooms: new Map() };
  let held: Results | undefined;
  let zonesSeen: { readonly picture: Picture; readonly still: Results; readonly held: boolean } | undefined;

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
    const start = performance.now();
    const picture = next;
    clearTimeout(settling);
    // While one pans or zooms the finished picture is moved; it is painted afresh when the hand rests or has gone far.
    if (seen && onlyViewed(seen, picture) && !resting && !isFar(seen.view, picture.view))
      settling = setTimeout(rest, settleMilliseconds);
    else look(picture);
    resting = false;
    for (const one of heavy) {
      if (!due.delete(one)) continue;
      paintHeavy[one](picture);
      if (performance.now() - start > longEnough) break;
    }
    if (due.size > 0) wait();
    underlay.place(picture.view);
    for (const layer of [base, zones, heldZones, words, moving])
      if (layer.painted) place(layer.canvas, layer.painted, picture.view);
  };

  /** Sees what has changed: paints what is quick, and notes what takes long. */
  const look = (picture: Picture): void => {
    const before = seen;
    seen = picture;
    const moved =
      !before ||
      density !== densityNow() ||
      before.view !== picture.view ||
      before.palette !== picture.palette ||
      before.units !== picture.units;
    density = densityNow();
    const rebuilt = !scene || !before || !sameGround(before, picture);
    if (rebuilt) scene = sceneOf(picture.site, picture.storey);
    underlay.show(picture);
    if (moved || rebuilt) due.add("base");
    const shownChanged =
      !before ||
      moved ||
      rebuilt ||
      before.shown !== picture.shown ||
      before.wires !== picture.wires ||
      before.focus !== picture.focus;
    const known = still;
    if (!before || !sameResults(before, picture)) {
      const now = resultsOf(picture, "still");
      if (differ(known, now)) still = now;
    }
    if (shownChanged || known !== still || (zonesSeen?.held ?? false) !== (picture.held !== undefined))
      due.add("zones");
    if (shownChanged || known !== still || !sameSigns(before, picture)) due.add("words");
    const answered = shownChanged || before.held !== picture.held || before.calculated !== picture.calculated;
    if (!picture.held) held = undefined;
    else if (answered || !held) {
      held = resultsOf(picture, "held");
      if (!due.has("zones")) paintHeldZones(picture);
    }
    const frame = picture.held && signsFrame(picture, before?.held && moving.painted?.frame);
    paintMoving(emptied(moving, { ...picture, frame }), picture);
  };

  const paintHeldZones = (picture: Picture): void => {
    const frame = held && zonesFrame(picture, held, zonesSeen?.held ? heldZones.painted?.frame : undefined);
    const surface = emptied(heldZones, { ...picture, frame: frame ?? nowhere });
    if (held) paintHeld(surface, picture, pathsOf(held, "changing"));
  };

  const paintHeavy: Readonly<Record<Heavy, (picture: Picture) => void>> = {
    base: (picture) => paintBase(emptied(base, picture), scene as Scene),
    zones: (picture) => {
      const before = zonesSeen;
      const same =
        before &&
        !picture.wires &&
        sameZoneLook(before.picture, picture) &&
        zones.painted?.density === densityNow();
      const surface = same ? again(zones, picture.palette) : undefined;
      if (before && surface) paintChanged(surface, { known: before.still, now: still, shown: picture.shown });
      else {
        const whole = emptied(zones, picture);
        paintZones(whole, pathsOf(still), picture.shown);
        if (picture.wires) paintWires(whole, picture.wires);
      }
      // What the hand takes up or lays down leaves one picture and comes into the other in the same frame.
      if (picture.held || before?.held) paintHeldZones(picture);
      zonesSeen = { picture, still, held: picture.held !== undefined };
    },
    words: (picture) =>
      paintWords(emptied(words, picture), { picture, scene: scene as Scene, paths: pathsOf(still) }),
  };

  return {
    show: (picture) => {
      next = picture;
      wait();
    },
    scene: () => scene,
    stop: () => {
      cancelAnimationFrame(waiting);
      clearTimeout(settling);
      underlay.stop();
    },
  };
}

/** A frame for a layer that shows nothing. */
const nowhere = { left: 0, top: 0, width: 1, height: 1 };

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

/** Records that the fixed drawing is made of. */
const groundKinds = ["rooms", "openings", "obstacles", "floorPieces", "luminaires"] as const;

const sameGround = (a: Picture, b: Picture): boolean =>
  a.storey === b.storey && groundKinds.every((kind) => a.site[kind] === b.site[kind]);

/** Whether the results are surely the same; which of them differ is looked at where they may not be. */
const sameResults = (a: Picture, b: Picture): boolean =>
  a.storey === b.storey &&
  a.tried === b.tried &&
  a.site === b.site &&
  a.held === b.held &&
  a.calculated === b.calculated;

/** Whether zones that did not change look the same. */
const sameZoneLook = (a: Picture, b: Picture): boolean =>
  a.view === b.view && a.palette === b.palette && a.shown === b.shown && a.wires === b.wires;

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
  a.flags === b.flags &&
  a.selection === b.selection &&
  a.held?.devices === b.held?.devices &&
  a.tried === b.tried &&
  a.insets.left === b.insets.left &&
  a.insets.bottom === b.insets.bottom;
