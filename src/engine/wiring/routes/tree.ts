import type { Point } from "../../geometry/index.ts";
import type { Metres } from "../../quantity/index.ts";
import { type RouteStyle, routeLengths } from "./distances.ts";

/** A tree between points: pairs of indices. */
export interface RouteTree {
  readonly edges: readonly (readonly [number, number])[];
  readonly length: Metres;
}

/**
 * Shortest tree that branches only at the given points (devices, luminaires, accessible boxes).
 *
 * @param lengths - Symmetric matrix. [m]
 * @returns Edges and length; exact, by growing from the first point.
 * @source DERIVED-HERE, cut property of shortest trees
 * @example Points on a line at 0, 2, 1: edges 0–2 and 2–1, 2 m
 */
export function shortestTree(lengths: readonly (readonly Metres[])[]): RouteTree {
  const outside = new Map(lengths.map((row, i) => [i, { from: 0 as number, length: row[0] ?? 0 }] as const));
  outside.delete(0);
  const edges: [number, number][] = [];
  let length = 0;
  while (outside.size > 0) {
    const [next, link] = [...outside].reduce((near, one) => (one[1].length < near[1].length ? one : near));
    outside.delete(next);
    edges.push([link.from, next]);
    length += link.length;
    for (const [point, known] of outside) {
      const other = (lengths[next] as readonly number[])[point] as number;
      if (other < known.length) outside.set(point, { from: next, length: other });
    }
  }
  return { edges, length };
}

/** Up to this many points the orthogonal tree with free branch points is exact; 3ⁿ · n² steps. */
export const EXACT_TREE = 8;

/** Length below which no cable can connect the points, branch points anywhere. */
export interface LengthBound {
  readonly length: Metres;
  /** exact: the shortest tree itself · bound: proven, but perhaps out of reach. */
  readonly kind: "exact" | "bound";
}

/**
 * Lower bound of the cable between points: the shortest tree with free branch points, which is no plan since joints stay accessible.
 *
 * Orthogonal: exact on the grid of all coordinates by dynamic programming over subsets, up to 8 points; beyond, as for free.
 * Free: half of the shortest tree, which follows from walking round any tree; nothing sharper is claimed.
 *
 * @param points - To be connected. [m] @param style - Free or orthogonal.
 * @returns Bound and its kind.
 * @source STEINER-TREE, DERIVED-HERE
 * @example Corners of a unit square, orthogonal: 3 m, exact
 */
export function lengthBound(points: readonly Point[], style: RouteStyle): LengthBound {
  if (points.length < 2) return { length: 0, kind: "exact" };
  if (style === "orthogonal" && points.length <= EXACT_TREE)
    return { length: gridTree(points), kind: "exact" };
  const tree = shortestTree(routeLengths(points, style)).length;
  return { length: tree / 2, kind: "bound" };
}

/** Shortest orthogonal tree: some shortest one lies on the grid of the points' coordinates. */
function gridTree(points: readonly Point[]): Metres {
  const xs = [...new Set(points.map(([x]) => x))];
  const ys = [...new Set(points.map(([, y]) => y))];
  const nodes: Point[] = xs.flatMap((x) => ys.map((y): Point => [x, y]));
  const between = routeLengths(nodes, "orthogonal");
  const indexOf = ([x, y]: Point): number => xs.indexOf(x) * ys.length + ys.indexOf(y);
  const terminals = points.map(indexOf);
  const root = terminals[0] as number;
  const others = terminals.slice(1);
  const best = Array.from({ length: 1 << others.length }, () =>
    new Float64Array(nodes.length).fill(Number.POSITIVE_INFINITY),
  );
  for (let set = 1; set < best.length; set++) {
    const joined = new Float64Array(nodes.length).fill(Number.POSITIVE_INFINITY);
    const single = others.findIndex((_, i) => set === 1 << i);
    if (single >= 0) joined[others[single] as number] = 0;
    else
      for (let part = (set - 1) & set; part > 0; part = (part - 1) & set)
        for (let v = 0; v < nodes.length; v++) {
          const sum = (best[part] as Float64Array)[v]! + (best[set ^ part] as Float64Array)[v]!;
          if (sum < joined[v]!) joined[v] = sum;
        }
    const row = best[set] as Float64Array;
    // Every pair has its direct way on the grid, so one step from the joint to any node is enough.
    for (let v = 0; v < nodes.length; v++)
      for (let w = 0; w < nodes.length; w++)
        if (joined[w]! + between[w]![v]! < row[v]!) row[v] = joined[w]! + between[w]![v]!;
  }
  return (best.at(-1) as Float64Array)[root]!;
}
