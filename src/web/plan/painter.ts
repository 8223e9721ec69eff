import type { Detector, Finding, Site } from "#engine";
import type { Calculated, DeviceZones, EditStep, RecordRef, Underlay } from "../contract.ts";
import { applied } from "../jobs/apply.ts";
import { lengthText, t, type Units } from "../texts/index.ts";
import { paintBase, paintHeights, paintNames } from "./paint/base.ts";
import { paintFlags, placedFlags } from "./paint/flags.ts";
import { paintHandles } from "./paint/handles.ts";
import { letteringOn } from "./paint/lettering.ts";
import {
  paintCeilingThing,
  paintDetector,
  paintDwellPlace,
  paintScaleBar,
  paintSource,
} from "./paint/marks.ts";
import type { Palette } from "./paint/palette.ts";
import { inPixels, type Surface } from "./paint/surface.ts";
import {
  paintFigures,
  paintWalks,
  paintZones,
  type Shown,
  type ZonePaths,
  zonePaths,
} from "./paint/zones.ts";
import { recordOf, roomsOn } from "./pick.ts";
import { type Scene, sceneOf } from "./scene.ts";
import type { Grip, ToolState } from "./tools/state.ts";
import { barLength, type Insets, toPixel, type View } from "./view.ts";

/** All that the picture depends on. */
export interface Picture {
  readonly site: Site;
  readonly storey: string;
  readonly underlays: readonly Underlay[];
  readonly view: View;
  readonly units: Units;
  readonly palette: Palette;
  readonly shown: Shown;
  readonly calculated: Calculated;
  readonly selection: readonly RecordRef[];
  readonly toolState: ToolState;
  readonly preview: readonly EditStep[];
  readonly grips: readonly Grip[];
  /** A layout on show instead of the room's own devices. */
  readonly tried: { readonly room: string; readonly devices: readonly Detector[] } | undefined;
  readonly flags: readonly Flag[];
  /** Rooms that the selection is about; the same set as long as it is about the same rooms. */
  readonly focus: ReadonlySet<string>;
  readonly insets: Insets;
}

export interface Flag {
  readonly number: number;
  readonly severity: Finding["severity"];
  readonly at: readonly [number, number];
  readonly current: boolean;
}

export interface Painter {
  readonly show: (picture: Picture) => void;
  readonly scene: () => Scene | undefined;
  readonly stop: () => void;
}

/**
 * Paints the plan on three canvases, one above the other: what stands still, the zones, and what moves under the hand.
 * Each is painted only when something that it shows has changed, once a frame at most.
 */
export function painterOn(
  layers: readonly [HTMLCanvasElement, HTMLCanvasElement, HTMLCanvasElement],
): Painter {
  const contexts = layers.map((canvas) => canvas.getContext("2d")) as CanvasRenderingContext2D[];
  let next: Picture | undefined;
  let painted: Picture | undefined;
  let frame = 0;
  let density = 0;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let resting = false;
  let scene: Scene | undefined;
  let paths: ZonePaths | undefined;

  const paint = (): void => {
    frame = 0;
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
          frame ||= requestAnimationFrame(paint);
        }, settleMilliseconds);
        if (!resting) return;
      }
    }
    resting = false;
    clearTimeout(settling);
    place(layers, picture.view, picture.view);
    painted = picture;
    const resized = sized(layers, picture.view, density);
    if (resized) density = globalThis.devicePixelRatio || 1;
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
    });
    const rebuilt = !scene || !before || !sameGround(before, picture);
    if (rebuilt) scene = sceneOf(picture.site, picture.storey, picture.underlays);
    if (moved || rebuilt) {
      clear(surface(0));
      paintBase(surface(0), scene as Scene);
    }
    const zonesChanged =
      !paths ||
      !before ||
      before.calculated !== picture.calculated ||
      before.storey !== picture.storey ||
      before.tried !== picture.tried ||
      before.site !== picture.site;
    if (zonesChanged) paths = pathsOf(picture);
    const wordsChanged =
      before?.shown !== picture.shown ||
      before?.focus !== picture.focus ||
      before?.flags.length !== picture.flags.length;
    if (moved || zonesChanged || wordsChanged || rebuilt) {
      clear(surface(1));
      paintZones(surface(1), paths as ZonePaths, picture.shown);
      paintWords(surface(1), { picture, scene: scene as Scene, paths: paths as ZonePaths });
    }
    clear(surface(2));
    paintMoving(surface(2), picture);
  };

  return {
    show: (picture) => {
      next = picture;
      frame ||= requestAnimationFrame(paint);
    },
    scene: () => scene,
    stop: () => {
      cancelAnimationFrame(frame);
      clearTimeout(settling);
    },
  };
}

/** The hand rests when the view has not changed for so long. */
const settleMilliseconds = 90;

/** Whether two pictures differ in the view alone. */
function onlyViewed(a: Picture, b: Picture): boolean {
  if (a.view === b.view || a.view.width !== b.view.width || a.view.height !== b.view.height) return false;
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

const nothingChosen: ReadonlySet<string> = new Set();

/** Records that the fixed drawing is made of. */
const groundKinds = ["rooms", "openings", "obstacles", "floorPieces", "luminaires"] as const;

const sameGround = (a: Picture, b: Picture): boolean =>
  a.storey === b.storey &&
  a.underlays === b.underlays &&
  groundKinds.every((kind) => a.site[kind] === b.site[kind]);

function sized(layers: readonly HTMLCanvasElement[], view: View, density: number): boolean {
  const now = globalThis.devicePixelRatio || 1;
  const [width, height] = [Math.round(view.width * now), Math.round(view.height * now)];
  if (density === now && layers[0]?.width === width && layers[0].height === height) return false;
  for (const canvas of layers) {
    canvas.width = width;
    canvas.height = height;
  }
  return true;
}

function clear(surface: Surface): void {
  inPixels(surface);
  surface.context.clearRect(0, 0, surface.view.width, surface.view.height);
}

function pathsOf({ site, storey, calculated, tried }: Picture): ZonePaths {
  const rooms = roomsOn(site, storey);
  const zones: DeviceZones[] = [];
  for (const device of site.detectors) {
    if (!rooms.has(device.room) || device.room === tried?.room) continue;
    const known = calculated.zones.get(device.id);
    if (known) zones.push(known);
  }
  for (const device of tried?.devices ?? []) {
    const known = calculated.zones.get(device.id);
    if (known) zones.push(known);
  }
  // A room that has no detector yet is not full of holes: it is not planned.
  const planned = new Set([...site.detectors, ...(tried?.devices ?? [])].flatMap(({ controls }) => controls));
  const coverage = [...rooms.keys()].flatMap((id) =>
    planned.has(id) ? (calculated.rooms.get(id) ?? []) : [],
  );
  return zonePaths(zones, coverage);
}

/** Names and figures, the most important first; signs that are painted above them keep their places. */
function paintWords(
  surface: Surface,
  of: { readonly picture: Picture; readonly scene: Scene; readonly paths: ZonePaths },
): void {
  const { picture, scene, paths } = of;
  const { site, units, shown } = picture;
  const figured = { shown, units, rooms: picture.focus, limit: site.defaults.darkWalkLimit };
  const rooms = roomsOn(site, picture.storey);
  inPixels(surface);
  paintSigns(surface, site, { rooms, chosen: nothingChosen });
  paintWalks(surface, paths, figured);
  inPixels(surface);
  const lettering = letteringOn(surface);
  for (const device of [...site.detectors, ...(picture.tried?.devices ?? [])]) {
    if (!rooms.has(device.room)) continue;
    const { px, py } = toPixel(picture.view, device.at);
    lettering.block({ px: px + 20, py: py + 4 }, { wide: 36, high: 15 });
  }
  for (const source of site.interference)
    if (rooms.has(source.room)) lettering.block(toPixel(picture.view, source.at), { wide: 10, high: 10 });
  for (const { head } of placedFlags(surface, picture.flags)) lettering.block(head, { wide: 14, high: 13 });
  const to = { units, lettering };
  paintNames(surface, scene, to);
  paintFigures(surface, paths, { ...figured, lettering });
  paintHeights(surface, scene, to);
}

/** Dwell places, things on the ceiling, sources. */
function paintSigns(
  surface: Surface,
  site: Site,
  of: {
    readonly rooms: ReadonlyMap<string, unknown>;
    readonly chosen: ReadonlySet<string>;
    readonly only?: ReadonlySet<string>;
  },
): void {
  const each = <T extends { readonly id: string; readonly room: string }>(
    kind: string,
    records: readonly T[],
    paint: (surface: Surface, record: T, chosen: boolean) => void,
  ): void => {
    for (const record of records) {
      const key = `${kind} ${record.id}`;
      if (of.rooms.has(record.room) && (!of.only || of.only.has(key)))
        paint(surface, record, of.chosen.has(key));
    }
  };
  each("dwellPlaces", site.dwellPlaces, paintDwellPlace);
  each("ceilingThings", site.ceilingThings, paintCeilingThing);
  each("interference", site.interference, paintSource);
}

/** Devices, places, sources, flags, grips, figures: what changes with every move of the hand. */
function paintMoving(surface: Surface, picture: Picture): void {
  const site = applied(picture.site, picture.preview);
  const rooms = roomsOn(site, picture.storey);
  const chosen = new Set(picture.selection.map(({ kind, id }) => `${kind} ${id}`));
  inPixels(surface);
  // What is selected is painted here as well, above its fixed picture.
  paintSigns(surface, site, { rooms, chosen, only: chosen });
  paintHandles(surface, picture, site);
  inPixels(surface);
  const devices = site.detectors.filter(({ room }) => rooms.has(room) && room !== picture.tried?.room);
  for (const device of [...devices, ...(picture.tried?.devices ?? [])])
    paintDetector(surface, device, {
      hears: (recordOf(site, "models", device.model)?.zones.sound?.length ?? 0) > 0,
      chosen: chosen.has(`detectors ${device.id}`),
      ghost: false,
      tag: true,
    });
  paintFlags(surface, picture.flags);
  const metres = barLength(picture.view, 120);
  paintScaleBar(surface, {
    pixels: metres * picture.view.scale,
    text: barText(metres, picture.units),
    at: { px: picture.insets.left + 16, py: picture.view.height - picture.insets.bottom - 14 },
  });
}

const barText = (metres: number, units: Units): string =>
  units === "metric"
    ? t("plan.bar", {
        metres: metres >= 1 ? String(Math.round(metres)) : String(Number(metres.toPrecision(1))),
      })
    : lengthText(metres, units);
