import type { Metres, Point } from "#engine";
import { leafWidths, type SwingArc, sweeps } from "./door-arcs.ts";

/** A quarter circle that came as a chain of short lines, with the lines of it. */
export interface ChainArc extends SwingArc {
  readonly lines: readonly number[];
}

/** A chord may be off its circle by this share of the radius. */
const ROUNDNESS = 0.03;
/** Fewest chords that make a curve, not a corner. */
const FEWEST = 4;
/** Chords of a door's arc are no longer; longer lines are leaves and walls. [m] */
const LONGEST: Metres = 0.6;
/** Chords turn by less; printed files round their places, so that short chords turn to either side. [rad] */
const SHARPEST = 1;

/**
 * Quarter circles in chains of lines that follow one another in the drawing: curves of files that know no arcs.
 *
 * @param lines - x1 y1 x2 y2 of each. [m]
 * @returns Arcs of a door's size with a sweep of 55 to 125 degrees.
 * @source DERIVED-HERE
 */
export function chainArcs(lines: Float64Array): readonly ChainArc[] {
  const found: ChainArc[] = [];
  const count = lines.length / 4;
  for (let first = 0; first < count; ) {
    let last = first;
    if (isChord(lines, first))
      while (
        last + 1 < count &&
        follows(lines, last) &&
        isChord(lines, last + 1) &&
        Math.abs(turnBetween(lines, last)) < SHARPEST
      )
        last++;
    if (last - first + 1 >= FEWEST) {
      const arc = arcThrough(lines, { first, last, radii: leafWidths });
      if (arc) found.push(arc);
    }
    first = last + 1;
  }
  return found;
}

/** A chord of a curve is at most so much longer or shorter than the first of its chain. */
const UNEVEN = 4;

/**
 * Quarter circles of any size in chains of lines that follow one another: what tells the scale of a sheet that states none.
 *
 * @param lines - x1 y1 x2 y2 of each, in any unit.
 * @source DERIVED-HERE
 */
export function chainsOfAnySize(lines: Float64Array): readonly ChainArc[] {
  const found: ChainArc[] = [];
  const count = lines.length / 4;
  const size = (i: number): number =>
    Math.hypot(lines[4 * i + 2]! - lines[4 * i]!, lines[4 * i + 3]! - lines[4 * i + 1]!);
  for (let first = 0; first < count; ) {
    let last = first;
    const chord = size(first);
    const alike = (other: number): boolean => other < UNEVEN * chord && chord < UNEVEN * other;
    while (
      last + 1 < count &&
      follows(lines, last) &&
      alike(size(last + 1)) &&
      Math.abs(turnBetween(lines, last)) < SHARPEST
    )
      last++;
    if (last - first + 1 >= FEWEST) {
      const arc = arcThrough(lines, { first, last, radii: [0, Infinity] });
      if (arc) found.push(arc);
    }
    first = last + 1;
  }
  return found;
}

const isChord = (lines: Float64Array, i: number): boolean =>
  Math.hypot(lines[4 * i + 2]! - lines[4 * i]!, lines[4 * i + 3]! - lines[4 * i + 1]!) < LONGEST;

const follows = (lines: Float64Array, i: number): boolean =>
  Math.abs(lines[4 * i + 2]! - lines[4 * i + 4]!) < 1e-4 &&
  Math.abs(lines[4 * i + 3]! - lines[4 * i + 5]!) < 1e-4;

const turnBetween = (lines: Float64Array, i: number): number => {
  const o = 4 * i;
  const [ax, ay] = [lines[o + 2]! - lines[o]!, lines[o + 3]! - lines[o + 1]!];
  const [bx, by] = [lines[o + 6]! - lines[o + 4]!, lines[o + 7]! - lines[o + 5]!];
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
};

function arcThrough(
  lines: Float64Array,
  of: { readonly first: number; readonly last: number; readonly radii: readonly [Metres, Metres] },
): ChainArc | undefined {
  const { first, last, radii } = of;
  const points: Point[] = [[lines[4 * first]!, lines[4 * first + 1]!]];
  for (let i = first; i <= last; i++) points.push([lines[4 * i + 2]!, lines[4 * i + 3]!]);
  const [p, q, r] = [points[0]!, points[points.length >> 1]!, points[points.length - 1]!];
  const centre = centreOf(p, q, r);
  if (!centre) return undefined;
  const radius = away(centre, p);
  if (radius < radii[0] || radius > radii[1]) return undefined;
  if (points.some((point) => Math.abs(away(centre, point) - radius) > ROUNDNESS * radius)) return undefined;
  const [a, b] = [
    Math.atan2(p[1] - centre[1], p[0] - centre[0]),
    Math.atan2(r[1] - centre[1], r[0] - centre[0]),
  ];
  const sweep = Math.abs(Math.atan2(Math.sin(b - a), Math.cos(b - a)));
  if (sweep < sweeps[0] || sweep > sweeps[1]) return undefined;
  const members = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  return { centre, radius, ends: [p, r], lines: members };
}

/** Centre of the circle through three points; undefined on a line. */
function centreOf(a: Point, b: Point, c: Point): Point | undefined {
  const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]];
  const d = 2 * (bx * cy - by * cx);
  if (Math.abs(d) < 1e-9) return undefined;
  const [bb, cc] = [bx * bx + by * by, cx * cx + cy * cy];
  return [a[0] + (cy * bb - by * cc) / d, a[1] + (bx * cc - cx * bb) / d];
}

const away = (p: Point, q: Point): Metres => Math.hypot(p[0] - q[0], p[1] - q[1]);
