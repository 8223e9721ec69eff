import {
  Clipper,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type Paths64,
  type PolyPath64,
  PolyTree64,
} from "clipper2-ts";
import type { Metres } from "../quantity/index.ts";
import { signedArea } from "./measure.ts";
import type { Outline, Piece, Point, Region } from "./shapes.ts";

/** Whole units of the boolean arithmetic in a metre: 10 µm each. */
const UNITS = 1e5;

/**
 * Everything that lies in at least one of some regions. Pieces may overlap on the way in.
 *
 * @param regions - Regions to join. [m]
 * @returns Pieces that do not overlap, corners on the 10 µm grid.
 * @source CLIPPER2, polygon booleans on integers
 * @example Two unit squares side by side: one piece of 2 m²
 */
export function union(regions: readonly Region[]): Region {
  const all = regions.flat();
  return all.length === 0 ? [] : combine({ type: ClipType.Union, subject: all, clip: [] });
}

/** Everything that lies in both regions. @source CLIPPER2 @example Unit squares half a metre apart: 0.5 m² */
export function intersection(a: Region, b: Region): Region {
  return a.length === 0 || b.length === 0
    ? []
    : combine({ type: ClipType.Intersection, subject: a, clip: b });
}

/** Everything that lies in the first region and not in the second. @source CLIPPER2 @example A unit square less its left half: 0.5 m² */
export function difference(a: Region, b: Region): Region {
  return a.length === 0 ? [] : combine({ type: ClipType.Difference, subject: a, clip: b });
}

/**
 * A region grown by a distance on all sides, corners round.
 *
 * @param region - Any region. [m] @param distance - How far; negative shrinks. [m]
 * @returns The grown region; arcs are chords at most 0.2 mm deep, so that they lie inside the true one.
 * @source CLIPPER2, offsetting
 * @example The unit square grown by 1 m: 1 + 4 + π = 8.14 m²
 */
export function outset(region: Region, distance: Metres): Region {
  if (region.length === 0) return [];
  // Joining first gives the offset clean rings: it treats each ring on its own and errs where rings touch.
  const joined = union([region]);
  const origin = originOf(joined);
  const offset = new ClipperOffset(2, 20);
  offset.addPaths(pathsOf(joined, origin), JoinType.Round, EndType.Polygon);
  const tree = new PolyTree64();
  offset.execute(distance * UNITS, tree);
  return regionOfTree(tree, origin);
}

/** A region drawn in by a distance on all sides: the places at least that far from its edge. @example The unit square drawn in by 0.25 m: 0.25 m² */
export const inset = (region: Region, distance: Metres): Region => outset(region, -distance);

/** A region from one ring, whichever way it runs; overlaps of the ring with itself are joined. @example Four corners: one piece */
export const regionOf = (outline: Outline, holes: readonly Outline[] = []): Region =>
  holes.length === 0
    ? union([[{ outline, holes: [] }]])
    : difference(
        [{ outline, holes: [] }],
        holes.map((hole) => ({ outline: hole, holes: [] })),
      );

/** The same region with outer rings counter-clockwise and holes clockwise. @example A clockwise square comes back counter-clockwise */
export const oriented = (region: Region): Region =>
  region.map((piece) => ({
    outline: signedArea(piece.outline) < 0 ? piece.outline.toReversed() : piece.outline,
    holes: piece.holes.map((hole) => (signedArea(hole) > 0 ? hole.toReversed() : hole)),
  }));

/**
 * A region without the corners that lie within a distance of the line between their neighbours.
 *
 * @param region - Any region. [m] @param distance - How far an edge may move. [m]
 * @returns The simpler region.
 * @source CLIPPER2, path simplification
 * @example A square with a corner halfway along an edge: four corners
 */
export function simplified(region: Region, distance: Metres): Region {
  if (region.length === 0) return [];
  const origin = originOf(region);
  return regionOfPaths(Clipper.simplifyPaths(pathsOf(region, origin), distance * UNITS), origin);
}

function combine(task: { readonly type: ClipType; readonly subject: Region; readonly clip: Region }): Region {
  const origin = originOf(task.subject);
  const tree = new PolyTree64();
  const clip = task.clip.length === 0 ? null : pathsOf(task.clip, origin);
  Clipper.booleanOpWithPolyTree(task.type, pathsOf(task.subject, origin), clip, tree, FillRule.NonZero);
  return regionOfTree(tree, origin);
}

function regionOfPaths(paths: Paths64, origin: Point): Region {
  const tree = new PolyTree64();
  Clipper.booleanOpWithPolyTree(ClipType.Union, paths, null, tree, FillRule.NonZero);
  return regionOfTree(tree, origin);
}

/** Whole metres near the region: subtracting them is exact, keeps far plans inside exact integers, and leaves all results on one grid. */
function originOf(region: Region): Point {
  const first = region[0]?.outline[0] ?? [0, 0];
  return [Math.round(first[0]), Math.round(first[1])];
}

function pathsOf(region: Region, origin: Point): Paths64 {
  const paths: Paths64 = [];
  for (const piece of region) {
    paths.push(pathOf(piece.outline, { origin, turn: 1 }));
    for (const hole of piece.holes) paths.push(pathOf(hole, { origin, turn: -1 }));
  }
  return paths;
}

function pathOf(ring: Outline, options: { readonly origin: Point; readonly turn: 1 | -1 }): Path64 {
  const [ox, oy] = options.origin;
  const path = ring.map(([x, y]) => ({ x: Math.round((x - ox) * UNITS), y: Math.round((y - oy) * UNITS) }));
  return Math.sign(signedArea(ring)) === -options.turn ? path.reverse() : path;
}

function regionOfTree(tree: PolyPath64, origin: Point): Region {
  const pieces: Piece[] = [];
  const walk = (node: PolyPath64): void => {
    for (let i = 0; i < node.count; i++) {
      const outer = node.child(i);
      const holes: Outline[] = [];
      for (let j = 0; j < outer.count; j++) {
        const hole = outer.child(j);
        holes.push(ringOf(hole.poly ?? [], { origin, turn: -1 }));
        walk(hole);
      }
      pieces.push({ outline: ringOf(outer.poly ?? [], { origin, turn: 1 }), holes });
    }
  };
  walk(tree);
  return pieces;
}

function ringOf(path: Path64, options: { readonly origin: Point; readonly turn: 1 | -1 }): Outline {
  const [ox, oy] = options.origin;
  const ring = path.map((point): Point => [point.x / UNITS + ox, point.y / UNITS + oy]);
  return Math.sign(signedArea(ring)) === -options.turn ? ring.reverse() : ring;
}
