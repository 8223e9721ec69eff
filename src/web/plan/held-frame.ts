import type { Point } from "#engine";
import { applied } from "../jobs/apply.ts";
import type { Frame } from "./paint/frame.ts";
import type { Painted } from "./picture.ts";
import { boundsOfResults, type Results } from "./still.ts";
import { boundsOf, toPixel, type View } from "./view.ts";

/** Room for tags, grips and figures beside a device. [px] */
const signRoom = 96;
/** Room for the width of lines and for figures on the rim. [px] */
const zoneRoom = 32;
/** Frames grow in steps of so many pixels, so that they seldom do. */
const frameStep = 64;

/** The part of the screen that the zones under the hand are painted to. It only grows while one drags. */
export function zonesFrame({ view }: Painted, held: Results, before: Frame | undefined): Frame {
  const found = boundsOfResults(held);
  const ends: Point[] = found
    ? [
        [found.left, found.bottom],
        [found.right, found.top],
      ]
    : [];
  return around(view, ends, { before, room: zoneRoom });
}

/** The part of the screen that signs, guides and figures under the hand are painted to: the rooms of the drag, and what is moved. */
export function signsFrame(picture: Painted, before: Frame | undefined): Frame {
  const { view, site, held, preview } = picture;
  const places = [...(held?.rooms ?? [])].flatMap(
    (id) => site.rooms.find((room) => room.id === id)?.outline ?? [],
  );
  const moved = applied(site, preview).detectors.filter(({ id }) => held?.devices.has(id));
  return around(view, [...places, ...moved.map(({ at }) => at)], { before, room: signRoom });
}

/** The part of the screen around points, on whole steps, together with the one before. */
function around(
  view: View,
  points: readonly Point[],
  { before, room }: { readonly before: Frame | undefined; readonly room: number },
): Frame {
  const pixels = points.map((point) => toPixel(view, point));
  const needed = boundsOf(pixels.map(({ px, py }): Point => [px, py]));
  const known = before ?? { left: Infinity, top: Infinity, width: -Infinity, height: -Infinity };
  const least = (value: number, edge: number): number =>
    Math.max(0, Math.min(edge, Math.floor((value - room) / frameStep) * frameStep));
  const most = (value: number, edge: number, whole: number): number =>
    Math.min(whole, Math.max(edge, Math.ceil((value + room) / frameStep) * frameStep));
  const left = least(needed?.left ?? 0, known.left);
  const top = least(needed?.bottom ?? 0, known.top);
  const right = most(needed?.right ?? 0, before ? known.left + known.width : -Infinity, view.width);
  const bottom = most(needed?.top ?? 0, before ? known.top + known.height : -Infinity, view.height);
  return { left, top, width: Math.max(1, right - left), height: Math.max(1, bottom - top) };
}
