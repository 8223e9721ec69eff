import type { Outline, Point } from "../geometry/index.ts";
import {
  addChain,
  addEndless,
  addRing,
  ENDLESS,
  type SweepEdges,
  sweep,
  sweepEdges,
  type Wedges,
} from "../geometry/sweep/index.ts";
import type { Metres } from "../quantity/index.ts";
import { farthestOf, type MaskChains } from "./reach-polygon.ts";
import type { Prism, ScenePart } from "./scene.ts";

/** One look from a height to a level plane. */
export interface Look {
  readonly eye: Point;
  /** Height of the eye. [m] */
  readonly from: Metres;
  /** Height of the plane that is looked at, above or below the eye. [m] */
  readonly plane: Metres;
  /** Ring of the reach, measured from the eye. [m] */
  readonly reach: Outline;
  readonly masks: readonly MaskChains[];
}

/**
 * What an eye sees of a level plane among the solids of a part.
 *
 * With u = (z − from)/(plane − from) the share of a ray's way at height z, a prism between u₁ and u₂ that a ray enters at d₁ and leaves at d₂
 * hides from d₁/min(1, u₂) to d₂/u₁; without end if u₁ ≤ 0; nothing if u₂ ≤ 0 or u₁ ≥ 1.
 * Looking down this is d₁·max(1, (h − s)/(h − base)) to d₂·(h − s)/(h − top).
 *
 * @param part - Solids. @param look - Eye, plane, reach and masks.
 * @returns Wedges of what is seen.
 * @source SIGHT-GEOMETRY
 * @example h 2.8 m, partition 1.4 m high at 3 m, seen at 0.8 m: hidden from 3 m to 4.286 m
 */
export function sightSweep(part: Pick<ScenePart, "walls" | "prisms">, look: Look): Wedges {
  const eye = clearOfEdges(part, look.eye);
  const most = farthestOf(look.reach);
  // The chain of the reach ends all sight within `most`; a grain more keeps the chain itself.
  const edges = sweepEdges(eye, look.reach.length >= 3 ? most + 0.001 : Infinity);
  const [minX, minY, maxX, maxY] = [eye[0] - most, eye[1] - most, eye[0] + most, eye[1] + most];
  for (const wall of part.walls) {
    const { a, b } = wall;
    if ((a[0] < minX && b[0] < minX) || (a[0] > maxX && b[0] > maxX)) continue;
    if ((a[1] < minY && b[1] < minY) || (a[1] > maxY && b[1] > maxY)) continue;
    addEndless(edges, [a, b]);
  }
  for (const prism of part.prisms) {
    const { bounds } = prism;
    if (distanceTo(bounds, eye) > most) continue;
    const factors = hidingFactors(prism, look);
    if (factors) for (const ring of prism.rings) addRing(edges, ring, factors);
  }
  addMasks(edges, look.masks);
  const { reach } = look;
  if (reach.length >= 3) addChain(edges, [...reach, reach[0] as Point], ENDLESS);
  else edges.depth = 1;
  return sweep(edges);
}

/** Distance from a point to a box with sides along the axes. */
function distanceTo(bounds: Prism["bounds"], [x, y]: Point): Metres {
  const dx = Math.max(bounds.minX - x, 0, x - bounds.maxX);
  const dy = Math.max(bounds.minY - y, 0, y - bounds.maxY);
  return Math.sqrt(dx * dx + dy * dy);
}

/** By which factors a prism's near and far sides are moved out on the plane; undefined where it hides nothing. */
export function hidingFactors(
  prism: Pick<Prism, "base" | "top">,
  look: Pick<Look, "from" | "plane">,
): { readonly near: number; readonly far: number } | undefined {
  const way = look.plane - look.from;
  const [a, b] = [(prism.base - look.from) / way, (prism.top - look.from) / way];
  const [u1, u2] = a < b ? [a, b] : [b, a];
  if (!(u2 > 0) || u1 >= 1) return undefined;
  return { near: 1 / Math.min(1, u2), far: u1 <= 0 ? Infinity : 1 / u1 };
}

function addMasks(edges: SweepEdges, masks: readonly MaskChains[]): void {
  for (const { inner, outer } of masks) {
    addChain(edges, inner, outer ? 1 : ENDLESS);
    if (outer) addChain(edges, outer, -1);
  }
}

/** Nearer to an edge than this an eye has no side: it is moved off by ten grains. [m] */
const ON_EDGE: Metres = 1e-6;

/** The eye, moved a tenth of a millimetre off where it lies on an edge: at an edge itself no direction has a first side. */
function clearOfEdges(part: Pick<ScenePart, "walls" | "prisms">, eye: Point): Point {
  if (!touches(part, eye)) return eye;
  for (let i = 0; i < 8; i++) {
    const angle = 0.3 + (i * Math.PI) / 4;
    const moved: Point = [eye[0] + 1e-4 * Math.cos(angle), eye[1] + 1e-4 * Math.sin(angle)];
    if (!touches(part, moved)) return moved;
  }
  return eye;
}

function touches(part: Pick<ScenePart, "walls" | "prisms">, eye: Point): boolean {
  for (const { a, b } of part.walls) if (isNear(eye, a, b)) return true;
  for (const prism of part.prisms) {
    const { bounds } = prism;
    if (eye[0] < bounds.minX - ON_EDGE || eye[0] > bounds.maxX + ON_EDGE) continue;
    if (eye[1] < bounds.minY - ON_EDGE || eye[1] > bounds.maxY + ON_EDGE) continue;
    for (const ring of prism.rings) {
      for (let i = 0; i < ring.length; i++)
        if (isNear(eye, ring[i] as Point, ring[(i + 1) % ring.length] as Point)) return true;
    }
  }
  return false;
}

function isNear(p: Point, a: Point, b: Point): boolean {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const px = p[0] - a[0];
  const py = p[1] - a[1];
  const square = dx * dx + dy * dy;
  const cross = px * dy - py * dx;
  if (cross * cross > ON_EDGE * ON_EDGE * square && square > 0) return false;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / square));
  const ox = px - t * dx;
  const oy = py - t * dy;
  return ox * ox + oy * oy < ON_EDGE * ON_EDGE;
}
