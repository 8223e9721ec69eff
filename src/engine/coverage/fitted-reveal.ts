import {
  distanceBetween,
  FACE_FIT,
  nearestOnRings,
  type Outline,
  type Point,
  type Region,
  regionOf,
} from "../geometry/index.ts";
import { type Opening, type Reveal, type Room, revealOf } from "../site/index.ts";

/** A reveal whose corners lie exactly on the faces of the rooms, so that no ray slips between wall and jamb. */
export interface FittedReveal {
  readonly opening: Opening;
  readonly reveal: Reveal;
  readonly near: readonly [Point, Point];
  readonly far: readonly [Point, Point];
  /** The far side lies on the second room's face. */
  readonly reaches: boolean;
  /** Empty for a wall without thickness. */
  readonly region: Region;
}

/**
 * Fits a reveal between the faces of its rooms: readers and hands round, rays do not.
 *
 * The near corners move to the nearest point of the first room's outline, the far ones along the wall's direction to the second room's; each by at most 50 mm.
 *
 * @param opening - The opening. @param rooms - First room, and second where it is on the same storey.
 * @returns The fitted reveal; undefined where the opening does not lie in its first room's outline.
 * @source DERIVED-HERE
 * @example A door 0.2 m thick between faces 0.203 m apart ends at 0.203 m
 */
export function fittedReveal(
  opening: Opening,
  rooms: { readonly first: Room; readonly second: Room | undefined },
): FittedReveal | undefined {
  const reveal = revealOf(opening, rooms.first);
  const faces = [rooms.first.outline, ...rooms.first.holes];
  const from = nearestOn(faces, opening.from);
  const to = nearestOn(faces, opening.to);
  if (!from || !to || Math.hypot(from[0] - to[0], from[1] - to[1]) < 1e-3) return undefined;
  const near = [from, to] as const;
  const second = rooms.second ? [rooms.second.outline, ...rooms.second.holes] : [];
  const ends = near.map((corner) =>
    across(second, { corner, through: reveal.through, thickness: opening.thickness }),
  );
  const reaches = ends.every((end) => end !== undefined);
  const plain = (p: Point): Point => [
    p[0] + reveal.through[0] * opening.thickness,
    p[1] + reveal.through[1] * opening.thickness,
  ];
  const far = [ends[0] ?? plain(from), ends[1] ?? plain(to)] as const;
  const quad: Outline = [near[0], near[1], far[1], far[0]];
  return { opening, reveal, near, far, reaches, region: regionOf(quad) };
}

/** The place of a face nearest to a point, where one is near enough to be its own. */
function nearestOn(rings: readonly Outline[], point: Point): Point | undefined {
  const nearest = nearestOnRings(point, rings);
  return nearest && distanceBetween(point, nearest) < FACE_FIT ? nearest : undefined;
}

/** Where a line through the wall meets the second room's outline, nearest to the given thickness. */
function across(
  rings: readonly Outline[],
  way: { readonly corner: Point; readonly through: Point; readonly thickness: number },
): Point | undefined {
  const { corner, through, thickness } = way;
  let best: Point | undefined;
  let least = FACE_FIT;
  for (const ring of rings) {
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] as Point;
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const det = through[0] * dy - through[1] * dx;
      // Edges along the line through the wall are side walls, not the face.
      if (Math.abs(det) < 0.1 * Math.hypot(dx, dy)) continue;
      const [px, py] = [a[0] - corner[0], a[1] - corner[1]];
      const way = (px * dy - py * dx) / det;
      const t = (px * through[1] - py * through[0]) / det;
      const slack = 1e-6;
      if (t < -slack || t > 1 + slack || Math.abs(way - thickness) >= least) continue;
      least = Math.abs(way - thickness);
      best = [corner[0] + way * through[0], corner[1] + way * through[1]];
    }
  }
  return best;
}
