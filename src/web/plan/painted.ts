import type { Detector, Site } from "#engine";
import { applied } from "../jobs/apply.ts";
import { t } from "../texts/drawn.ts";
import { lengthText, type Units } from "../texts/measures.ts";
import { paintHeights, paintNames } from "./paint/base.ts";
import { paintFlags, placedFlags } from "./paint/flags.ts";
import { type LatePainting, paintHandles } from "./paint/handles.ts";
import { letteringOn } from "./paint/lettering.ts";
import { paintLit } from "./paint/lit.ts";
import {
  paintCeilingThing,
  paintDetector,
  paintDwellPlace,
  paintScaleBar,
  paintSource,
  paintSwitch,
  smallScale,
} from "./paint/marks.ts";
import { paintSignWords } from "./paint/sign-words.ts";
import { inPixels, type Surface } from "./paint/surface.ts";
import { discHalf, paintWalkNumbers } from "./paint/walk-marks.ts";
import { paintWireNames } from "./paint/wires.ts";
import { paintFigures, paintWalks, paintZones, type ZonePaths, zonePaths } from "./paint/zones.ts";
import { recordOf, roomsOn } from "./pick.ts";
import type { Painted } from "./picture.ts";
import type { Scene } from "./scene.ts";
import type { Results } from "./still.ts";
import { barLength, toPixel } from "./view.ts";

/** Results as paths. */
export const pathsOf = ({ zones, rooms }: Results, content: Surface["content"] = "lasting"): ZonePaths =>
  zonePaths(zones.values(), rooms.values(), content);

/** Zones, walks and figures of what is dragged. */
export function paintHeld(surface: Surface, picture: Painted, paths: ZonePaths): void {
  const { site, units, shown, focus } = picture;
  const figured = { shown, units, rooms: focus, limit: site.defaults.darkWalkLimit };
  paintZones(surface, paths, shown);
  paintWalks(surface, paths, figured);
  inPixels(surface);
  paintFigures(surface, paths, { ...figured, lettering: letteringOn(surface) });
}

/**
 * Names and figures, the most important first, and above them the devices and flags that keep their places.
 * What is selected is painted by `paintMoving`.
 */
export function paintWords(
  surface: Surface,
  of: { readonly picture: Painted; readonly scene: Scene; readonly paths: ZonePaths },
): void {
  const { picture, scene, paths } = of;
  const { site, units, shown } = picture;
  const figured = { shown, units, rooms: picture.focus, limit: site.defaults.darkWalkLimit };
  const rooms = roomsOn(site, picture.storey);
  inPixels(surface);
  paintSigns(surface, site, { rooms, chosen: nothingChosen, quiet: picture.wires !== undefined });
  paintWalks(surface, paths, figured);
  inPixels(surface);
  const lettering = letteringOn(surface);
  for (const device of [...site.detectors, ...(picture.tried?.devices ?? [])]) {
    if (!rooms.has(device.room)) continue;
    const { px, py } = toPixel(picture.view, device.at);
    lettering.block({ px: px + 20, py: py + 4 }, { wide: 36, high: 15 });
  }
  for (const { path } of picture.walk?.stations ?? [])
    if (path[0]) lettering.block(toPixel(picture.view, path[0]), { wide: discHalf + 6, high: discHalf + 4 });
  for (const source of picture.wires ? [] : site.interference)
    if (rooms.has(source.room)) lettering.block(toPixel(picture.view, source.at), { wide: 10, high: 10 });
  for (const { head, foot } of placedFlags(surface, picture.flags)) {
    lettering.block(head, { wide: 14, high: 13 });
    // In the small picture of a whole storey a name across a pole tells more than none.
    if (picture.view.scale >= smallScale)
      lettering.block(
        { px: foot.px, py: (head.py + foot.py) / 2 },
        { wide: 2, high: (foot.py - head.py) / 2 },
      );
  }
  const to = { units, lettering };
  if (picture.wires) paintWireNames(surface, picture.wires, lettering);
  paintNames(surface, scene, to);
  paintFigures(surface, paths, { ...figured, lettering });
  if (!picture.wires) paintSignWords(surface, site, { rooms, lettering });
  paintHeights(surface, scene, to);
  inPixels(surface);
  const moves = movesIn(picture);
  for (const device of devicesIn(picture, site, rooms))
    if (!moves(device)) paintDevice(surface, device, picture, "rest");
  if (picture.walk) paintWalkNumbers(surface, picture.walk);
  paintFlags(surface, picture.flags);
  const metres = barLength(picture.view, 120);
  paintScaleBar(surface, {
    pixels: metres * picture.view.scale,
    text: barText(metres, picture.units),
    at: { px: picture.insets.left + 16, py: picture.view.height - picture.insets.bottom - 14 },
  });
}

const chosenIn = ({ selection }: Painted): ReadonlySet<string> =>
  new Set(selection.map(({ kind, id }) => `${kind} ${id}`));

/** What is selected, or goes along with what is dragged. */
function movesIn(picture: Painted): (device: Detector) => boolean {
  const chosen = chosenIn(picture);
  return ({ id }) => chosen.has(`detectors ${id}`) || picture.held?.devices.has(id) === true;
}

const devicesIn = (
  { tried }: Painted,
  site: Site,
  rooms: ReadonlyMap<string, unknown>,
): readonly Detector[] => [
  ...site.detectors.filter(({ room }) => rooms.has(room) && room !== tried?.room),
  ...(tried?.devices ?? []),
];

/** A device of a layout on show has no tag yet: it gets one when the layout is taken. */
function paintDevice(surface: Surface, device: Detector, picture: Painted, how: "chosen" | "rest"): void {
  paintDetector(surface, device, {
    hears: (recordOf(picture.site, "models", device.model)?.zones.sound?.length ?? 0) > 0,
    chosen: how === "chosen",
    ghost: false,
    tag: picture.tried?.devices.includes(device) !== true,
  });
}

const nothingChosen: ReadonlySet<string> = new Set();

/** Dwell places, things on the ceiling, sources. */
function paintSigns(
  surface: Surface,
  site: Site,
  of: {
    readonly rooms: ReadonlyMap<string, unknown>;
    readonly chosen: ReadonlySet<string>;
    readonly only?: ReadonlySet<string>;
    /** In the wiring, what detectors look at and what disturbs them is out of the way. */
    readonly quiet?: boolean;
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
  if (!of.quiet) each("dwellPlaces", site.dwellPlaces, paintDwellPlace);
  each("ceilingThings", site.ceilingThings, paintCeilingThing);
  each("switches", site.switches, paintSwitch);
  if (!of.quiet) each("interference", site.interference, paintSource);
}

/** What is selected, its grips and figures: what changes with every move of the hand. */
export function paintMoving(surface: Surface, picture: Painted, late: LatePainting): void {
  const site = applied(picture.site, picture.preview);
  const rooms = roomsOn(site, picture.storey);
  const chosen = chosenIn(picture);
  inPixels(surface);
  if (picture.lit)
    paintLit(
      surface,
      [...rooms.values()].filter(({ id }) => picture.lit?.includes(id)),
    );
  // What is selected is painted here as well, above its fixed picture.
  paintSigns(surface, site, { rooms, chosen, only: chosen });
  paintHandles(surface, picture, { site, late });
  inPixels(surface);
  const moves = movesIn(picture);
  for (const device of devicesIn(picture, site, rooms))
    if (moves(device))
      paintDevice(surface, device, picture, chosen.has(`detectors ${device.id}`) ? "chosen" : "rest");
}

const barText = (metres: number, units: Units): string =>
  units === "metric"
    ? t("plan.bar", {
        metres: metres >= 1 ? String(Math.round(metres)) : String(Number(metres.toPrecision(1))),
      })
    : lengthText(metres, units);
