import {
  Clipper,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type Paths64,
} from "clipper2-ts";
import type { Metres } from "../quantity/index.ts";
import { placeInOutline } from "./contains.ts";
import { signedArea } from "./measure.ts";
import type { Outline, Piece, Point, Region } from "./shapes.ts";

/** Whole units of the boolean arithmetic in a metre: 10 µm each. */
const UNITS = 1e5;

/** Chords of offset arcs unless coarser ones will do. [m] */
const FINE_CHORD: Metres = 2e-4;

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
 * @param region - Any region. [m] @param distance - How far; negative shrinks. [m] @param chord - Deepest chord under an arc; 0.2 mm if absent. [m]
 * @returns The grown region; arcs are chords that lie inside the true one. They are laid out from the edges that they join, so that the area
 * does not depend on how the plan is turned.
 * @source CLIPPER2, offsetting
 * @example The unit square grown by 1 m: 1 + 4 + π = 8.14 m²
 */
export function outset(region: Region, distance: Metres, chord: Metres = FINE_CHORD): Region {
  if (region.length === 0) return [];
  // Joining first gives the offset clean rings: it treats each ring on its own and errs where rings touch.
  const joined = union([region]);
  const origin = originOf(joined);
  const offset = new ClipperOffset(2, chord * UNITS);
  offset.addPaths(pathsOf(joined, origin), JoinType.Round, EndType.Polygon);
  const grown: Paths64 = [];
  offset.execute(distance * UNITS, grown);
  return piecesOf(grown, origin);
}

/** A region drawn in by a distance on all sides: the places at least that far from its edge. @example The unit square drawn in by 0.25 m: 0.25 m² */
export const inset = (region: Region, distance: Metres, chord: Metres = FINE_CHORD): Region =>
  outset(region, -distance, chord);

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
  const clip = task.clip.length === 0 ? null : pathsOf(task.clip, origin);
  return piecesOf(
    Clipper.booleanOp(task.type, pathsOf(task.subject, origin), clip, FillRule.NonZero),
    origin,
  );
}

function regionOfPaths(paths: Paths64, origin: Point): Region {
  return piecesOf(Clipper.booleanOp(ClipType.Union, paths, null, FillRule.NonZero), origin);
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

/**
 * Outer rings with the holes that lie in them. The turn of a ring says which it is: the library's own tree at times calls a hole that touches
 * its outer ring a piece, and then its area counts for instead of against.
 */
function piecesOf(paths: Paths64, origin: Point): Region {
  const pieces: { readonly outline: Outline; readonly area: number; readonly holes: Outline[] }[] = [];
  const holes: Outline[] = [];
  for (const path of paths) {
    const ring = ringOf(path, origin);
    const area = signedArea(ring);
    if (area > 0) pieces.push({ outline: ring, area, holes: [] });
    else if (area < 0) holes.push(ring);
  }
  pieces.sort((a, b) => a.area - b.area);
  for (const hole of holes) {
    const home = pieces.length === 1 ? pieces[0] : pieces.find(({ outline }) => liesIn(hole, outline));
    home?.holes.push(hole);
  }
  return pieces.map(({ outline, holes: inside }): Piece => ({ outline, holes: inside }));
}

/** Whether a ring that does not cross another lies in it: the first corner, or else middle of an edge, that is not on its edge decides. */
function liesIn(ring: Outline, outer: Outline): boolean {
  const places = ring.flatMap((corner, i): Point[] => {
    const next = ring[(i + 1) % ring.length] as Point;
    return [corner, [(corner[0] + next[0]) / 2, (corner[1] + next[1]) / 2]];
  });
  for (const place of places) {
    const found = placeInOutline(outer, place);
    if (found !== "edge") return found === "inside";
  }
  return true;
}

function ringOf(path: Path64, [ox, oy]: Point): Outline {
  return path.map((point): Point => [point.x / UNITS + ox, point.y / UNITS + oy]);
}
