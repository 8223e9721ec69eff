import type { Metres, Outline, Point, Region } from "#engine";
import { hullOf, pieceArea, simplified, unionOf } from "../region.ts";
import { tidy } from "../tidy.ts";
import type { ElementMesh } from "./kernel.ts";

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
      const z = part.corners[i + 2]!;
      if (!Number.isFinite(part.corners[i]! + part.corners[i + 1]! + z)) return undefined;
      if (z < low) low = z;
      if (z > high) high = z;
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

/**
 * Footprints of many bodies, each shape's worked out once: a building has its chairs and desks by the dozen, and one that
 * was only shifted has the same silhouette.
 */
export function footprintBook(corners: number): (mesh: ElementMesh) => Footprint | undefined {
  const known = new Map<string, { mesh: ElementMesh; footprint: Footprint }[]>();
  return (mesh) => {
    const key = mesh.parts.map((part) => part.shape).join();
    const alike = known.get(key) ?? [];
    for (const { mesh: other, footprint } of alike) {
      const shift = shiftBetween(other, mesh);
      if (shift) return shifted(footprint, shift);
    }
    const footprint = footprintOf(mesh, corners);
    if (footprint) known.set(key, [...alike, { mesh, footprint }]);
    return footprint;
  };
}

type Shift = readonly [number, number, number];

/** By how much a body of the same shapes was shifted; undefined where it was turned, too. */
const shiftBetween = (from: ElementMesh, to: ElementMesh): Shift | undefined => {
  const [p, q] = [from.parts[0]?.corners, to.parts[0]?.corners];
  if (!p || !q || p.length === 0) return undefined;
  const shift: Shift = [q[0]! - p[0]!, q[1]! - p[1]!, q[2]! - p[2]!];
  for (let k = 0; k < from.parts.length; k++) {
    const a = from.parts[k]!.corners;
    const b = to.parts[k]!.corners;
    if (a.length !== b.length) return undefined;
    for (let i = 0; i < a.length; i++) {
      // Written so that NaN is no match.
      if (!(Math.abs(b[i]! - a[i]! - shift[i % 3]!) < 1e-6)) return undefined;
    }
  }
  return shift;
};

const shifted = ({ outlines, low, high }: Footprint, [dx, dy, dz]: Shift): Footprint => ({
  outlines: outlines.map((ring) => ring.map(([x, y]): Point => [tidy(x + dx), tidy(y + dy)])),
  low: low + dz,
  high: high + dz,
});

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
      const i = triangles[t]! * 3;
      const j = triangles[t + 1]! * 3;
      const k = triangles[t + 2]! * 3;
      const a: Point = [corners[i]!, corners[i + 1]!];
      const b: Point = [corners[j]!, corners[j + 1]!];
      const c: Point = [corners[k]!, corners[k + 1]!];
      const twice = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
      if (Math.abs(twice) > 2e-7) rings.push([a, b, c]);
    }
  }
  return unionOf(rings);
};

const plan = (mesh: ElementMesh): Point[] =>
  mesh.parts.flatMap(({ corners }) =>
    Array.from({ length: corners.length / 3 }, (_, i): Point => [corners[3 * i]!, corners[3 * i + 1]!]),
  );
