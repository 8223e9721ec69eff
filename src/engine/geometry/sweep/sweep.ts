import { directionKey, indexOf, keyX, keyY, SAME_DIRECTION } from "./direction-key.ts";
import { ENDLESS, type SweepEdges } from "./edges.ts";
import type { SweepLines, Wedges } from "./wedges.ts";

/** Order of two edges along a ray counts as undecided within this: 10 nm. [m] */
const SAME_RADIUS = 1e-8;

/** A seen interval thinner than this at both ends of its wedge is two solids that touch. [m] */
const TOUCHING = 1e-7;

/** Halvings of one wedge at crossings; more cannot come from lines that each cross once. */
const DEEPEST = 200;

/**
 * What an eye sees among edges, as wedges between neighbouring critical directions.
 *
 * 1. Directions of all ends are sorted; ends within a nanoradian are one direction.
 * 2. Between two neighbouring directions the edges that span them are whole lines. They are kept sorted by distance (few change places from
 *    wedge to wedge, so sorting by insertion is near linear).
 * 3. If their order at both rays is the same they do not cross; otherwise the wedge is split at the crossing and each half looked at again.
 * 4. Outwards along the order the open hidings are counted: seen is where none is open, up to the first endless one.
 *
 * @param edges - Edges round an eye, with an endless chain all round (the reach).
 * @returns Wedges counter-clockwise; neighbours with the same bounding lines are one.
 * @source DERIVED-HERE
 * @example A lone chain of reach: one polygon of that reach
 */
export function sweep(edges: SweepEdges): Wedges {
  const lines = linesOf(edges);
  const most = edges.effect.length + 1;
  const seen = { near: new Int32Array(most), far: new Int32Array(most), r: new Float64Array(4 * most) };
  const result: MutableWedges = {
    eye: edges.eye,
    lines,
    keys: [],
    first: [],
    near: [],
    far: [],
    r: [],
    seen,
  };
  if (edges.depth < 0) return finish(result);
  const { keys, start, end } = lines;
  const n = keys.length;
  if (n < 2) return finish(result);
  const bucketHead = new Int32Array(n).fill(-1);
  const bucketNext = new Int32Array(start.length);
  const active: Active = {
    order: [],
    r0: new Float64Array(start.length),
    r1: new Float64Array(start.length),
  };
  for (let i = 0; i < start.length; i++) {
    const s = start[i] as number;
    const e = end[i] as number;
    if (s === e) continue;
    bucketNext[i] = bucketHead[s] as number;
    bucketHead[s] = i;
    if (s > e && e > 0) {
      active.order.push(i);
      active.r1[i] = radius(lines, i, lines.ux[0] as number, lines.uy[0] as number);
    }
  }
  for (let k = 0; k < n; k++) step(k);
  return finish(result);

  function step(k: number): void {
    const next = k + 1 < n ? k + 1 : 0;
    const order = active.order;
    let kept = 0;
    for (let i = 0; i < order.length; i++) {
      const edge = order[i] as number;
      if (end[edge] !== k) order[kept++] = edge;
    }
    order.length = kept;
    for (let i = 0; i < kept; i++) {
      const edge = order[i] as number;
      active.r0[edge] = active.r1[edge] as number;
    }
    for (let edge = bucketHead[k] as number; edge >= 0; edge = bucketNext[edge] as number) {
      order.push(edge);
      active.r0[edge] = lines.startR[edge] as number;
    }
    const ux = lines.ux[next] as number;
    const uy = lines.uy[next] as number;
    for (let i = 0; i < order.length; i++) {
      const edge = order[i] as number;
      active.r1[edge] = end[edge] === next ? (lines.endR[edge] as number) : radius(lines, edge, ux, uy);
    }
    const wedge: Wedge = {
      from: keys[k] as number,
      to: next === 0 ? (keys[0] as number) + 4 : (keys[next] as number),
      order,
      r0: active.r0,
      r1: active.r1,
    };
    resolve(wedge, { result, depth: edges.depth, splits: 0 });
  }
}

interface Active {
  readonly order: number[];
  readonly r0: Float64Array;
  readonly r1: Float64Array;
}

interface Wedge {
  readonly from: number;
  readonly to: number;
  readonly order: number[];
  readonly r0: Float64Array;
  readonly r1: Float64Array;
}

interface MutableWedges {
  eye: SweepEdges["eye"];
  lines: SweepLines;
  keys: number[];
  first: number[];
  near: number[];
  far: number[];
  r: number[];
  /** Seen intervals of the wedge at hand, before it is joined or appended. */
  readonly seen: { readonly near: Int32Array; readonly far: Int32Array; readonly r: Float64Array };
}

interface Task {
  readonly result: MutableWedges;
  readonly depth: number;
  readonly splits: number;
}

/** Sorts a wedge, splits it where lines cross, and writes down what is seen in it. */
function resolve(wedge: Wedge, task: Task): void {
  const { order, r0, r1 } = wedge;
  sortByMiddle(order, r0, r1);
  const crossing = task.splits < DEEPEST ? crossingIn(wedge, task.result.lines) : undefined;
  if (!crossing) {
    emit(wedge, task);
    return;
  }
  const { key, a, b } = crossing;
  const { lines } = task.result;
  const [ux, uy] = [keyX(key), keyY(key)];
  const middle = new Float64Array(r0.length);
  for (let i = 0; i < order.length; i++) {
    const edge = order[i] as number;
    middle[edge] = radius(lines, edge, ux, uy);
  }
  middle[b] = middle[a] as number;
  const right = order.slice();
  const splits = task.splits + 1;
  resolve({ from: wedge.from, to: key, order: order.slice(), r0, r1: middle }, { ...task, splits });
  resolve({ from: key, to: wedge.to, order: right, r0: middle, r1 }, { ...task, splits });
}

function sortByMiddle(order: number[], r0: Float64Array, r1: Float64Array): void {
  for (let i = 1; i < order.length; i++) {
    const edge = order[i] as number;
    const sum = (r0[edge] as number) + (r1[edge] as number);
    let j = i - 1;
    while (j >= 0) {
      const other = order[j] as number;
      if ((r0[other] as number) + (r1[other] as number) <= sum) break;
      order[j + 1] = other;
      j--;
    }
    order[j + 1] = edge;
  }
}

interface Crossing {
  readonly key: number;
  readonly a: number;
  readonly b: number;
}

/** First pair of edges, up to the nearest endless one, whose order at a ray differs from that in the middle. */
function crossingIn(wedge: Wedge, lines: SweepLines): Crossing | undefined {
  const { order, r0, r1 } = wedge;
  for (let i = 0; i + 1 < order.length; i++) {
    const a = order[i] as number;
    const endless = lines.effect[a] === ENDLESS;
    const [a0, a1] = [(r0[a] as number) - SAME_RADIUS, (r1[a] as number) - SAME_RADIUS];
    // Neighbours in order prove the whole order; behind the first endless edge only what may come before it matters.
    const until = endless ? order.length : i + 2;
    for (let j = i + 1; j < until; j++) {
      const b = order[j] as number;
      if ((r0[b] as number) >= a0 && (r1[b] as number) >= a1) continue;
      const key = crossingKey(lines, a, b);
      if (key === undefined) continue;
      const at = key < wedge.from ? key + 4 : key;
      if (at > wedge.from + SAME_DIRECTION && at < wedge.to - SAME_DIRECTION) return { key: at, a, b };
    }
    if (endless) return undefined;
  }
  return undefined;
}

function crossingKey(lines: SweepLines, a: number, b: number): number | undefined {
  const { dx, dy, c } = lines;
  const [ax, ay, ac] = [dx[a] as number, dy[a] as number, c[a] as number];
  const [bx, by, bc] = [dx[b] as number, dy[b] as number, c[b] as number];
  const det = ax * by - ay * bx;
  if (det === 0) return undefined;
  return directionKey((ax * bc - bx * ac) / det, (ay * bc - by * ac) / det);
}

/** Writes the seen intervals of a wedge whose edges do not cross; joins it to the one before where both are bounded by the same lines. */
function emit(wedge: Wedge, task: Task): void {
  const { result } = task;
  const { effect } = result.lines;
  const { seen } = result;
  const { order, r0, r1 } = wedge;
  let count = 0;
  let depth = task.depth;
  let near = -1;
  let near0 = 0;
  let near1 = 0;
  for (let i = 0; i < order.length; i++) {
    const edge = order[i] as number;
    const what = effect[edge] as number;
    if (what < 0) {
      depth--;
      if (depth === 0) {
        near = edge;
        near0 = r0[edge] as number;
        near1 = r1[edge] as number;
      }
      continue;
    }
    if (depth === 0) {
      const far0 = r0[edge] as number;
      const far1 = r1[edge] as number;
      if (far0 - near0 > TOUCHING || far1 - near1 > TOUCHING) {
        seen.near[count] = near;
        seen.far[count] = edge;
        seen.r[4 * count] = near0;
        seen.r[4 * count + 1] = far0;
        seen.r[4 * count + 2] = near1;
        seen.r[4 * count + 3] = far1;
        count++;
      }
    }
    if (what === ENDLESS) break;
    depth++;
  }
  if (!joined(result, count)) append(result, { from: wedge.from, count });
}

/** Whether the wedge just seen is bounded by the lines of the one before and goes on where it ends; if so that one is made longer. */
function joined(result: MutableWedges, count: number): boolean {
  const { near, far, r, first, seen } = result;
  const previous = first.length > 0 ? (first[first.length - 1] as number) : -1;
  if (previous < 0 || near.length - previous !== count) return false;
  for (let i = 0; i < count; i++) {
    const old = previous + i;
    if (near[old] !== seen.near[i] || far[old] !== seen.far[i]) return false;
    if (Math.abs((r[4 * old + 2] as number) - (seen.r[4 * i] as number)) >= SAME_RADIUS) return false;
    if (Math.abs((r[4 * old + 3] as number) - (seen.r[4 * i + 1] as number)) >= SAME_RADIUS) return false;
  }
  for (let i = 0; i < count; i++) {
    r[4 * (previous + i) + 2] = seen.r[4 * i + 2] as number;
    r[4 * (previous + i) + 3] = seen.r[4 * i + 3] as number;
  }
  return true;
}

function append(result: MutableWedges, wedge: { readonly from: number; readonly count: number }): void {
  const { near, far, r, first, keys, seen } = result;
  keys.push(wedge.from);
  first.push(near.length);
  for (let i = 0; i < wedge.count; i++) {
    near.push(seen.near[i] as number);
    far.push(seen.far[i] as number);
    for (let k = 4 * i; k < 4 * i + 4; k++) r.push(seen.r[k] as number);
  }
}

function finish(result: MutableWedges): Wedges {
  const { eye, lines, keys, first, near, far, r } = result;
  first.push(near.length);
  return { eye, lines, keys: Float64Array.from(keys), first: Int32Array.from(first), near, far, r };
}

/** Distance along a ray at which it meets an edge's line, kept between the nearest and farthest that the edge can be. */
function radius(lines: SweepLines, edge: number, ux: number, uy: number): number {
  const below = ux * (lines.dy[edge] as number) - uy * (lines.dx[edge] as number);
  const most = Math.max(lines.startR[edge] as number, lines.endR[edge] as number);
  if (below <= 0) return most;
  return Math.min((lines.c[edge] as number) / below, most);
}

function linesOf(edges: SweepEdges): SweepLines {
  const count = edges.effect.length;
  const all = new Float64Array(2 * count);
  all.set(edges.startKey, 0);
  all.set(edges.endKey, count);
  all.sort();
  let kept = 0;
  for (let i = 0; i < all.length; i++) {
    const key = all[i] as number;
    if (kept === 0 || key - (all[kept - 1] as number) > SAME_DIRECTION) all[kept++] = key;
  }
  const keys = all.slice(0, kept);
  const ux = new Float64Array(kept);
  const uy = new Float64Array(kept);
  for (let i = 0; i < kept; i++) {
    ux[i] = keyX(keys[i] as number);
    uy[i] = keyY(keys[i] as number);
  }
  const lines = {
    keys,
    ux,
    uy,
    start: new Int32Array(count),
    end: new Int32Array(count),
    startR: new Float64Array(count),
    endR: new Float64Array(count),
    dx: new Float64Array(count),
    dy: new Float64Array(count),
    c: new Float64Array(count),
    effect: Int8Array.from(edges.effect),
  };
  for (let i = 0; i < count; i++) {
    const [sx, sy, ex, ey] = [edges.startX[i], edges.startY[i], edges.endX[i], edges.endY[i]] as [
      number,
      number,
      number,
      number,
    ];
    lines.start[i] = indexOf(keys, edges.startKey[i] as number);
    lines.end[i] = indexOf(keys, edges.endKey[i] as number);
    lines.startR[i] = Math.sqrt(sx * sx + sy * sy);
    lines.endR[i] = Math.sqrt(ex * ex + ey * ey);
    lines.dx[i] = ex - sx;
    lines.dy[i] = ey - sy;
    lines.c[i] = sx * (ey - sy) - sy * (ex - sx);
  }
  return lines;
}
