import { breath } from "../breath.ts";
import { signsFrame, zonesFrame } from "./held-frame.ts";
import { paintBase } from "./paint/base.ts";
import { type Frame, sameFrame } from "./paint/frame.ts";
import type { LatePainting } from "./paint/handles.ts";
import { emptied, type Layer, layerOn } from "./paint/layer.ts";
import { paintWalkWays } from "./paint/walk-marks.ts";
import { paintWires } from "./paint/wires.ts";
import { paintZones } from "./paint/zones.ts";
import type { PaintAnswer, PictureChange, PictureLayer } from "./paint-asked.ts";
import { paintHeld, paintMoving, paintWords, pathsOf } from "./painted.ts";
import type { Painted } from "./picture.ts";
import { changed } from "./picture-change.ts";
import { type Scene, sceneOf } from "./scene.ts";
import { differ, type Results, resultsOf } from "./still.ts";

export interface Painting {
  /** A picture that is to be shown; what was asked for before and is not painted yet is left out. */
  readonly change: (change: PictureChange) => void;
  /** Everything is painted once more: letters have another face. */
  readonly afresh: () => void;
}

/** What takes long to paint: one of them, then it is looked whether the hand has gone on. */
const heavy = ["base", "zones", "words"] as const;
type Heavy = (typeof heavy)[number];

interface Wish {
  readonly picture: Painted;
  readonly density: number;
}

/**
 * Paints the plan layer by layer, one above the other: the building, the zones, the zones that a drag changes, words and
 * signs, and what is selected. Each is painted only when something that it shows has changed. While one drags, what moves
 * is painted straight to the screen; everything else goes to the page as pictures, which it moves with the view.
 */
export function paintingOn(
  held: { readonly zones: OffscreenCanvas; readonly signs: OffscreenCanvas },
  tell: (answer: PaintAnswer) => void,
): Painting {
  const layers = Object.fromEntries(
    (["base", "zones", "words", "signs"] as const).map((name) => [name, layerOn(new OffscreenCanvas(1, 1))]),
  ) as Record<PictureLayer, Layer>;
  const [heldZones, heldSigns] = [layerOn(held.zones), layerOn(held.signs)];
  const due = new Set<Heavy>();
  let picture: Painted | undefined;
  let next: Wish | undefined;
  let seen: Wish | undefined;
  let running = false;
  let scene: Scene | undefined;
  let still: Results = { zones: new Map(), rooms: new Map() };
  let moved: Results | undefined;
  /** What was left out of the zones, since the hand holds it. */
  let zonesWithoutHeld = false;
  /** Canvases on the screen that show something. */
  const inHand = new Set<Layer>();
  let late: LatePainting = {};
  let signsShown = false;

  const work = async (): Promise<void> => {
    running = true;
    for (;;) {
      if (next) {
        const wish = next;
        next = undefined;
        await withLate(wish.picture);
        look(wish);
      }
      const one = heavy.find((name) => due.has(name));
      if (!one && !next) break;
      if (one && seen) {
        due.delete(one);
        paintHeavy[one](seen);
      }
      await breath();
    }
    running = false;
  };
  const wish = (one: Wish): void => {
    next = one;
    if (running) return;
    work().catch(() => {
      running = false;
      tell({ tell: "failed" });
    });
  };

  /** Painting of what is drawn by hand, or of rows, is loaded with the first of them. */
  const withLate = async ({ toolState, planned }: Painted): Promise<void> => {
    if (!late.drawing && (toolState.on === "draw" || toolState.on === "chain"))
      late = { ...late, drawing: (await import("./paint/drawing.ts")).paintDrawing };
    if (!late.row && planned?.kind === "row")
      late = { ...late, row: (await import("./paint/row-ghosts.ts")).paintRow };
  };

  /** Sees what has changed: paints what is quick, and notes what takes long. */
  const look = (now: Wish): void => {
    const before = seen?.picture;
    const { picture } = now;
    const turned =
      !before ||
      seen?.density !== now.density ||
      before.view !== picture.view ||
      before.palette !== picture.palette ||
      before.units !== picture.units;
    seen = now;
    const rebuilt = !scene || !before || !sameGround(before, picture);
    if (rebuilt) scene = sceneOf(picture.site, picture.storey);
    if (turned || rebuilt) due.add("base");
    const shownChanged =
      !before ||
      turned ||
      rebuilt ||
      before.shown !== picture.shown ||
      before.wires !== picture.wires ||
      before.walk !== picture.walk ||
      before.focus !== picture.focus;
    const known = still;
    if (!before || !sameResults(before, picture)) {
      const found = resultsOf(picture, "still");
      if (differ(known, found)) still = found;
    }
    if (shownChanged || known !== still || zonesWithoutHeld !== (picture.held !== undefined))
      due.add("zones");
    if (shownChanged || known !== still || !sameSigns(before, picture)) due.add("words");
    const answered = shownChanged || before.held !== picture.held || before.calculated !== picture.calculated;
    if (picture.held) {
      if (answered || !moved) {
        moved = resultsOf(picture, "held");
        paintHeldZones(now, moved);
      }
      const frame = signsFrame(picture, before?.held && heldSigns.painted?.frame);
      paintMoving(surfaceOf(heldSigns, "signs", { ...now, frame }), picture, late);
      if (signsShown) give("signs", now);
      signsShown = false;
    } else if (turned || !before || before.held || !sameHand(before, picture)) paintSigns(now);
  };

  const paintHeldZones = (now: Wish, of: Results): void => {
    const before = zonesWithoutHeld ? heldZones.painted?.frame : undefined;
    const frame = zonesFrame(now.picture, of, before);
    paintHeld(surfaceOf(heldZones, "zones", { ...now, frame }), now.picture, pathsOf(of, "changing"));
  };

  /** A canvas that is on the screen, emptied; the page hears where it lies now. */
  const surfaceOf = (
    layer: Layer,
    name: "zones" | "signs",
    { picture, density, frame }: Wish & { readonly frame: Frame },
  ) => {
    const { view, palette } = picture;
    const known = layer.painted;
    const surface = emptied(layer, { view, palette, density, frame });
    inHand.add(layer);
    if (!known || known.view !== view || !sameFrame(known.frame, frame))
      tell({ tell: "held", layer: name, frame, view });
    return surface;
  };

  const paintSigns = (now: Wish): void => {
    const { picture, density } = now;
    if (picture.selection.length > 0 || !atRest.has(picture.toolState.on)) {
      paintMoving(emptied(layers.signs, { ...picture, density }), picture, late);
      give("signs", now, layers.signs);
      signsShown = true;
    } else if (signsShown) {
      give("signs", now);
      signsShown = false;
    }
    letGo(heldSigns, picture);
  };

  /** What the hand has laid down is on other layers by now. */
  const letGo = (layer: Layer, { palette }: Painted): void => {
    if (layer.painted && inHand.delete(layer)) emptied(layer, { ...layer.painted, palette });
  };

  const paintHeavy: Readonly<Record<Heavy, (now: Wish) => void>> = {
    base: (now) => {
      paintBase(emptied(layers.base, { ...now.picture, density: now.density }), scene as Scene);
      give("base", now, layers.base);
    },
    zones: (now) => {
      const { picture, density } = now;
      const surface = emptied(layers.zones, { ...picture, density });
      paintZones(surface, pathsOf(still), picture.shown);
      if (picture.wires) paintWires(surface, picture.wires);
      if (picture.walk) paintWalkWays(surface, picture.walk);
      give("zones", now, layers.zones);
      zonesWithoutHeld = picture.held !== undefined;
      if (!picture.held) {
        moved = undefined;
        letGo(heldZones, picture);
      }
    },
    words: (now) => {
      const { picture, density } = now;
      paintWords(emptied(layers.words, { ...picture, density }), {
        picture,
        scene: scene as Scene,
        paths: pathsOf(still),
      });
      give("words", now, layers.words);
    },
  };

  const give = (layer: PictureLayer, { picture }: Wish, from?: Layer): void =>
    tell({ tell: "painted", layer, bitmap: from?.canvas.transferToImageBitmap(), view: picture.view });

  return {
    change: (change) => {
      picture = changed(picture, change);
      if (picture.view.width > 0) wish({ picture, density: change.density });
    },
    afresh: () => {
      if (!seen) return;
      for (const one of heavy) due.add(one);
      wish(next ?? seen);
    },
  };
}

/** States of the hand in which it draws nothing itself. */
const atRest: ReadonlySet<string> = new Set(["rest", "press", "pan"]);

/** Records that the fixed drawing is made of. */
const groundKinds = ["rooms", "openings", "obstacles", "floorPieces", "luminaires"] as const;

const sameGround = (a: Painted, b: Painted): boolean =>
  a.storey === b.storey && groundKinds.every((kind) => a.site[kind] === b.site[kind]);

/** Whether the results are surely the same; which of them differ is looked at where they may not be. */
const sameResults = (a: Painted, b: Painted): boolean =>
  a.storey === b.storey &&
  a.tried === b.tried &&
  a.site === b.site &&
  a.held === b.held &&
  a.calculated === b.calculated;

/** Whether the words and signs above the zones are the same, the zones themselves aside. */
const sameSigns = (a: Painted, b: Painted): boolean =>
  a.site === b.site &&
  a.flags === b.flags &&
  a.selection === b.selection &&
  a.held?.devices === b.held?.devices &&
  a.tried === b.tried &&
  a.insets === b.insets;

/** What is selected, and what the hand draws. */
const handFields = [
  "site",
  "storey",
  "selection",
  "toolState",
  "preview",
  "grips",
  "side",
  "planned",
  "tried",
  "lit",
] as const satisfies readonly (keyof Painted)[];

const sameHand = (a: Painted, b: Painted): boolean => handFields.every((key) => a[key] === b[key]);
