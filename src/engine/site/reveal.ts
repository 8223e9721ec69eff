import { distanceToSegment, type Outline, type Point, signedArea } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Opening, OpeningKind, Room } from "./site.ts";

/** The reveal of an opening: the hole in the wall, between its two faces. */
export interface Reveal {
  readonly opening: string;
  /** Counter-clockwise quad: opening × thickness. [m] */
  readonly outline: Outline;
  /** The opening's ends on the face of its first room. [m] */
  readonly near: readonly [Point, Point];
  /** The same ends on the face of its second room, or outside. [m] */
  readonly far: readonly [Point, Point];
  /** Unit vector through the wall, away from the first room. */
  readonly through: Point;
}

/**
 * The reveal of an opening: the quad from → to × thickness, away from the opening's first room.
 *
 * Away is the outward side of the outline's edge that lies nearest the opening's middle, so it does not depend on the order of from and to.
 *
 * @param opening - The opening.
 * @param first - Its first room, on whose face from and to lie.
 * @returns Quad, faces and direction through the wall. A thickness of 0 gives a quad without area.
 * @example A door from (1, 4) to (2, 4) in the upper wall of a room, 0.2 m thick, has its far face at y = 4.2
 */
export function revealOf(opening: Opening, first: Room): Reveal {
  const { from, to, thickness } = opening;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const across: Point = length === 0 ? [0, 0] : [(from[1] - to[1]) / length, (to[0] - from[0]) / length];
  const outward = outwardAt([first.outline, ...first.holes], [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
  const sign = across[0] * outward[0] + across[1] * outward[1] < 0 ? -1 : 1;
  const through: Point = [sign * across[0], sign * across[1]];
  const moved = (p: Point): Point => [p[0] + thickness * through[0], p[1] + thickness * through[1]];
  const quad: Outline = [from, to, moved(to), moved(from)];
  return {
    opening: opening.id,
    outline: sign > 0 ? quad : quad.toReversed(),
    near: [from, to],
    far: [moved(from), moved(to)],
    through,
  };
}

/**
 * The face of an opening in one of its rooms, and the direction from that face into the room.
 *
 * @param reveal - Reveal of the opening. @param side - "first" room of the opening, or the "second" (or outside).
 * @returns The jambs on that face [m] and the unit vector into the room.
 * @example On its first side a door of an upper wall leads downwards into the room
 */
export function faceOf(
  reveal: Reveal,
  side: "first" | "second",
): { readonly jambs: readonly [Point, Point]; readonly inward: Point } {
  return side === "first"
    ? { jambs: reveal.near, inward: [-reveal.through[0], -reveal.through[1]] }
    : { jambs: reveal.far, inward: reveal.through };
}

/** Clear width of an opening between its jambs. @returns [m] @example from (0, 0) to (0.9, 0): 0.9 m */
export const openingWidth = (opening: Opening): Metres =>
  Math.hypot(opening.to[0] - opening.from[0], opening.to[1] - opening.from[1]);

/** Whether people walk through openings of a kind. @example A door is walkable, a window is not */
export const isWalkable = (kind: OpeningKind): boolean => kind === "door" || kind === "passage";

/** Outward unit normal of the ring edge nearest a point; rings may run either way round, the first is the outer one. */
function outwardAt(rings: readonly Outline[], at: Point): Point {
  let normal: Point = [0, 0];
  let least = Number.POSITIVE_INFINITY;
  for (const [index, ring] of rings.entries()) {
    // Solid lies to the right of a counter-clockwise outer ring and to the left of a counter-clockwise hole.
    const sign = (index === 0 ? 1 : -1) * Math.sign(signedArea(ring));
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] as Point;
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const length = Math.hypot(dx, dy);
      if (length === 0) continue;
      const distance = distanceToSegment(at, [a, b]);
      if (distance < least) {
        least = distance;
        normal = [(sign * dy) / length, (-sign * dx) / length];
      }
    }
  }
  return normal;
}
