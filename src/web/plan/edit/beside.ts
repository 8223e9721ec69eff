import type { Metres, Point, Site } from "#engine";
import { recordOf, roomsOn } from "../pick.ts";
import { type Bounds, boundsOf } from "../view.ts";
import { boundsOfWhole, type Whole } from "./selected.ts";

/** Wall between a copied room and its original. [m] */
const wall: Metres = 0.2;

/** Things are copied this far to the right and down, so that both can be seen. [m] */
const aside: Point = [0.6, -0.6];

/**
 * Where the copy of a selection goes: things a little aside; rooms next to their originals, to the right, below, to the left or
 * above, where no other room lies, else to the right of everything on the storey.
 */
export function besideBy(site: Site, whole: Whole): Point {
  const bounds = boundsOfWhole(site, whole);
  const first = whole.rooms[0];
  if (!bounds || !first) return aside;
  const [wide, high] = [bounds.right - bounds.left + wall, bounds.top - bounds.bottom + wall];
  const others = [...roomsOn(site, first.storey).values()].flatMap(({ outline }) => boundsOf(outline) ?? []);
  const ways: readonly Point[] = [
    [wide, 0],
    [0, -high],
    [-wide, 0],
    [0, high],
  ];
  const free = ways.find((by) => !others.some((other) => overlap(other, bounds, by)));
  if (free) return free;
  const right = Math.max(...others.map((other) => other.right));
  return [Math.round((right + wall - bounds.left) * 1000) / 1000, 0];
}

const overlap = (a: Bounds, b: Bounds, [x, y]: Point): boolean =>
  a.left < b.right + x - 1e-6 &&
  b.left + x < a.right - 1e-6 &&
  a.bottom < b.top + y - 1e-6 &&
  b.bottom + y < a.top - 1e-6;

/** Step of a row that puts each copy next to the last: as wide as the selection, and a little air for things. */
export function rowStep(site: Site, whole: Whole): Metres {
  const bounds = boundsOfWhole(site, whole);
  const wide = bounds ? bounds.right - bounds.left : 0;
  if (whole.rooms.length > 0) return Math.round((wide + wall) * 1000) / 1000;
  const lamp = whole.placed.find(({ kind }) => kind === "luminaires");
  const length = lamp ? (recordOf(site, "luminaires", lamp.id)?.length ?? 0) : 0;
  return Math.round(Math.max(wide, length, 0.4) * 100 + 20) / 100;
}
