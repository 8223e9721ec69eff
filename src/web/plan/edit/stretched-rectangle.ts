import type { Metres, Outline, Point, Site } from "#engine";
import type { EditStep, RecordRef } from "../../contract.ts";
import { recordOf } from "../pick.ts";

/** Sides may be this much out of square in a rectangle (sine). */
const square = 1e-3;

/** No side becomes shorter. [m] */
const least: Metres = 0.02;

/** Steps that move a corner of a thing that is a rectangle, and leave it one; undefined for every other shape. */
export function stretchSteps(
  site: Site,
  ref: RecordRef,
  corner: { readonly index: number; readonly to: Point },
): readonly EditStep[] | undefined {
  if (ref.kind !== "obstacles") return undefined;
  const footprint = recordOf(site, "obstacles", ref.id)?.footprint;
  const stretched = footprint && stretchedRectangle(footprint, corner);
  return stretched && [{ do: "set", kind: "obstacles", id: ref.id, fields: { footprint: stretched } }];
}

/**
 * A rectangle with one corner moved: the corner across stays, the two beside it follow.
 *
 * @example The corner (2, 1) of a rectangle from (0, 0) moved to (3, 2): a rectangle of 3 × 2 m
 */
export function stretchedRectangle(
  ring: Outline,
  { index, to }: { readonly index: number; readonly to: Point },
): Outline | undefined {
  if (ring.length !== 4) return undefined;
  const at = (i: number): Point => ring[(index + i) % 4] as Point;
  const across = at(2);
  const [next, before] = [wayFrom(across, at(1)), wayFrom(across, at(3))];
  const isSquare = Math.abs(next[0] * before[0] + next[1] * before[1]) < square;
  const closes = Math.hypot(
    at(1)[0] + at(3)[0] - at(0)[0] - across[0],
    at(1)[1] + at(3)[1] - at(0)[1] - across[1],
  );
  if (!isSquare || closes > 2 * square) return undefined;
  const along = (way: Point): Metres =>
    Math.max(least, (to[0] - across[0]) * way[0] + (to[1] - across[1]) * way[1]);
  const [a, b] = [along(next), along(before)];
  const place = (u: Metres, v: Metres): Point =>
    [0, 1].map(
      (axis) => Math.round((across[axis]! + u * next[axis]! + v * before[axis]!) * 1000) / 1000,
    ) as unknown as Point;
  const moved = [place(a, b), place(a, 0), across, place(0, b)];
  return ring.map((_, i) => moved[(i - index + 4) % 4] as Point);
}

function wayFrom(from: Point, to: Point): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}
