import type { Metres, Point, Room } from "#engine";
import { nearestOn } from "../shapes.ts";
import { edgeOf } from "./stretch.ts";

/** One side of a room, and what it looks out to along the sheet. */
export interface Side {
  readonly index: number;
  readonly length: Metres;
  readonly towards: "right" | "up" | "left" | "down" | "aslant";
}

/** The sides of a room's outline, in their order. */
export const sidesOf = ({ outline }: Room): readonly Side[] =>
  outline.map((_, index) => {
    const { length, way } = edgeOf(outline, index);
    // Counter-clockwise, outside is to the right.
    const [x, y] = [way[1], -way[0]];
    if (Math.max(Math.abs(x), Math.abs(y)) < 0.95) return { index, length, towards: "aslant" };
    if (Math.abs(x) > Math.abs(y)) return { index, length, towards: x > 0 ? "right" : "left" };
    return { index, length, towards: y > 0 ? "up" : "down" };
  });

/** The side of a room that a point is nearest to, and how far away it is. */
export function sideNear({ outline }: Room, point: Point): { readonly index: number; readonly away: Metres } {
  const away = outline.map((a, i) => {
    const on = nearestOn(a, outline[(i + 1) % outline.length] as Point, point);
    return Math.hypot(on[0] - point[0], on[1] - point[1]);
  });
  const least = Math.min(...away);
  return { index: away.indexOf(least), away: least };
}
