import Flatbush from "flatbush";
import type { Metres } from "#engine";
import { pairNumbers } from "./pair-numbers.ts";

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
  /** 1: cut in the round before, so that its ends were rounded; two others cannot have come to cross. */
  readonly fresh: Uint8Array;
}

/** Ends within the tolerance of one another become one point: the first of them. */
function joinedEnds({ lines, tolerance }: LinesToArrange): Pieces {
  const most = lines.length / 2;
  const cells = pairNumbers(most);
  /** Last place in each cell, and the one before each place in its cell; −1: none. */
  const last = new Int32Array(most).fill(-1);
  const before = new Int32Array(most).fill(-1);
  const places = new Float64Array(2 * most);
  let count = 0;
  const place = (x: number, y: number): number => {
    const cx = Math.floor(x / tolerance);
    const cy = Math.floor(y / tolerance);
    let best = -1;
    let nearest = tolerance * tolerance;
    for (let i = cx - 1; i <= cx + 1; i++)
      for (let j = cy - 1; j <= cy + 1; j++) {
        const cell = cells.find(i, j);
        if (cell < 0) continue;
        for (let index = last[cell]!; index >= 0; index = before[index]!) {
          const d = (places[2 * index]! - x) ** 2 + (places[2 * index + 1]! - y) ** 2;
          if (d > nearest || (d === nearest && (best < 0 || index > best))) continue;
          best = index;
          nearest = d;
        }
      }
    if (best >= 0) return best;
    places[2 * count] = Math.round(x / GRID) * GRID;
    places[2 * count + 1] = Math.round(y / GRID) * GRID;
    const cell = cells.of(cx, cy);
    before[count] = last[cell]!;
    last[cell] = count;
    return count++;
  };
  const joined = grownPieces(lines.length / 4);
  for (let line = 0; line < lines.length / 4; line++) {
    const a = place(lines[4 * line]!, lines[4 * line + 1]!);
    const b = place(lines[4 * line + 2]!, lines[4 * line + 3]!);
    if (a === b) continue;
    joined.add(places[2 * a]!, places[2 * a + 1]!, places[2 * b]!, places[2 * b + 1]!, line, 1);
  }
  return joined.pieces();
}

/** Each piece cut where another one crosses it, or ends on it within the reach. */
function cutAtCrossings(pieces: Pieces, reach: Metres): Pieces {
  const { count, ends, lineOf, fresh } = pieces;
  if (count === 0) return pieces;
  const everyone = indexOf(pieces, () => true);
  const newcomers = fresh.every((flag) => flag === 1) ? everyone : indexOf(pieces, (i) => fresh[i] === 1);
  const cut = grownPieces(count + (count >> 2));
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
    const near = (fresh[i] === 1 ? everyone : newcomers)(
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
    push(i, x1, y1, x2, y2);
  }
  return cut.pieces();

  function push(i: number, x1: number, y1: number, x2: number, y2: number): void {
    if (shares.length === 0) {
      cut.add(x1, y1, x2, y2, lineOf[i]!, 0);
      return;
    }
    const order: number[] = [];
    for (let k = 0; k < shares.length; k += 3) order.push(k);
    order.sort((p, q) => shares[p]! - shares[q]!);
    let x = x1;
    let y = y1;
    for (const k of order) {
      const nx = shares[k + 1]!;
      const ny = shares[k + 2]!;
      if (Math.abs(nx - x) < GRID / 2 && Math.abs(ny - y) < GRID / 2) continue;
      cut.add(x, y, nx, ny, lineOf[i]!, 1);
      x = nx;
      y = ny;
    }
    cut.add(x, y, x2, y2, lineOf[i]!, 1);
  }
}

/** Pieces that grow by the hundred thousand: in typed arrays, since lists of numbers are copied again and again. */
function grownPieces(expected: number): {
  readonly add: (x1: number, y1: number, x2: number, y2: number, line: number, fresh: 0 | 1) => void;
  readonly pieces: () => Pieces;
} {
  let room = Math.max(16, expected);
  let count = 0;
  let ends = new Float64Array(4 * room);
  let lineOf = new Uint32Array(room);
  let fresh = new Uint8Array(room);
  const grow = (): void => {
    room *= 2;
    const [moreEnds, moreLines, moreFresh] = [
      new Float64Array(4 * room),
      new Uint32Array(room),
      new Uint8Array(room),
    ];
    moreEnds.set(ends);
    moreLines.set(lineOf);
    moreFresh.set(fresh);
    [ends, lineOf, fresh] = [moreEnds, moreLines, moreFresh];
  };
  return {
    add: (x1, y1, x2, y2, line, isFresh) => {
      if (count === room) grow();
      const o = 4 * count;
      ends[o] = x1;
      ends[o + 1] = y1;
      ends[o + 2] = x2;
      ends[o + 3] = y2;
      lineOf[count] = line;
      fresh[count++] = isFresh;
    },
    pieces: () => ({
      count,
      ends: ends.subarray(0, 4 * count),
      lineOf: lineOf.subarray(0, count),
      fresh: fresh.subarray(0, count),
    }),
  };
}

/** Pieces in boxes, by their numbers. */
function indexOf(
  { count, ends }: Pieces,
  chosen: (piece: number) => boolean,
): (x1: number, y1: number, x2: number, y2: number) => readonly number[] {
  const members: number[] = [];
  for (let i = 0; i < count; i++) if (chosen(i)) members.push(i);
  if (members.length === 0) return () => [];
  const index = new Flatbush(members.length);
  for (const i of members) {
    const a = ends[4 * i]!;
    const b = ends[4 * i + 1]!;
    const c = ends[4 * i + 2]!;
    const d = ends[4 * i + 3]!;
    index.add(Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d));
  }
  index.finish();
  if (members.length === count) return (x1, y1, x2, y2) => index.search(x1, y1, x2, y2);
  return (x1, y1, x2, y2) => index.search(x1, y1, x2, y2).map((k) => members[k]!);
}

const onGrid = ({ count, ends, lineOf, fresh }: Pieces): Pieces => ({
  count,
  fresh,
  ends: ends.map((value) => Math.round(value / GRID) * GRID),
  lineOf,
});

/** Every piece once, whichever way it runs; pieces without length are dropped. */
function withoutDoubles(pieces: Pieces, rank: (line: number) => number): Pieces {
  const { count, ends, lineOf, fresh } = pieces;
  const corners = cornersOf(pieces);
  const known = pairNumbers(count);
  const kept = new Uint32Array(count);
  const lines = new Uint32Array(count);
  for (let i = 0; i < count; i++) {
    const [a, b] = [corners.of[2 * i]!, corners.of[2 * i + 1]!];
    if (a === b) continue;
    const before = known.count;
    const at = a < b ? known.of(a, b) : known.of(b, a);
    if (at === before) {
      kept[at] = i;
      lines[at] = lineOf[i]!;
    } else if (rank(lineOf[i]!) < rank(lines[at]!)) lines[at] = lineOf[i]!;
  }
  const left = new Float64Array(4 * known.count);
  for (let k = 0; k < known.count; k++) for (let n = 0; n < 4; n++) left[4 * k + n] = ends[4 * kept[k]! + n]!;
  return {
    count: known.count,
    ends: left,
    lineOf: lines.slice(0, known.count),
    fresh: Uint8Array.from({ length: known.count }, (_, k) => fresh[kept[k]!]!),
  };
}

/** Number of each end among the different points, in the order in which they come. */
function cornersOf({ count, ends }: Pieces): { readonly of: Uint32Array; readonly count: number } {
  const known = pairNumbers(2 * count);
  const of = new Uint32Array(2 * count);
  for (let end = 0; end < 2 * count; end++)
    of[end] = known.of(Math.round(ends[2 * end]! / GRID), Math.round(ends[2 * end + 1]! / GRID));
  return { of, count: known.count };
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
