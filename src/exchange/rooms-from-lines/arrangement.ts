import Flatbush from "flatbush";
import type { Metres } from "#engine";

/** Straight lines cut at every crossing, with the lines that ended nearby joined: a planar graph. */
export interface Arrangement {
  /** x, y of each vertex. [m] */
  readonly xy: Float64Array;
  /** First and second vertex of each edge; no two edges share both, none crosses another. */
  readonly from: Uint32Array;
  readonly to: Uint32Array;
  /** Index of a line that each edge is a part of; of several that coincide the one with the lowest rank. */
  readonly lineOf: Uint32Array;
}

/** Lines, x1 y1 x2 y2 each, and how near is together. [m] */
export interface LinesToArrange {
  readonly lines: Float64Array;
  /** Of lines that coincide the lowest rank tells what the edge is. */
  readonly rank: (line: number) => number;
  readonly tolerance: Metres;
}

/** Rounds of cutting: rounding moves vertices by half a millimetre and may make new crossings; more than a few are never needed. */
const ROUNDS = 6;
/** Vertices lie on this grid. [m] */
const GRID: Metres = 1e-3;

/**
 * Cuts lines at their crossings and joins what ends within the tolerance (snap rounding).
 *
 * @param input - Lines in metres, ranks, tolerance.
 * @returns The graph; lines shorter than the tolerance are gone.
 * @source DERIVED-HERE
 */
export function arrange(input: LinesToArrange): Arrangement {
  let pieces = joinedEnds(input);
  for (let round = 0; round < ROUNDS; round++) {
    const cut = cutAtCrossings(pieces, round === 0 ? input.tolerance : GRID);
    const settled = cut.count === pieces.count;
    pieces = withoutDoubles(onGrid(cut), input.rank);
    if (settled) break;
  }
  return graphOf(pieces);
}

/** Pieces of lines: four numbers each, and the line they come from. */
interface Pieces {
  readonly count: number;
  readonly ends: Float64Array;
  readonly lineOf: Uint32Array;
}

/** Ends within the tolerance of one another become one point: the first of them. */
function joinedEnds({ lines, tolerance }: LinesToArrange): Pieces {
  const cells = new Map<number, number[]>();
  const places: number[] = [];
  const place = (x: number, y: number): number => {
    const [cx, cy] = [Math.floor(x / tolerance), Math.floor(y / tolerance)];
    let best = -1;
    let nearest = tolerance * tolerance;
    for (let i = cx - 1; i <= cx + 1; i++)
      for (let j = cy - 1; j <= cy + 1; j++) {
        const cell = cells.get(keyOf(i, j));
        if (cell === undefined) continue;
        for (const index of cell) {
          const d = (places[2 * index]! - x) ** 2 + (places[2 * index + 1]! - y) ** 2;
          if (d < nearest) [best, nearest] = [index, d];
        }
      }
    if (best >= 0) return best;
    const index = places.length / 2;
    places.push(Math.round(x / GRID) * GRID, Math.round(y / GRID) * GRID);
    const key = keyOf(cx, cy);
    const list = cells.get(key);
    if (list) list.push(index);
    else cells.set(key, [index]);
    return index;
  };
  const ends: number[] = [];
  const lineOf: number[] = [];
  for (let line = 0; line < lines.length / 4; line++) {
    const a = place(lines[4 * line]!, lines[4 * line + 1]!);
    const b = place(lines[4 * line + 2]!, lines[4 * line + 3]!);
    if (a === b) continue;
    ends.push(places[2 * a]!, places[2 * a + 1]!, places[2 * b]!, places[2 * b + 1]!);
    lineOf.push(line);
  }
  return { count: lineOf.length, ends: Float64Array.from(ends), lineOf: Uint32Array.from(lineOf) };
}

/** One number for two whole numbers of up to 33 million: cells and grid points of plans up to 33 km across. */
const keyOf = (i: number, j: number): number => (i + 2 ** 25) * 2 ** 26 + (j + 2 ** 25);

/** Each piece cut where another one crosses it, or ends on it within the reach. */
function cutAtCrossings({ count, ends, lineOf }: Pieces, reach: Metres): Pieces {
  if (count === 0) return { count, ends, lineOf };
  const index = new Flatbush(count);
  for (let i = 0; i < count; i++) {
    const [a, b, c, d] = [ends[4 * i]!, ends[4 * i + 1]!, ends[4 * i + 2]!, ends[4 * i + 3]!];
    index.add(Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d));
  }
  index.finish();
  const cutEnds: number[] = [];
  const cutLines: number[] = [];
  const shares: number[] = [];
  for (let i = 0; i < count; i++) {
    const o = 4 * i;
    const x1 = ends[o]!;
    const y1 = ends[o + 1]!;
    const x2 = ends[o + 2]!;
    const y2 = ends[o + 3]!;
    const dx = x2 - x1;
    const dy = y2 - y1;
    const length = Math.sqrt(dx * dx + dy * dy);
    const margin = reach / length;
    shares.length = 0;
    const near = index.search(
      Math.min(x1, x2) - reach,
      Math.min(y1, y2) - reach,
      Math.max(x1, x2) + reach,
      Math.max(y1, y2) + reach,
    );
    for (const j of near) {
      if (j === i) continue;
      const a = ends[4 * j]!;
      const b = ends[4 * j + 1]!;
      const c = ends[4 * j + 2]!;
      const d = ends[4 * j + 3]!;
      // Ends of the other on this one.
      for (let end = 0; end < 2; end++) {
        const x = end === 0 ? a : c;
        const y = end === 0 ? b : d;
        const t = ((x - x1) * dx + (y - y1) * dy) / (length * length);
        if (t <= margin || t >= 1 - margin) continue;
        const off = Math.abs((x - x1) * dy - (y - y1) * dx) / length;
        if (off <= reach) shares.push(t, x, y);
      }
      const ex = c - a;
      const ey = d - b;
      const turn = dx * ey - dy * ex;
      if (Math.abs(turn) < 1e-9 * length * Math.sqrt(ex * ex + ey * ey)) continue;
      const t = ((a - x1) * ey - (b - y1) * ex) / turn;
      const s = ((a - x1) * dy - (b - y1) * dx) / turn;
      if (t <= margin || t >= 1 - margin || s < 0 || s > 1) continue;
      shares.push(t, x1 + t * dx, y1 + t * dy);
    }
    push(i, [x1, y1, x2, y2]);
  }
  return { count: cutLines.length, ends: Float64Array.from(cutEnds), lineOf: Uint32Array.from(cutLines) };

  function push(i: number, [x1, y1, x2, y2]: readonly [number, number, number, number]): void {
    if (shares.length === 0) {
      cutEnds.push(x1, y1, x2, y2);
      cutLines.push(lineOf[i]!);
      return;
    }
    const order: number[] = [];
    for (let k = 0; k < shares.length; k += 3) order.push(k);
    order.sort((p, q) => shares[p]! - shares[q]!);
    let [x, y] = [x1, y1];
    for (const k of order) {
      const [nx, ny] = [shares[k + 1]!, shares[k + 2]!];
      if (Math.abs(nx - x) < GRID / 2 && Math.abs(ny - y) < GRID / 2) continue;
      cutEnds.push(x, y, nx, ny);
      cutLines.push(lineOf[i]!);
      [x, y] = [nx, ny];
    }
    cutEnds.push(x, y, x2, y2);
    cutLines.push(lineOf[i]!);
  }
}

const onGrid = ({ count, ends, lineOf }: Pieces): Pieces => ({
  count,
  ends: ends.map((value) => Math.round(value / GRID) * GRID),
  lineOf,
});

/** Every piece once, whichever way it runs; pieces without length are dropped. */
function withoutDoubles(pieces: Pieces, rank: (line: number) => number): Pieces {
  const { count, ends, lineOf } = pieces;
  const corners = cornersOf(pieces);
  const known = new Map<number, number>();
  const kept: number[] = [];
  const lines: number[] = [];
  for (let i = 0; i < count; i++) {
    const [a, b] = [corners.of[2 * i]!, corners.of[2 * i + 1]!];
    if (a === b) continue;
    const key = a < b ? a * corners.count + b : b * corners.count + a;
    const at = known.get(key);
    if (at === undefined) {
      known.set(key, lines.length);
      kept.push(i);
      lines.push(lineOf[i]!);
    } else if (rank(lineOf[i]!) < rank(lines[at]!)) lines[at] = lineOf[i]!;
  }
  const left = new Float64Array(4 * kept.length);
  kept.forEach((i, k) => {
    for (let n = 0; n < 4; n++) left[4 * k + n] = ends[4 * i + n]!;
  });
  return { count: kept.length, ends: left, lineOf: Uint32Array.from(lines) };
}

/** Number of each end among the different points, in the order in which they come. */
function cornersOf({ count, ends }: Pieces): { readonly of: Uint32Array; readonly count: number } {
  const known = new Map<number, number>();
  const of = new Uint32Array(2 * count);
  for (let end = 0; end < 2 * count; end++) {
    const key = keyOf(Math.round(ends[2 * end]! / GRID), Math.round(ends[2 * end + 1]! / GRID));
    let index = known.get(key);
    if (index === undefined) {
      index = known.size;
      known.set(key, index);
    }
    of[end] = index;
  }
  return { of, count: known.size };
}

function graphOf(pieces: Pieces): Arrangement {
  const { count, ends, lineOf } = pieces;
  const corners = cornersOf(pieces);
  const xy = new Float64Array(2 * corners.count);
  const from = new Uint32Array(count);
  const to = new Uint32Array(count);
  for (let i = 0; i < count; i++) {
    from[i] = corners.of[2 * i]!;
    to[i] = corners.of[2 * i + 1]!;
    xy[2 * from[i]!] = ends[4 * i]!;
    xy[2 * from[i]! + 1] = ends[4 * i + 1]!;
    xy[2 * to[i]!] = ends[4 * i + 2]!;
    xy[2 * to[i]! + 1] = ends[4 * i + 3]!;
  }
  return { xy, from, to, lineOf };
}
