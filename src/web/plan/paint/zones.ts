import type { DarkWalk, Gap, Metres, Outline, Point, Region, ZoneKind } from "#engine";
import type { DeviceZones } from "../../contract.ts";
import { t } from "../../texts/drawn.ts";
import { areaText, lengthText, type Units } from "../../texts/measures.ts";
import type { DrawnCoverage } from "../drawn-results.ts";
import { addRegion, distance } from "../shapes.ts";
import type { Lettering } from "./lettering.ts";
import { faded, type Palette } from "./palette.ts";
import { type Brush, inMetres, inPixels, onScreen, pixelOf, type Surface } from "./surface.ts";

/** What the person wants to see. */
export interface Shown {
  readonly seated: boolean;
  readonly towards: boolean;
  readonly across: boolean;
  readonly sound: boolean;
  readonly gaps: boolean;
  readonly spill: boolean;
  readonly darkWalks: boolean;
}

/** Results of one storey as paths, made once for each answer of the calculation. */
export interface ZonePaths {
  readonly kinds: Readonly<Record<ZoneKind, { readonly fill: Path2D; readonly rings: readonly Outline[] }>>;
  readonly gaps: Path2D;
  readonly gapList: readonly Gap[];
  readonly spill: Path2D;
  readonly walks: readonly { readonly room: string; readonly walk: DarkWalk }[];
}

const kinds: readonly ZoneKind[] = ["sound", "across", "towards", "seated"];

/** @param content - Paths of what lasts are kept for the next time. */
export function zonePaths(
  zones: Iterable<DeviceZones>,
  rooms: Iterable<DrawnCoverage>,
  content: Surface["content"] = "lasting",
): ZonePaths {
  const add = (path: Path2D, region: Region): void =>
    content === "changing" ? addRegion(path, region) : path.addPath(pathOf(region));
  const made = Object.fromEntries(
    kinds.map((kind) => [kind, { fill: new Path2D(), rings: [] as Outline[] }]),
  ) as Record<ZoneKind, { fill: Path2D; rings: Outline[] }>;
  for (const device of zones)
    for (const kind of kinds) {
      const region = device[kind];
      if (!region) continue;
      add(made[kind].fill, region);
      made[kind].rings.push(...ringsOf(region));
    }
  const gaps = new Path2D();
  const spill = new Path2D();
  const gapList: Gap[] = [];
  const walks: { room: string; walk: DarkWalk }[] = [];
  for (const room of rooms) {
    for (const gap of room.gaps) {
      add(gaps, gap.region);
      gapList.push(gap);
    }
    for (const one of room.spill) add(spill, one.region);
    walks.push(...room.darkWalks.map((walk) => ({ room: room.room, walk })));
  }
  return { kinds: made, gaps, gapList, spill, walks };
}

const regionPaths = new WeakMap<Region, Path2D>();

/** A region as a path, made once. */
function pathOf(region: Region): Path2D {
  const known = regionPaths.get(region);
  if (known) return known;
  const made = new Path2D();
  addRegion(made, region);
  regionPaths.set(region, made);
  return made;
}

const ringsOf = (region: Region): Outline[] => region.flatMap((piece) => [piece.outline, ...piece.holes]);

/** Overlapping zones of one kind are filled once: rings run the same way round, so the fill joins them. */
export function paintZones(surface: Surface, paths: ZonePaths, shown: Shown): void {
  const { context, view, palette } = surface;
  const px = 1 / view.scale;
  inMetres(surface);
  if (shown.spill) {
    context.fillStyle = faded(palette.spill, 0.16);
    context.fill(paths.spill);
    context.strokeStyle = palette.spill;
    context.lineWidth = 1.5 * px;
    // Hundreds of dots are too slow for every frame of a drag.
    if (surface.content !== "changing") context.setLineDash([1.5 * px, 3.5 * px]);
    else context.lineWidth = 0.75 * px;
    context.stroke(paths.spill);
    context.setLineDash([]);
  }
  for (const kind of kinds) {
    if (!shown[kind]) continue;
    const { fill, rings } = paths.kinds[kind];
    context.lineWidth = 1.25 * px;
    switch (kind) {
      case "seated":
        context.fillStyle = faded(palette.seated, 0.22);
        context.fill(fill);
        context.strokeStyle = palette.seated;
        context.stroke(fill);
        break;
      case "towards":
        context.fillStyle = faded(palette.towards, 0.12);
        context.fill(fill);
        context.strokeStyle = palette.towards;
        context.stroke(fill);
        break;
      case "across":
        context.strokeStyle = palette.across;
        context.setLineDash([7 * px, 5 * px]);
        context.stroke(fill);
        context.setLineDash([]);
        break;
      case "sound":
        context.strokeStyle = palette.sound;
        context.lineWidth = 1.5 * px;
        for (const ring of rings) wavyRing(context, ring, px);
        break;
    }
  }
  if (shown.gaps) {
    const hatch = gapHatch(context, palette, surface.density);
    if (hatch) {
      // The hatch is a pattern of pixels: the same width at every zoom.
      hatch.setTransform(new DOMMatrix().scale(px / surface.density, -px / surface.density));
      context.fillStyle = hatch;
      context.fill(paths.gaps);
    }
    context.strokeStyle = palette.gap;
    context.lineWidth = 1.5 * px;
    context.stroke(paths.gaps);
  }
}

interface Figured {
  readonly shown: Shown;
  readonly units: Units;
  /** Rooms that the person looks at: all of their walks are drawn. */
  readonly rooms: ReadonlySet<string>;
  /** Longer walks are drawn in any case. [m] */
  readonly limit: Metres;
}

/** Lines of the walks in the dark that matter now: too long ones, and those of the rooms one looks at. */
export function paintWalks(surface: Surface, paths: ZonePaths, to: Figured): void {
  if (!to.shown.darkWalks) return;
  for (const { walk } of walksOf(paths, to)) paintWalk(surface, walk);
}

const walksOf = (paths: ZonePaths, to: Figured): ZonePaths["walks"] =>
  paths.walks.filter(
    ({ room, walk }) =>
      walk.path.length > 1 &&
      (to.rooms.has(room) || (to.rooms.size === 0 && (!walk.lit || walk.metres > to.limit + 0.005))),
  );

/** Words and figures on the zones: gaps with their area, dark walks with their metres, where room is left. */
export function paintFigures(
  surface: Surface,
  paths: ZonePaths,
  to: Figured & { readonly lettering: Lettering },
): void {
  const { view, palette } = surface;
  inPixels(surface);
  if (to.shown.gaps)
    for (const gap of [...paths.gapList].sort((a, b) => b.area - a.area)) {
      const pixel = pixelOf(surface, gap.at);
      if (Math.sqrt(gap.area) * view.scale < 16 || !onScreen(view, pixel)) continue;
      to.lettering.write(t("plan.gap", { area: areaText(gap.area, to.units) }), {
        pixel,
        colour: palette["gap-text"],
        strong: true,
      });
    }
  if (!to.shown.darkWalks || view.scale < 16) return;
  for (const { walk } of walksOf(paths, to)) {
    const { turn } = partsOf(walk);
    const { px, py } = pixelOf(surface, turn);
    const metres = lengthText(walk.metres, to.units);
    const text = walk.lit ? metres : t("plan.walk.notLit", { metres });
    const letters = { colour: palette.ink, align: "left" } as const;
    if (!onScreen(view, { px, py })) continue;
    if (!to.lettering.write(text, { ...letters, pixel: { px: px + 8, py: py - 9 } }))
      to.lettering.write(text, { ...letters, pixel: { px: px + 8, py: py + 11 } });
  }
}

/** How much of the way is drawn after the light came on. [m] */
const litStub: Metres = 0.9;

function partsOf(walk: DarkWalk): { readonly dark: Point[]; readonly lit: Point[]; readonly turn: Point } {
  const length = walk.path.reduce(
    (sum, point, i) => (i === 0 ? 0 : sum + distance(walk.path[i - 1] as Point, point)),
    0,
  );
  const [dark, rest, turn] = splitAt(walk.path, walk.lit ? Math.min(walk.metres, length) : length);
  return { dark, lit: rest.length > 1 ? splitAt(rest, litStub)[0] : [], turn };
}

/** A walk in the dark: heavy line until the light comes on, and the first steps in the light. */
function paintWalk(surface: Surface, walk: DarkWalk): void {
  const { context, view, palette } = surface;
  const px = 1 / view.scale;
  const { dark, lit, turn } = partsOf(walk);
  inMetres(surface);
  context.lineCap = "round";
  context.lineJoin = "round";
  if (lit.length > 1) {
    line(context, lit);
    context.strokeStyle = palette.interference;
    context.lineWidth = 2.5 * px;
    context.stroke();
  }
  line(context, dark);
  context.strokeStyle = palette.plan;
  context.lineWidth = 4 * px;
  context.stroke();
  context.strokeStyle = palette.ink;
  context.lineWidth = 2 * px;
  context.stroke();
  context.lineCap = "butt";
  inPixels(surface);
  const end = pixelOf(surface, turn);
  context.beginPath();
  context.arc(end.px, end.py, 3.5, 0, 2 * Math.PI);
  context.fillStyle = walk.lit ? palette.interference : palette.ink;
  context.fill();
  context.strokeStyle = palette.ink;
  context.lineWidth = 1.25;
  context.stroke();
}

function line(context: Brush, points: readonly Point[]): void {
  context.beginPath();
  for (const [i, [x, y]] of points.entries()) {
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
}

function splitAt(path: readonly Point[], metres: number): [Point[], Point[], Point] {
  const first: Point[] = [path[0] as Point];
  let left = metres;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1] as Point, path[i] as Point];
    const step = distance(a, b);
    if (step > left + 1e-9) {
      const share = step === 0 ? 0 : left / step;
      const turn: Point = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
      return [[...first, turn], [turn, ...path.slice(i)], turn];
    }
    left -= step;
    first.push(b);
  }
  return [first, [], path[path.length - 1] as Point];
}

/** A ring drawn as a gentle wave of pixels, so that it cannot be taken for the edge of a seen zone. */
function wavyRing(context: Brush, ring: Outline, px: number): void {
  const step = 4 * px;
  context.beginPath();
  let travelled = 0;
  let begun = false;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i] as Point, ring[(i + 1) % ring.length] as Point];
    const length = distance(a, b);
    if (length === 0) continue;
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    for (let along = 0; along < length; along += step) {
      const swing = 2 * px * Math.sin(((travelled + along) / px / 12) * 2 * Math.PI);
      const x = a[0] + ux * along - uy * swing;
      const y = a[1] + uy * along + ux * swing;
      if (begun) context.lineTo(x, y);
      else context.moveTo(x, y);
      begun = true;
    }
    travelled += length;
  }
  context.closePath();
  context.stroke();
}

const hatches = new WeakMap<Brush, { colour: string; density: number; pattern: CanvasPattern | null }>();

/** Cross-hatch at 45°. Kept for each canvas and colour. */
function gapHatch(context: Brush, palette: Palette, density: number): CanvasPattern | null {
  const known = hatches.get(context);
  if (known && known.colour === palette.gap && known.density === density) return known.pattern;
  const size = Math.round(9 * density);
  const tile = new OffscreenCanvas(size, size);
  const brush = tile.getContext("2d");
  if (!brush) return null;
  brush.strokeStyle = palette.gap;
  brush.globalAlpha = 0.75;
  brush.lineWidth = 1.1 * density;
  for (const shift of [-size, 0, size]) {
    brush.beginPath();
    brush.moveTo(shift, 0);
    brush.lineTo(shift + size, size);
    brush.moveTo(shift + size, 0);
    brush.lineTo(shift, size);
    brush.stroke();
  }
  const pattern = context.createPattern(tile, "repeat");
  hatches.set(context, { colour: palette.gap, density, pattern });
  return pattern;
}
