import Flatbush from "flatbush";
import { distanceBetween, type Metres, type Point } from "#engine";
import type { Arrangement } from "./arrangement.ts";

/** A gap in a wall between two wall ends, or between the ends of two single lines: two lines shut it, or one. */
export interface WallGap {
  /** Lines across the gap, along the faces of the wall; one where walls are single lines. */
  readonly shut: readonly (readonly [Point, Point])[];
  readonly width: Metres;
  readonly thickness: Metres;
  readonly middle: Point;
}

/** Thinnest and thickest wall. [m] @source COMMON-PRACTICE */
export const wallThickness: readonly [Metres, Metres] = [0.04, 0.75];
/** Narrowest and widest gap that is shut. [m] @source COMMON-PRACTICE */
const gapWidths: readonly [Metres, Metres] = [0.45, 2.6];
/** What is drawn exactly as wide as a limit lies within it. [m] */
const ROUNDED: Metres = 0.01;
/** Single lines break off for many reasons: only a door's width is bridged. [m] */
const singleGaps: readonly [Metres, Metres] = [0.55, 1.5];

/** An end of a wall: where it is, which way the gap lies, how thick it is. */
export interface WallEnd {
  readonly a: Point;
  readonly b: Point;
  readonly middle: Point;
  readonly out: Point;
  readonly thickness: Metres;
  /** Line that closes it; absent at a single line. */
  readonly line?: number;
  /** Number of the free-standing block that it is a side of; absent at a wall. */
  readonly block?: number | undefined;
}

/**
 * Gaps between wall ends that face each other. Small blocks that stand free on all sides may be piers of a wall or
 * furniture: a row of them is a wall only where one of its gaps leads to the end of a wall.
 *
 * @param graph - Walls without doors.
 * @returns Gaps, each pair of ends once: the nearest partner wins.
 * @source DERIVED-HERE
 */
export function wallGaps(graph: Arrangement): readonly WallGap[] {
  const star = starOf(graph);
  const of = { star, blocks: blocksIn(graph, star) };
  const pairs = [...facing(thickEnds(graph, of), gapWidths), ...facing(singleEnds(graph, of), singleGaps)];
  const isWall = wallsAmong(pairs);
  return pairs.filter(({ one }) => isWall(one.block)).map(gapBetween);
}

/** Ends of walls with two faces that are not a side of a free-standing block. */
export function endsOfWalls(graph: Arrangement): readonly WallEnd[] {
  const star = starOf(graph);
  return thickEnds(graph, { star, blocks: new Map() });
}

/** Edges at each vertex: those of vertex v stand from first[v] to first[v + 1]. */
interface Star {
  readonly first: Uint32Array;
  readonly edges: Uint32Array;
}

interface Of {
  readonly star: Star;
  readonly blocks: ReadonlyMap<number, number>;
}

function starOf({ xy, from, to }: Arrangement): Star {
  const first = new Uint32Array(xy.length / 2 + 1);
  for (let edge = 0; edge < from.length; edge++) {
    first[from[edge]! + 1]!++;
    first[to[edge]! + 1]!++;
  }
  for (let v = 1; v < first.length; v++) first[v]! += first[v - 1]!;
  const next = first.slice();
  const edges = new Uint32Array(2 * from.length);
  for (let edge = 0; edge < from.length; edge++) {
    edges[next[from[edge]!]!++] = edge;
    edges[next[to[edge]!]!++] = edge;
  }
  return { first, edges };
}

/** Short edges between two faces of a wall that both lead away to the same side, and nothing to the other. */
function thickEnds(graph: Arrangement, { star, blocks }: Of): readonly WallEnd[] {
  const { xy, from, to, lineOf } = graph;
  const ends: WallEnd[] = [];
  /** Whether an edge other than the given one leads from a vertex in a direction, within 15°. */
  const leads = (vertex: number, but: number, wx: number, wy: number): boolean => {
    for (let k = star.first[vertex]!; k < star.first[vertex + 1]!; k++) {
      const edge = star.edges[k]!;
      if (edge === but) continue;
      const other = from[edge] === vertex ? to[edge]! : from[edge]!;
      const [dx, dy] = [xy[2 * other]! - xy[2 * vertex]!, xy[2 * other + 1]! - xy[2 * vertex + 1]!];
      if (dx * wx + dy * wy > 0.966 * Math.sqrt(dx * dx + dy * dy)) return true;
    }
    return false;
  };
  for (let edge = 0; edge < from.length; edge++) {
    const [v, w] = [from[edge]!, to[edge]!];
    const [ax, ay, bx, by] = [xy[2 * v]!, xy[2 * v + 1]!, xy[2 * w]!, xy[2 * w + 1]!];
    const thickness = Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2);
    if (thickness < wallThickness[0] || thickness > wallThickness[1]) continue;
    for (const sign of [1, -1]) {
      const [x, y] = [(-(by - ay) / thickness) * sign, ((bx - ax) / thickness) * sign];
      if (!leads(v, edge, x, y) || !leads(w, edge, x, y)) continue;
      if (leads(v, edge, -x, -y) || leads(w, edge, -x, -y)) continue;
      ends.push({
        a: [ax, ay],
        b: [bx, by],
        middle: [(ax + bx) / 2, (ay + by) / 2],
        out: [-x, -y],
        thickness,
        line: lineOf[edge]!,
        block: blocks.get(v),
      });
    }
  }
  return ends;
}

/**
 * Pieces that touch nothing and fit into a square as wide as the thickest wall: the number of the piece by its vertices.
 * Its corners lie no farther than that square's diagonal from the first of them.
 */
function blocksIn({ xy, from, to }: Arrangement, star: Star): ReadonlyMap<number, number> {
  const blocks = new Map<number, number>();
  const seen = new Uint8Array(xy.length / 2);
  const reach = wallThickness[1] * Math.SQRT2;
  for (let start = 0; start < seen.length; start++) {
    if (seen[start] === 1) continue;
    seen[start] = 1;
    const piece = [start];
    let fits = true;
    for (let next = 0; next < piece.length; next++) {
      const vertex = piece[next]!;
      fits &&=
        distanceBetween([xy[2 * vertex]!, xy[2 * vertex + 1]!], [xy[2 * start]!, xy[2 * start + 1]!]) <=
        reach;
      for (let k = star.first[vertex]!; k < star.first[vertex + 1]!; k++) {
        const edge = star.edges[k]!;
        const other = from[edge] === vertex ? to[edge]! : from[edge]!;
        if (seen[other] === 1) continue;
        seen[other] = 1;
        piece.push(other);
      }
    }
    if (fits) for (const vertex of piece) blocks.set(vertex, start);
  }
  return blocks;
}

/** Ends of single lines that lead nowhere. */
function singleEnds({ xy, from, to }: Arrangement, { star, blocks }: Of): readonly WallEnd[] {
  const ends: WallEnd[] = [];
  for (let vertex = 0; vertex + 1 < star.first.length; vertex++) {
    if (star.first[vertex + 1]! - star.first[vertex]! !== 1) continue;
    const edge = star.edges[star.first[vertex]!]!;
    const other = from[edge] === vertex ? to[edge]! : from[edge]!;
    const at: Point = [xy[2 * vertex]!, xy[2 * vertex + 1]!];
    const [dx, dy] = [at[0] - xy[2 * other]!, at[1] - xy[2 * other + 1]!];
    const length = Math.hypot(dx, dy);
    if (length < 0.15) continue;
    ends.push({
      a: at,
      b: at,
      middle: at,
      out: [dx / length, dy / length],
      thickness: 0,
      block: blocks.get(vertex),
    });
  }
  return ends;
}

/** Two ends that face each other. */
interface Pair {
  readonly one: WallEnd;
  readonly other: WallEnd;
  readonly width: Metres;
}

/** Pairs of ends that face each other, each end once: the nearest partner wins. */
function facing(ends: readonly WallEnd[], [least, most]: readonly [Metres, Metres]): readonly Pair[] {
  if (ends.length === 0) return [];
  const index = new Flatbush(ends.length);
  for (const { middle } of ends) index.add(middle[0], middle[1], middle[0], middle[1]);
  index.finish();
  const pairs: { readonly i: number; readonly j: number; readonly width: Metres }[] = [];
  ends.forEach((end, i) => {
    const [x, y] = end.middle;
    for (const j of index.search(x - most, y - most, x + most, y + most)) {
      if (j <= i) continue;
      const other = ends[j]!;
      if (end.out[0] * other.out[0] + end.out[1] * other.out[1] > -0.985) continue;
      const [dx, dy] = [other.middle[0] - x, other.middle[1] - y];
      const width = dx * end.out[0] + dy * end.out[1];
      if (width < least - ROUNDED || width > most + ROUNDED) continue;
      const off = Math.abs(dx * -end.out[1] + dy * end.out[0]);
      if (off > Math.max(0.06, Math.abs(end.thickness - other.thickness) / 2 + 0.03)) continue;
      pairs.push({ i, j, width });
    }
  });
  pairs.sort((p, q) => p.width - q.width);
  const taken = new Set<number>();
  return pairs.flatMap(({ i, j, width }): Pair[] => {
    if (taken.has(i) || taken.has(j)) return [];
    taken.add(i).add(j);
    return [{ one: ends[i]!, other: ends[j]!, width }];
  });
}

function gapBetween({ one, other, width }: Pair): WallGap {
  const straight = distanceBetween(one.a, other.a) + distanceBetween(one.b, other.b);
  const crossed = distanceBetween(one.a, other.b) + distanceBetween(one.b, other.a);
  const [p, q] = straight <= crossed ? [other.a, other.b] : [other.b, other.a];
  const thickness = Math.max(one.thickness, other.thickness);
  const between = straightAcross(one, other);
  if (between) return { shut: between, width, thickness, middle: middleOfBoth(one, other) };
  return {
    shut:
      thickness === 0
        ? [[one.a, p]]
        : [
            [one.a, p],
            [one.b, q],
          ],
    width,
    thickness,
    middle: middleOfBoth(one, other),
  };
}

const middleOfBoth = (one: WallEnd, other: WallEnd): Point => [
  (one.middle[0] + other.middle[0]) / 2,
  (one.middle[1] + other.middle[1]) / 2,
];

/** A thin wall that faces a thick one, or a pier: the faces of the thin one run on straight to it. */
function straightAcross(one: WallEnd, other: WallEnd): WallGap["shut"] | undefined {
  if (one.thickness === 0 || Math.abs(one.thickness - other.thickness) < STEP) return undefined;
  const [thin, thick] = one.thickness < other.thickness ? [one, other] : [other, one];
  const [ux, uy] = [(thick.b[0] - thick.a[0]) / thick.thickness, (thick.b[1] - thick.a[1]) / thick.thickness];
  return [thin.a, thin.b].map(([x, y]) => {
    const along = (x - thick.a[0]) * ux + (y - thick.a[1]) * uy;
    const at = Math.max(0, Math.min(thick.thickness, along));
    return [
      [x, y],
      [thick.a[0] + at * ux, thick.a[1] + at * uy],
    ] as const;
  });
}

/** Walls whose thickness differs by less are drawn as one, a little out of line. [m] */
const STEP: Metres = 0.05;

/** Tells of blocks whether gaps lead from them, over other blocks or straight, to the end of a wall. */
function wallsAmong(pairs: readonly Pair[]): (block: number | undefined) => boolean {
  const beside = new Map<number, number[]>();
  const anchored: number[] = [];
  for (const { one, other } of pairs)
    for (const [block, next] of [
      [one.block, other.block],
      [other.block, one.block],
    ] as const) {
      if (block === undefined) continue;
      if (next === undefined) anchored.push(block);
      else beside.set(block, [...(beside.get(block) ?? []), next]);
    }
  const walls = new Set<number>();
  while (anchored.length > 0) {
    const block = anchored.pop()!;
    if (walls.has(block)) continue;
    walls.add(block);
    anchored.push(...(beside.get(block) ?? []));
  }
  return (block) => block === undefined || walls.has(block);
}
