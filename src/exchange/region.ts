import { booleanOp, ClipType, FillRule, type Paths64 } from "clipper2-ts";
import type { Metres, Outline, Piece, Point, Region, SquareMetres } from "#engine";

/** Grid of the booleans on imported shapes. Meshes come in single precision, so a finer one would only keep noise. [m] */
const grid = 1e-4;

/** Everything that any of the rings covers, whatever way round they run. */
export function unionOf(rings: readonly Outline[]): Region {
  const paths = rings.map(toPath).filter((path) => path.length >= 3);
  for (const path of paths) if (pathArea(path) < 0) path.reverse();
  if (paths.length === 0) return [];
  return toRegion(booleanOp(ClipType.Union, paths, [], FillRule.NonZero));
}

/** What two regions share. */
export function sharedOf(a: Region, b: Region): Region {
  return toRegion(booleanOp(ClipType.Intersection, toPaths(a), toPaths(b), FillRule.NonZero));
}

/** What the first region has beyond the second. */
export function remainderOf(a: Region, b: Region): Region {
  return toRegion(booleanOp(ClipType.Difference, toPaths(a), toPaths(b), FillRule.NonZero));
}

/** Area of a ring, positive when it runs counter-clockwise. [m²] */
export function ringArea(ring: Outline): SquareMetres {
  let sum = 0;
  let before = ring[ring.length - 1];
  for (const point of ring) {
    if (before) sum += (before[0] - point[0]) * (before[1] + point[1]);
    before = point;
  }
  return sum / 2;
}

/** Area of a piece without its holes. [m²] */
export function pieceArea(piece: Piece): SquareMetres {
  return piece.holes.reduce((sum, hole) => sum - Math.abs(ringArea(hole)), Math.abs(ringArea(piece.outline)));
}

/** Twice the area over the length of all edges: half the side of a square, the width of a long strip. [m] */
export function pieceWidth(piece: Piece): Metres {
  let around = 0;
  for (const ring of [piece.outline, ...piece.holes])
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      around += Math.hypot(b[0] - a[0], b[1] - a[1]);
    });
  return (2 * pieceArea(piece)) / around;
}

/** Area of a region. [m²] */
export function regionArea(region: Region): SquareMetres {
  return region.reduce((sum, piece) => sum + pieceArea(piece), 0);
}

/** Whether a point lies in a ring (even-odd; on the edge either way). */
export function inRing(point: Point, ring: Outline): boolean {
  let inside = false;
  let before = ring[ring.length - 1];
  for (const corner of ring) {
    if (before && corner[1] > point[1] !== before[1] > point[1]) {
      const x = corner[0] + ((point[1] - corner[1]) * (before[0] - corner[0])) / (before[1] - corner[1]);
      if (point[0] < x) inside = !inside;
    }
    before = corner;
  }
  return inside;
}

/** Whether a point lies in a piece. */
export function inPiece(point: Point, piece: Piece): boolean {
  return inRing(point, piece.outline) && !piece.holes.some((hole) => inRing(point, hole));
}

/** A ring without repeated points and without corners that lie on the line between their neighbours, within the tolerance. [m] */
export function simplified(ring: Outline, tolerance: number): Outline {
  if (ring.length < 4) return ring;
  const start = farthest(ring, ring[0]!);
  const turned = [...ring.slice(start), ...ring.slice(0, start)];
  const opposite = farthest(turned, turned[0]!);
  const kept = [
    ...between(turned, 0, opposite, tolerance),
    ...between([...turned, turned[0]!], opposite, turned.length, tolerance),
  ];
  return kept.length < 3 ? ring : kept;
}

const farthest = (ring: Outline, from: Point): number => {
  let best = 0;
  let most = -1;
  ring.forEach((p, i) => {
    const d = (p[0] - from[0]) ** 2 + (p[1] - from[1]) ** 2;
    if (d > most) [best, most] = [i, d];
  });
  return best;
};

/** Corners that matter from index a up to, not including, index b (Ramer, Douglas, Peucker). */
const between = (line: Outline, a: number, b: number, tolerance: number): Point[] => {
  const kept: Point[] = [];
  const stack: [number, number][] = [[a, b]];
  while (stack.length > 0) {
    const [i, j] = stack.pop()!;
    let split = -1;
    let most = tolerance;
    for (let k = i + 1; k < j; k++) {
      const off = distanceToSegment(line[k]!, line[i]!, line[j]!);
      if (off > most) [split, most] = [k, off];
    }
    if (split < 0) kept.push(line[i]!);
    else stack.push([split, j], [i, split]);
  }
  return kept;
};

/** Distance of a point from a segment. [m] */
export function distanceToSegment(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length2));
  const [ox, oy] = [p[0] - a[0] - t * dx, p[1] - a[1] - t * dy];
  return Math.sqrt(ox * ox + oy * oy);
}

/** Least x, least y, largest x, largest y. [m] */
export type Box = readonly [Metres, Metres, Metres, Metres];

/** Least and largest x and y of a ring. */
export function boxOf(ring: Outline): Box {
  let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const point of ring) {
    const x = point[0];
    const y = point[1];
    if (x < x1) x1 = x;
    if (x > x2) x2 = x;
    if (y < y1) y1 = y;
    if (y > y2) y2 = y;
  }
  return [x1, y1, x2, y2];
}

/** Convex hull, counter-clockwise (Andrew's monotone chain). */
export function hullOf(points: readonly Point[]): Outline {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length >= 2 && turn(chain[chain.length - 2]!, chain[chain.length - 1]!, p) <= 0)
        chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turn = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

type Path = { x: number; y: number }[];

const toPath = (ring: Outline): Path => {
  const path: Path = [];
  for (const [x, y] of ring) {
    const point = { x: Math.round(x / grid), y: Math.round(y / grid) };
    const last = path[path.length - 1];
    if (!last || last.x !== point.x || last.y !== point.y) path.push(point);
  }
  return path;
};

const toPaths = (region: Region): Paths64 =>
  region.flatMap((piece) => [toPath(piece.outline), ...piece.holes.map(toPath)]) as Paths64;

const pathArea = (path: Path): number => {
  let sum = 0;
  let before = path[path.length - 1]!;
  for (const point of path) {
    sum += (before.x - point.x) * (before.y + point.y);
    before = point;
  }
  return sum / 2;
};

/** Specks below one square centimetre come from rounding where triangles meet, not from the building. [m²] */
const speck = 1e-4;

const toRegion = (paths: Paths64): Region => {
  const rings = paths.map((path): Outline => path.map(({ x, y }) => [onGrid(x), onGrid(y)] as const));
  const outers = rings.filter((ring) => ringArea(ring) > speck);
  const holes = rings.filter((ring) => ringArea(ring) < -speck);
  outers.sort((a, b) => ringArea(a) - ringArea(b));
  const pieces = outers.map((outline) => ({ outline, holes: [] as Outline[] }));
  for (const hole of holes) {
    // The smallest outer ring around a hole owns it: an island inside a hole is a piece of its own.
    pieces
      .find((piece) => ringArea(piece.outline) > -ringArea(hole) && holeIn(hole, piece.outline))
      ?.holes.push(hole);
  }
  return pieces.reverse();
};

const holeIn = (hole: Outline, outer: Outline): boolean => {
  const [a, b] = [hole[0]!, hole[1]!];
  return inRing([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], outer) || hole.every((p) => inRing(p, outer));
};

const onGrid = (units: number): Metres => Math.round(units) / 10000 + 0;
