import Flatbush from "flatbush";
import type { Metres, Outline, Point, SquareMetres } from "#engine";
import type { Arrangement } from "./arrangement.ts";

/** A closed face of an arrangement. Half-edge 2e runs along edge e, 2e + 1 against it; its face lies to the left. */
export interface Face {
  /** Counter-clockwise. [m] */
  readonly outline: Outline;
  /** Half-edges of the outline, in order. */
  readonly edges: readonly number[];
  /** Islands in it, clockwise, with their half-edges. */
  readonly islands: readonly { readonly outline: Outline; readonly edges: readonly number[] }[];
  /** Of the outline less the islands. [m²] */
  readonly area: SquareMetres;
  /** 2 · area / length of all edges: half the side of a square, the width of a long strip. [m] */
  readonly width: Metres;
}

export interface Faces {
  readonly faces: readonly Face[];
  /** Face to the left of each half-edge; −1: outside. */
  readonly faceOf: Int32Array;
}

/**
 * Closed faces of an arrangement. Edges that close nothing off are left out first.
 *
 * @param graph - The arrangement.
 * @returns Faces with their islands, and the face beside each half-edge.
 * @source DERIVED-HERE
 * @example Two rooms side by side: two faces
 */
export function facesOf(graph: Arrangement): Faces {
  const alive = withoutDeadEnds(graph);
  const next = nextHalfEdges(graph, alive);
  const cycles: { edges: number[]; ring: Point[]; area: number }[] = [];
  const cycleOf = new Int32Array(next.length).fill(-1);
  for (let start = 0; start < next.length; start++) {
    if (cycleOf[start] !== -1 || alive[start >> 1] === 0) continue;
    const edges: number[] = [];
    for (let h = start; cycleOf[h] === -1; h = next[h]!) {
      cycleOf[h] = cycles.length;
      edges.push(h);
    }
    const ring = edges.map((h): Point => {
      const v = tail(graph, h);
      return [graph.xy[2 * v]!, graph.xy[2 * v + 1]!];
    });
    cycles.push({ edges, ring, area: ringArea(ring) });
  }
  const outers = cycles.flatMap((cycle, index) => (cycle.area > 1e-9 ? [index] : []));
  const islandsOf = new Map<number, number[]>();
  const faceOfCycle = new Int32Array(cycles.length).fill(-1);
  outers.forEach((cycle, face) => {
    faceOfCycle[cycle] = face;
  });
  const find = containing(outers.map((index) => cycles[index]!));
  cycles.forEach((cycle, index) => {
    if (cycle.area > 1e-9) return;
    // An island of no area is a bridge between two of its own ends: it lies in the face all the same.
    const face = find(cycle.ring, cycle.area);
    if (face < 0) return;
    faceOfCycle[index] = face;
    islandsOf.set(face, [...(islandsOf.get(face) ?? []), index]);
  });
  const faceOf = new Int32Array(next.length).fill(-1);
  for (let h = 0; h < next.length; h++) if (cycleOf[h]! >= 0) faceOf[h] = faceOfCycle[cycleOf[h]!]!;
  const faces = outers.map((index, face): Face => {
    const { ring, edges, area } = cycles[index]!;
    const islands = (islandsOf.get(face) ?? []).map((island) => ({
      outline: cycles[island]!.ring,
      edges: cycles[island]!.edges,
    }));
    const left = area + islands.reduce((sum, island) => sum + ringArea(island.outline), 0);
    const around = lengthOf(ring) + islands.reduce((sum, island) => sum + lengthOf(island.outline), 0);
    return { outline: ring, edges, islands, area: left, width: (2 * left) / around };
  });
  return { faces, faceOf };
}

/** Vertex where a half-edge begins. */
export const tail = (graph: Arrangement, h: number): number =>
  (h & 1) === 0 ? graph.from[h >> 1]! : graph.to[h >> 1]!;

/** Vertex where a half-edge ends. */
export const head = (graph: Arrangement, h: number): number => tail(graph, h ^ 1);

/** Area of a ring, positive when it runs counter-clockwise. [m²] */
export function ringArea(ring: readonly Point[]): SquareMetres {
  let sum = 0;
  const [ox, oy] = ring[0] ?? [0, 0];
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[i + 1 < ring.length ? i + 1 : 0]!;
    sum += (a[0] - ox) * (b[1] - oy) - (b[0] - ox) * (a[1] - oy);
  }
  return sum / 2;
}

const lengthOf = (ring: readonly Point[]): Metres => {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[i + 1 < ring.length ? i + 1 : 0]!;
    sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
};

/** Which edges are left when those that end in nothing are taken off, one after the other. */
function withoutDeadEnds({ xy, from, to }: Arrangement): Uint8Array {
  const count = xy.length / 2;
  const degree = new Uint32Array(count);
  const edgesAt: number[][] = Array.from({ length: count }, () => []);
  for (let e = 0; e < from.length; e++) {
    for (const v of [from[e]!, to[e]!]) {
      degree[v]! += 1;
      edgesAt[v]!.push(e);
    }
  }
  const alive = new Uint8Array(from.length).fill(1);
  const ends: number[] = [];
  for (let v = 0; v < count; v++) if (degree[v] === 1) ends.push(v);
  for (let v = ends.pop(); v !== undefined; v = ends.pop()) {
    const edge = edgesAt[v]!.find((e) => alive[e] === 1);
    if (edge === undefined) continue;
    alive[edge] = 0;
    for (const w of [from[edge]!, to[edge]!]) {
      degree[w]! -= 1;
      if (degree[w] === 1) ends.push(w);
    }
  }
  return alive;
}

/** For each half-edge the one that follows it round the face to its left. */
function nextHalfEdges(graph: Arrangement, alive: Uint8Array): Int32Array {
  const { xy, from } = graph;
  const next = new Int32Array(2 * from.length).fill(-1);
  const out: number[][] = Array.from({ length: xy.length / 2 }, () => []);
  for (let h = 0; h < next.length; h++) if (alive[h >> 1] === 1) out[tail(graph, h)]!.push(h);
  for (const list of out) {
    const angle = (h: number): number => {
      const [a, b] = [tail(graph, h), head(graph, h)];
      return Math.atan2(xy[2 * b + 1]! - xy[2 * a + 1]!, xy[2 * b]! - xy[2 * a]!);
    };
    const sorted = list.map((h) => ({ h, angle: angle(h) })).sort((p, q) => p.angle - q.angle);
    // Arriving against an edge, the face to the left goes on along the next edge clockwise.
    sorted.forEach(({ h }, i) => {
      next[h ^ 1] = sorted[(i + sorted.length - 1) % sorted.length]!.h;
    });
  }
  return next;
}

/** Finds the smallest of the rings that a ring lies in. */
function containing(
  rings: readonly {
    readonly ring: readonly Point[];
    readonly area: number;
    readonly edges: readonly number[];
  }[],
): (island: readonly Point[], area: number) => number {
  if (rings.length === 0) return () => -1;
  const index = new Flatbush(rings.length);
  for (const { ring } of rings) {
    let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const [x, y] of ring) {
      x1 = Math.min(x1, x);
      y1 = Math.min(y1, y);
      x2 = Math.max(x2, x);
      y2 = Math.max(y2, y);
    }
    index.add(x1, y1, x2, y2);
  }
  index.finish();
  const tests = new Map<number, (at: Point) => boolean>();
  const within = (i: number): ((at: Point) => boolean) => {
    const known = tests.get(i);
    if (known) return known;
    const { ring } = rings[i]!;
    const test = ring.length > MANY ? bandedRing(ring) : (at: Point) => inRing(at, ring);
    tests.set(i, test);
    return test;
  };
  return (island, area) => {
    // The leftmost corner of an island lies in whatever surrounds it, and not on it unless they touch.
    const at = island.reduce((best, p) => (p[0] < best[0] ? p : best));
    // The smallest first: the large outlines of a plan are long, and most islands lie in a room.
    const around = index.search(at[0], at[1], at[0], at[1]).sort((i, j) => rings[i]!.area - rings[j]!.area);
    // Its own outline from within has the same size and does not surround it.
    return around.find((i) => rings[i]!.area > -area + 1e-9 && within(i)(at)) ?? -1;
  };
}

/** From this many corners on a ring is sorted into bands before points are looked for in it. */
const MANY = 64;

/** As inRing, for many points and a long ring: only the edges at the point's height are looked at. */
function bandedRing(ring: readonly Point[]): (at: Point) => boolean {
  let [low, high] = [Infinity, -Infinity];
  for (const [, y] of ring) {
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  const count = Math.ceil(ring.length / 4);
  const bandOf = (y: number): number =>
    Math.max(0, Math.min(count - 1, Math.floor(((y - low) / (high - low)) * count)));
  const bands: number[][] = Array.from({ length: count }, () => []);
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if (a[1] === b[1]) return;
    const last = bandOf(Math.max(a[1], b[1]));
    for (let band = bandOf(Math.min(a[1], b[1])); band <= last; band++) bands[band]!.push(i);
  });
  return (at) => {
    let inside = false;
    for (const i of bands[bandOf(at[1])]!) {
      const side = crossing(at, ring[i]!, ring[(i + 1) % ring.length]!);
      if (side === "on") return false;
      if (side === "right") inside = !inside;
    }
    return inside;
  };
}

/** Whether the ray from a point to the right crosses an edge; "on" where the point lies on it. */
function crossing([x, y]: Point, a: Point, b: Point): "right" | "on" | "none" {
  if (a[1] > y === b[1] > y) return "none";
  const cross = a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1]);
  return Math.abs(cross - x) < 1e-9 ? "on" : x < cross ? "right" : "none";
}

/** Whether a point lies in a ring; on its edge: not. */
export function inRing(at: Point, ring: readonly Point[]): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const side = crossing(at, ring[i]!, ring[j]!);
    if (side === "on") return false;
    if (side === "right") inside = !inside;
  }
  return inside;
}
