import type { Metres, Outline, Point, Region } from "#engine";
import type { ElementMesh } from "./kernel.ts";
import { hullOf, pieceArea, simplified, unionOf } from "./region.ts";

/** A body seen from above, with its heights in the file's world. */
export interface Footprint {
  readonly outlines: readonly Outline[];
  readonly low: Metres;
  readonly high: Metres;
}

/** Beyond this a body's exact silhouette costs more than it tells, and its hull is taken. */
const mostTriangles = 600;

/** Bodies in more parts than this (chairs round a table) are taken as one, by their hull. */
const mostParts = 3;

/**
 * Silhouette of a body on the floor: the union of its triangles seen from above, or its convex hull where the body is
 * too fine or in too many parts. Holes are filled: nobody stands in them.
 *
 * @returns undefined where the body has no extent in plan, or a corner is not finite.
 */
export function footprintOf(mesh: ElementMesh, corners: number): Footprint | undefined {
  let [low, high] = [Infinity, -Infinity];
  let triangles = 0;
  for (const part of mesh.parts) {
    triangles += part.triangles.length / 3;
    for (let i = 0; i < part.corners.length; i += 3) {
      const [x, y, z] = [part.corners[i]!, part.corners[i + 1]!, part.corners[i + 2]!];
      if (!Number.isFinite(x + y + z)) return undefined;
      low = Math.min(low, z);
      high = Math.max(high, z);
    }
  }
  const exact = triangles <= mostTriangles ? silhouette(mesh) : [];
  const pieces = exact.filter((piece) => pieceArea(piece) > speck);
  const outlines =
    pieces.length > 0 && pieces.length <= mostParts
      ? pieces.map((piece) => piece.outline)
      : [hullOf(plan(mesh))];
  const kept = outlines.filter((ring) => ring.length >= 3).map((ring) => fewerCorners(ring, corners));
  return kept.length === 0 || !(high > low) ? undefined : { outlines: kept, low, high };
}

/** Least area in plan that stands in anybody's way. [m²] */
const speck = 1e-3;

/** The ring within a number of corners: coarser and coarser, its hull if all else fails. */
export function fewerCorners(ring: Outline, corners: number): Outline {
  for (const tolerance of [0.002, 0.005, 0.01, 0.02, 0.05]) {
    const simple = simplified(ring, tolerance);
    if (simple.length <= corners) return simple;
  }
  return simplified(hullOf(ring), 0.02);
}

const silhouette = (mesh: ElementMesh): Region => {
  const rings: Outline[] = [];
  for (const { corners, triangles } of mesh.parts) {
    for (let t = 0; t < triangles.length; t += 3) {
      const ring = [0, 1, 2].map((k): Point => {
        const i = triangles[t + k]! * 3;
        return [corners[i]!, corners[i + 1]!];
      });
      if (Math.abs(area(ring)) > 1e-7) rings.push(ring);
    }
  }
  return unionOf(rings);
};

const area = (ring: Outline): number => {
  const [a, b, c] = ring as [Point, Point, Point];
  return ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2;
};

const plan = (mesh: ElementMesh): Point[] =>
  mesh.parts.flatMap(({ corners }) =>
    Array.from({ length: corners.length / 3 }, (_, i): Point => [corners[3 * i]!, corners[3 * i + 1]!]),
  );
