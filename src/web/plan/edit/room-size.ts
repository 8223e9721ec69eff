import type { Metres, Point, Room, Site } from "#engine";
import type { EditStep } from "../../contract.ts";
import { facing } from "./faces.ts";
import { edgeOf } from "./stretch.ts";
import { movedWall } from "./wall.ts";

/** Which way a size counts: along the sheet, or up it. */
export type SizeWay = "across" | "up";

/** Sides may be this much out of square in a rectangle (sine). */
const square = 1e-3;

/** Size of a room that is a rectangle; undefined for all other rooms. A turned one lies across by its flatter sides. */
export function sizeOf({ outline }: Room): Readonly<Record<SizeWay, Metres>> | undefined {
  if (outline.length !== 4) return undefined;
  const sides = outline.map((_, i) => edgeOf(outline, i));
  const isSquare = sides.every(({ way }, i) => {
    const next = (sides[(i + 1) % 4] as { readonly way: Point }).way;
    return Math.abs(way[0] * next[0] + way[1] * next[1]) < square;
  });
  const [first, second] = sides;
  if (!isSquare || !first || !second) return undefined;
  return isFlat(first.way)
    ? { across: first.length, up: second.length }
    : { across: second.length, up: first.length };
}

const isFlat = (way: Point): boolean => Math.abs(way[0]) >= Math.abs(way[1]);

/**
 * Steps that give a rectangular room another size. The side without a room behind it moves; where both or neither have one,
 * the right or the upper side.
 */
export function resizeSteps(
  site: Site,
  room: Room,
  to: { readonly way: SizeWay; readonly length: Metres },
): EditStep[] {
  const size = sizeOf(room);
  if (!size) return [];
  const by = to.length - size[to.way];
  // The two sides that the wanted length lies between: those that run the other way.
  const sides = [0, 1, 2, 3]
    .filter((index) => isFlat(edgeOf(room.outline, index).way) === (to.way === "up"))
    .map((index) => ({
      index,
      free: facing(site, { room, ring: 0, edge: index }).length === 0,
      // Counter-clockwise, the right side runs up and the upper one to the left.
      last:
        to.way === "across" ? edgeOf(room.outline, index).way[1] > 0 : edgeOf(room.outline, index).way[0] < 0,
    }))
    .sort((a, b) => Number(b.free) - Number(a.free) || Number(b.last) - Number(a.last));
  return sides[0] ? movedWall(site, room.id, { index: sides[0].index, by }) : [];
}
