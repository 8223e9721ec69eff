import Flatbush from "flatbush";
import type { Metres, Point } from "#engine";
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
interface WallEnd {
  readonly a: Point;
  readonly b: Point;
  readonly middle: Point;
  readonly out: Point;
  readonly thickness: Metres;
}

/**
 * Gaps between wall ends that face each other.
 *
 * @param graph - Walls without doors.
 * @returns Gaps, each pair of ends once: the nearest partner wins.
 * @source DERIVED-HERE
 */
export function wallGaps(graph: Arrangement): readonly WallGap[] {
  const star = starOf(graph);
  return [...facing(thickEnds(graph, star), gapWidths), ...facing(singleEnds(graph, star), singleGaps)];
}

/** Edges at each vertex: those of vertex v stand from first[v] to first[v + 1]. */
interface Star {
  readonly first: Uint32Array;
  readonly edges: Uint32Array;
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
function thickEnds(graph: Arrangement, star: Star): readonly WallEnd[] {
  const { xy, from, to } = graph;
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
      });
    }
  }
  return ends;
}

/** Ends of single lines that lead nowhere. */
function singleEnds({ xy, from, to }: Arrangement, star: Star): readonly WallEnd[] {
  const ends: WallEnd[] = [];
  for (let vertex = 0; vertex + 1 < star.first.length; vertex++) {
    if (star.first[vertex + 1]! - star.first[vertex]! !== 1) continue;
    const edge = star.edges[star.first[vertex]!]!;
    const other = from[edge] === vertex ? to[edge]! : from[edge]!;
    const at: Point = [xy[2 * vertex]!, xy[2 * vertex + 1]!];
    const [dx, dy] = [at[0] - xy[2 * other]!, at[1] - xy[2 * other + 1]!];
    const length = Math.hypot(dx, dy);
    if (length < 0.15) continue;
    ends.push({ a: at, b: at, middle: at, out: [dx / length, dy / length], thickness: 0 });
  }
  return ends;
}

function facing(ends: readonly WallEnd[], [least, most]: readonly [Metres, Metres]): WallGap[] {
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
  return pairs.flatMap(({ i, j, width }): WallGap[] => {
    if (taken.has(i) || taken.has(j)) return [];
    taken.add(i).add(j);
    const [one, other] = [ends[i]!, ends[j]!];
    const straight = apart(one.a, other.a) + apart(one.b, other.b);
    const crossed = apart(one.a, other.b) + apart(one.b, other.a);
    const [p, q] = straight <= crossed ? [other.a, other.b] : [other.b, other.a];
    const thickness = Math.max(one.thickness, other.thickness);
    return [
      {
        shut:
          thickness === 0
            ? [[one.a, p]]
            : [
                [one.a, p],
                [one.b, q],
              ],
        width,
        thickness,
        middle: [(one.middle[0] + other.middle[0]) / 2, (one.middle[1] + other.middle[1]) / 2],
      },
    ];
  });
}

const apart = (p: Point, q: Point): Metres => Math.hypot(p[0] - q[0], p[1] - q[1]);
