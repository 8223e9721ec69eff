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

/** Directions of the edges at each vertex, away from it. */
type Star = readonly (readonly { readonly edge: number; readonly way: Point; readonly length: Metres }[])[];

function starOf({ xy, from, to }: Arrangement): Star {
  const star: { edge: number; way: Point; length: Metres }[][] = Array.from(
    { length: xy.length / 2 },
    () => [],
  );
  for (let edge = 0; edge < from.length; edge++) {
    const [v, w] = [from[edge]!, to[edge]!];
    const [dx, dy] = [xy[2 * w]! - xy[2 * v]!, xy[2 * w + 1]! - xy[2 * v + 1]!];
    const length = Math.hypot(dx, dy);
    star[v]!.push({ edge, way: [dx / length, dy / length], length });
    star[w]!.push({ edge, way: [-dx / length, -dy / length], length });
  }
  return star;
}

/** Short edges between two faces of a wall that both lead away to the same side, and nothing to the other. */
function thickEnds({ xy, from, to }: Arrangement, star: Star): readonly WallEnd[] {
  const ends: WallEnd[] = [];
  for (let edge = 0; edge < from.length; edge++) {
    const [v, w] = [from[edge]!, to[edge]!];
    const a: Point = [xy[2 * v]!, xy[2 * v + 1]!];
    const b: Point = [xy[2 * w]!, xy[2 * w + 1]!];
    const thickness = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (thickness < wallThickness[0] || thickness > wallThickness[1]) continue;
    const across: Point = [(b[0] - a[0]) / thickness, (b[1] - a[1]) / thickness];
    for (const sign of [1, -1]) {
      const back: Point = [-across[1] * sign, across[0] * sign];
      const leads = (vertex: number, way: Point): boolean =>
        star[vertex]!.some((one) => one.edge !== edge && one.way[0] * way[0] + one.way[1] * way[1] > 0.966);
      const out: Point = [-back[0], -back[1]];
      if (!leads(v, back) || !leads(w, back) || leads(v, out) || leads(w, out)) continue;
      ends.push({ a, b, middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], out, thickness });
    }
  }
  return ends;
}

/** Ends of single lines that lead nowhere. */
function singleEnds({ xy }: Arrangement, star: Star): readonly WallEnd[] {
  return star.flatMap((edges, vertex): WallEnd[] => {
    const [only, ...others] = edges;
    if (only === undefined || others.length > 0 || only.length < 0.15) return [];
    const at: Point = [xy[2 * vertex]!, xy[2 * vertex + 1]!];
    return [{ a: at, b: at, middle: at, out: [-only.way[0], -only.way[1]], thickness: 0 }];
  });
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
