import { distanceBetween, type Metres, type Point } from "#engine";
import { boxOf } from "../region.ts";
import { boxSearch, type LineSearch } from "./box-index.ts";
import type { WallGap } from "./wall-ends.ts";

/** Leaves that slide: their width, and how thick they are drawn. [m] @source COMMON-PRACTICE */
const widths: readonly [Metres, Metres] = [0.45, 1.6];
const thicknesses: readonly [Metres, Metres] = [0.015, 0.07];
/** Ends of the two faces of a leaf lie this close to one another, along the leaf. [m] */
const EVEN: Metres = 0.01;
/** Thinnest and thickest wall that a leaf slides into. [m] @source COMMON-PRACTICE */
const pockets: readonly [Metres, Metres] = [0.06, 0.4];

/** What a plan shows of doors that slide. */
export interface SlidingLeaves {
  /** 1: a line of a leaf that reaches into a wall, or of the slot that it goes through: it hides where the wall ends. */
  readonly pocketed: Uint8Array;
  /** Ends of walls without their slots: x1 y1 x2 y2 of each, and the line whose place it takes. [m] */
  readonly ends: readonly { readonly line: number; readonly end: readonly [Point, Point] }[];
  /** Whether a leaf lies in a gap, or beside it in the wall. */
  readonly shuts: (gap: WallGap) => boolean;
}

interface ThinLeaf {
  /** Middles of the two ends. */
  readonly from: Point;
  readonly to: Point;
  /** Both faces, and the lines that close them at the ends. */
  readonly lines: readonly number[];
}

/**
 * Leaves of sliding doors: thin rectangles along a wall, in its gap or half in the pocket that takes them.
 *
 * @param lines - x1 y1 x2 y2 of each. [m] @param search - Finds them in boxes.
 * @source DERIVED-HERE
 */
export function slidingLeaves(lines: Float64Array, search: LineSearch): SlidingLeaves {
  const pocketed = new Uint8Array(lines.length / 4);
  const leaves = thinLeaves(lines, search);
  const ends: { line: number; end: readonly [Point, Point] }[] = [];
  for (const leaf of leaves) {
    const through = wallEndsAt(leaf);
    if (through.length === 0) continue;
    for (const i of leaf.lines) pocketed[i] = 1;
    for (const { stubs, end } of through) {
      for (const i of stubs) pocketed[i] = 1;
      if (stubs.length > 0) ends.push({ line: stubs[0]!, end });
    }
  }
  const near = boxSearch(leaves.map(({ from, to }) => boxOf([from, to])));
  return {
    pocketed,
    ends,
    shuts: ({ shut, thickness, middle: [x, y], width }) => {
      const [[a, b]] = shut as readonly [readonly [Point, Point]];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
      const reach = width / 2 + thickness;
      return near([x - reach, y - reach, x + reach, y + reach]).some((index) => {
        const { from, to } = leaves[index]!;
        const [s, t] = [from, to].map(([px, py]) => (px - x) * ux + (py - y) * uy) as [number, number];
        const off = [from, to].map(([px, py]) => Math.abs((py - y) * ux - (px - x) * uy));
        // Within the wall, and some of it in the gap.
        return Math.max(...off) < thickness / 2 && Math.min(s, t) < width / 2 && Math.max(s, t) > -width / 2;
      });
    },
  };

  /** Ends of walls that a leaf goes through: in one line, or with a slot for it between two stubs. */
  function wallEndsAt({ from, to }: ThinLeaf): readonly {
    readonly stubs: readonly number[];
    readonly end: readonly [Point, Point];
  }[] {
    const length = distanceBetween(from, to);
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    const [x1, y1, x2, y2] = boxOf([from, to]);
    const across = search([x1 - SLOT, y1 - SLOT, x2 + SLOT, y2 + SLOT]).flatMap((line) => {
      const size = lengthOf(lines, line);
      if (size > pockets[1]) return [];
      const ends = [0, 2].map((k): { at: Point; s: Metres; off: Metres } => {
        const at: Point = [lines[4 * line + k]!, lines[4 * line + k + 1]!];
        const [dx, dy] = [at[0] - from[0], at[1] - from[1]];
        return { at, s: dx * ux + dy * uy, off: dy * ux - dx * uy };
      });
      const [low, high] = ends.sort((p, q) => p.off - q.off) as [(typeof ends)[0], (typeof ends)[0]];
      const square = Math.abs(low.s - high.s) < 0.1 * size;
      const inside = low.s > 0.05 * length && low.s < 0.95 * length;
      return square && inside ? [{ line, low, high, size }] : [];
    });
    return across.flatMap(({ line, low, high, size }) => {
      const face = thicknesses[0] / 2;
      if (low.off < -face && high.off > face)
        return size < pockets[0] ? [] : [{ stubs: [], end: [low.at, high.at] as const }];
      if (high.off > 0 || high.off < -SLOT) return [];
      const other = across.find(
        (one) => one.low.off > 0 && one.low.off < SLOT && Math.abs(one.low.s - high.s) < EVEN,
      );
      const thick = other === undefined ? 0 : other.high.off - low.off;
      if (other === undefined || thick < pockets[0] || thick > pockets[1]) return [];
      return [{ stubs: [line, other.line], end: [low.at, other.high.at] as const }];
    });
  }
}

/** A slot for a leaf leaves so much of a wall's end on either side of the leaf's middle. [m] */
const SLOT: Metres = 0.06;

const lengthOf = (lines: Float64Array, i: number): Metres =>
  Math.hypot(lines[4 * i + 2]! - lines[4 * i]!, lines[4 * i + 3]! - lines[4 * i + 1]!);

/** Thin rectangles: two lines of one length side by side, and a short line at both ends. */
function thinLeaves(lines: Float64Array, search: LineSearch): readonly ThinLeaf[] {
  const leaves: ThinLeaf[] = [];
  const end = (i: number, k: 0 | 2): Point => [lines[4 * i + k]!, lines[4 * i + k + 1]!];
  /** The short line between two places. */
  const closing = (a: Point, b: Point): number =>
    search([
      Math.min(a[0], b[0]) - EVEN,
      Math.min(a[1], b[1]) - EVEN,
      Math.max(a[0], b[0]) + EVEN,
      Math.max(a[1], b[1]) + EVEN,
    ]).find((i) => {
      const [p, q] = [end(i, 0), end(i, 2)];
      return (
        (distanceBetween(p, a) < EVEN && distanceBetween(q, b) < EVEN) ||
        (distanceBetween(q, a) < EVEN && distanceBetween(p, b) < EVEN)
      );
    }) ?? -1;
  for (let i = 0; i < lines.length / 4; i++) {
    const length = lengthOf(lines, i);
    if (length < widths[0] || length > widths[1]) continue;
    const [a, b] = [end(i, 0), end(i, 2)];
    const most = thicknesses[1];
    const [x1, y1, x2, y2] = boxOf([a, b]);
    for (const j of search([x1 - most, y1 - most, x2 + most, y2 + most])) {
      if (j <= i || Math.abs(lengthOf(lines, j) - length) > EVEN) continue;
      const straight = distanceBetween(a, end(j, 0)) < distanceBetween(a, end(j, 2));
      const [c, d] = straight ? [end(j, 0), end(j, 2)] : [end(j, 2), end(j, 0)];
      const [thick, other] = [distanceBetween(a, c), distanceBetween(b, d)];
      if (thick < thicknesses[0] || thick > most || Math.abs(thick - other) > EVEN) continue;
      const closed = [closing(a, c), closing(b, d)];
      if (closed.includes(-1)) continue;
      leaves.push({
        from: [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2],
        to: [(b[0] + d[0]) / 2, (b[1] + d[1]) / 2],
        lines: [i, j, ...closed],
      });
    }
  }
  return leaves;
}
