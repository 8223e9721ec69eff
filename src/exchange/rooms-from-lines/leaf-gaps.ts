import { distanceBetween, type Metres, type Point } from "#engine";
import { boxSearch, type LineSearch } from "./box-index.ts";
import type { DoorLeaf, Surroundings } from "./door-arcs.ts";
import type { WallGap } from "./wall-ends.ts";

/** Lines near places, for telling leaves from thresholds. */
export function surroundings(lines: Float64Array, search: LineSearch): Surroundings {
  const near = (p: Point, reach: Metres): readonly number[] =>
    search([p[0] - reach, p[1] - reach, p[0] + reach, p[1] + reach]);
  return {
    nearest: (at) => near(at, 0.5).reduce((best, i) => Math.min(best, distanceToLine(lines, i, at)), 0.5),
    along: (a, b, within) => {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
      const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      let longest = 0;
      for (const i of near(middle, length / 2 + within)) {
        const spans: number[] = [];
        let far = 0;
        for (const k of [0, 2]) {
          const [dx, dy] = [lines[4 * i + k]! - a[0], lines[4 * i + k + 1]! - a[1]];
          spans.push(dx * ux + dy * uy);
          far = Math.max(far, Math.abs(dx * uy - dy * ux));
        }
        if (far > within) continue;
        longest = Math.max(longest, Math.min(length, Math.max(...spans)) - Math.max(0, Math.min(...spans)));
      }
      return longest;
    },
  };
}

const distanceToLine = (lines: Float64Array, i: number, [x, y]: Point): Metres => {
  const [a, b, c, d] = [lines[4 * i]!, lines[4 * i + 1]!, lines[4 * i + 2]!, lines[4 * i + 3]!];
  const [dx, dy] = [c - a, d - b];
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.max(0, Math.min(1, ((x - a) * dx + (y - b) * dy) / size));
  return Math.hypot(x - a - t * dx, y - b - t * dy);
};

/** Lines that draw an open leaf, or a hatch, are taken out: they part nothing. */
export function withoutLeaves(
  lines: Float64Array,
  of: {
    readonly leaves: readonly DoorLeaf[];
    /** Finds lines in boxes. */
    readonly search: LineSearch;
    readonly hatched: (line: number) => boolean;
  },
): { readonly lines: Float64Array; readonly kept: readonly number[] } {
  const { leaves, search, hatched } = of;
  const count = lines.length / 4;
  const gone = new Uint8Array(count);
  if (leaves.length > 0 && count > 0) {
    for (const { hinge, open } of leaves) {
      const length = Math.hypot(open[0] - hinge[0], open[1] - hinge[1]);
      const [ux, uy] = [(open[0] - hinge[0]) / length, (open[1] - hinge[1]) / length];
      const box = [
        Math.min(hinge[0], open[0]) - 0.1,
        Math.min(hinge[1], open[1]) - 0.1,
        Math.max(hinge[0], open[0]) + 0.1,
        Math.max(hinge[1], open[1]) + 0.1,
      ] as const;
      for (const i of search(box)) {
        // All of the line lies in the strip that the leaf takes, a hand clear of the hinge's wall at most.
        const inside = [0, 2].every((k) => {
          const [dx, dy] = [lines[4 * i + k]! - hinge[0], lines[4 * i + k + 1]! - hinge[1]];
          const s = dx * ux + dy * uy;
          return s > -0.02 && s < length + 0.04 && Math.abs(dx * uy - dy * ux) < 0.08;
        });
        const reach = [0, 2].map(
          (k) => (lines[4 * i + k]! - hinge[0]) * ux + (lines[4 * i + k + 1]! - hinge[1]) * uy,
        );
        const [near, away] = [Math.min(...reach), Math.max(...reach)];
        // The leaf runs all along, its edges across; what is half as long is the side of a column beside it.
        const ofLeaf = away - near < 0.1 || away - near > 0.7 * length;
        if (inside && away > 0.15 && ofLeaf) gone[i] = 1;
      }
    }
  }
  const kept: number[] = [];
  for (let i = 0; i < count; i++) if (gone[i] === 0 && !hatched(i)) kept.push(i);
  const left = new Float64Array(4 * kept.length);
  kept.forEach((i, k) => {
    left.set(lines.subarray(4 * i, 4 * i + 4), 4 * k);
  });
  return { lines: left, kept };
}

/** Lines that shut the doors whose gap no wall ends gave away: from hinge to latch, and a little on, so that both meet the wall. */
export function leafLines(
  leaves: readonly DoorLeaf[],
  gaps: readonly WallGap[],
): readonly (readonly [Point, Point])[] {
  const gapOf = gapFinder(gaps);
  return leaves.flatMap((leaf): (readonly [Point, Point])[] => {
    const { hinge, latch } = leaf;
    const known = gapOf(leaf) !== undefined;
    if (known) return [];
    const length = Math.hypot(latch[0] - hinge[0], latch[1] - hinge[1]);
    const [ux, uy] = [(latch[0] - hinge[0]) / length, (latch[1] - hinge[1]) / length];
    const more = 0.12;
    return [
      [
        [hinge[0] - more * ux, hinge[1] - more * uy],
        [latch[0] + more * ux, latch[1] + more * uy],
      ],
    ];
  });
}

/** What is wider than a door for one is no door unless leaves hang in it: two columns across a corridor face each other, too. [m] */
const SINGLE_DOOR: Metres = 1.35;

/**
 * Gaps that a door may hang in: empty, and no wider than a door for one unless leaves hang in them.
 *
 * @param gaps - Gaps between wall ends. @param of.leaves - Leaves of doors. @param of.lines - Lines without leaves. [m] @param of.search - Finds them in boxes.
 * @param of.slid - Whether a sliding leaf lies in a gap.
 */
export function likelyGaps(
  gaps: readonly WallGap[],
  of: {
    readonly leaves: readonly DoorLeaf[];
    readonly lines: Float64Array;
    readonly search: LineSearch;
    readonly slid: (gap: WallGap) => boolean;
  },
): readonly WallGap[] {
  const { leaves, lines, search, slid } = of;
  const near = boxSearch(leaves.map(({ hinge: [x, y] }) => [x, y, x, y]));
  const hung = ([x, y]: Point): boolean => near([x - 0.35, y - 0.35, x + 0.35, y + 0.35]).length > 0;
  // Beside a leaf a window of the door's height may fill the rest of a gap.
  const gapOf = gapFinder(gaps);
  const filled = new Set(leaves.map(gapOf));
  const barred = barredBy(lines, search);
  return gaps.filter(
    (gap) =>
      slid(gap) ||
      ((gap.width <= SINGLE_DOOR || filled.has(gap) || gap.shut.flat().some(hung)) && !barred(gap)),
  );
}

/** Whether something stands in a gap: lines of its own, or a line right across, from beyond one face of the wall to beyond the other. */
function barredBy(lines: Float64Array, search: LineSearch): (gap: WallGap) => boolean {
  return ({ shut, thickness, middle: [x, y], width }) => {
    const [[from, to]] = shut as readonly [readonly [Point, Point]];
    const length = distanceBetween(from, to);
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    const clear = thickness / 2 + CLEAR;
    // Near both ends stand frames and leaves.
    const half = 0.3 * width;
    const [bx, by] = [half * Math.abs(ux), half * Math.abs(uy)];
    const reach = half + clear;
    let things = 0;
    return search([x - bx - clear, y - by - clear, x + bx + clear, y + by + clear]).some((i) => {
      const [px, py] = [lines[4 * i]! - x, lines[4 * i + 1]! - y];
      const [qx, qy] = [lines[4 * i + 2]! - x, lines[4 * i + 3]! - y];
      const [p, q] = [py * ux - px * uy, qy * ux - qx * uy];
      const [s, t] = [px * ux + py * uy, qx * ux + qy * uy];
      const size = Math.hypot(qx - px, qy - py);
      // Lines along the gap within it are thresholds and sliding leaves; lines in other directions are a thing that stands there.
      const within = Math.max(Math.abs(p), Math.abs(q)) < clear && Math.max(Math.abs(s), Math.abs(t)) < reach;
      if (within && Math.abs(t - s) < 0.98 * size && ++things >= THING) return true;
      if (p * q >= 0 || Math.abs(p) < clear || Math.abs(q) < clear || size > FURNITURE) return false;
      return Math.abs(s + (p / (p - q)) * (t - s)) < half;
    });
  };
}

/** Fewest lines within a gap, not along it, that make a thing. */
const THING = 4;
/** Longer lines through a gap are walls, paths and axes; they part nothing that is not parted already. [m] */
const FURNITURE: Metres = 1.6;
/** A threshold or frame stays within the wall by this much. [m] */
const CLEAR: Metres = 0.05;

/** The gap of a wall that a leaf hangs in. */
export function gapFinder(gaps: readonly WallGap[]): (leaf: DoorLeaf) => WallGap | undefined {
  const reach = (gap: WallGap): Metres => gap.thickness / 2 + Math.max(0.25, gap.width / 2);
  const near = boxSearch(
    gaps.map((gap) => {
      const [x, y] = gap.middle;
      const r = reach(gap);
      return [x - r, y - r, x + r, y + r];
    }),
  );
  return ({ hinge, latch }) => {
    const [x, y] = [(hinge[0] + latch[0]) / 2, (hinge[1] + latch[1]) / 2];
    const [dx, dy] = [latch[0] - hinge[0], latch[1] - hinge[1]];
    const length = Math.hypot(dx, dy);
    // The leaf shuts the gap only if it lies along it: round a corner another gap may be as near.
    const index = near([x, y, x, y]).find((i) => {
      const { middle, shut, width } = gaps[i]!;
      const [a, b] = shut[0]!;
      const along = Math.abs((b[0] - a[0]) * dx + (b[1] - a[1]) * dy) / (distanceBetween(a, b) * length);
      return distanceBetween(middle, [x, y]) < reach(gaps[i]!) && along > 0.9 && length < width + 0.2;
    });
    return index === undefined ? undefined : gaps[index];
  };
}
