import type { Point, Site } from "#engine";
import { t } from "../../texts/drawn.ts";
import type { Pixel } from "../view.ts";
import type { Lettering } from "./lettering.ts";
import { family, onScreen, pixelOf, type Surface, textWidth } from "./surface.ts";

/** From so many pixels for a metre on a word has room beside its sign. */
const near = 60;
const nearSource = 34;

/** What dwell places, sources and things on the ceiling are, in a word each: below the sign, else above or beside it, else not at all. */
export function paintSignWords(
  surface: Surface,
  site: Site,
  to: { readonly rooms: ReadonlyMap<string, unknown>; readonly lettering: Lettering },
): void {
  const { view, palette } = surface;
  const write = (
    at: Point,
    how: { readonly text: string; readonly colour: string; readonly away: number },
  ) => {
    const pixel = pixelOf(surface, at);
    if (!onScreen(view, pixel, 80)) return;
    to.lettering.writeGroup([{ text: how.text, pixel, colour: how.colour }], {
      shifts: shiftsRound(how.away, textWidth(surface, how.text, `400 13px ${family}`) / 2),
      otherwise: "leave out",
    });
  };
  const own = <T extends { readonly room: string }>(records: readonly T[]): readonly T[] =>
    records.filter(({ room }) => to.rooms.has(room));
  if (view.scale > nearSource)
    for (const { at, kind } of own(site.interference))
      write(at, { text: t(`interference.${kind}`), colour: palette["interference-text"], away: 19 });
  if (view.scale <= near) return;
  for (const { at, kind } of own(site.ceilingThings))
    write(at, { text: t(`ceiling.${kind}`), colour: palette.muted, away: 14 });
  for (const { at, kind } of own(site.dwellPlaces))
    write(at, { text: t(`dwell.${kind}`), colour: palette.muted, away: 12 });
}

/** Below, above, to the left and to the right of a sign. */
const shiftsRound = (away: number, half: number): readonly Pixel[] => [
  { px: 0, py: away },
  { px: 0, py: -away },
  { px: -half - away, py: 0 },
  { px: half + away, py: 0 },
];
