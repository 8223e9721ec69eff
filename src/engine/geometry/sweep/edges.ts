import type { Metres } from "../../quantity/index.ts";
import type { Outline, Point } from "../shapes.ts";
import { directionKey, keyDifference } from "./direction-key.ts";

/**
 * Edges round an eye, as lists that grow. Along a ray from the eye outwards an edge opens something hidden (+1), closes it (-1),
 * or hides everything from there on (ENDLESS). What lies under no open hiding is seen.
 */
export interface SweepEdges {
  readonly eye: Point;
  /** Nothing beyond this distance matters: the endless chain of the reach lies within it. [m] */
  readonly most: Metres;
  /** Hidings that are open at the eye itself. */
  depth: number;
  /** Directions of the two ends; the second lies counter-clockwise of the first by less than half a turn. */
  readonly startKey: number[];
  readonly endKey: number[];
  /** Ends, measured from the eye. [m] */
  readonly startX: number[];
  readonly startY: number[];
  readonly endX: number[];
  readonly endY: number[];
  readonly effect: number[];
}

/** Effect of an edge that hides everything beyond it. */
export const ENDLESS = 2;

/** No edges yet, round an eye. @param eye - Place. [m] @param most - Distance beyond which nothing matters. [m] @example Its depth is 0 */
export const sweepEdges = (eye: Point, most: Metres = Infinity): SweepEdges => ({
  eye,
  most,
  depth: 0,
  startKey: [],
  endKey: [],
  startX: [],
  startY: [],
  endX: [],
  endY: [],
  effect: [],
});

/**
 * Adds a line that hides everything beyond it.
 *
 * @param edges - The list. @param line - Its ends. [m]
 * @example A wall in front of the eye
 */
export function addEndless(edges: SweepEdges, line: readonly [Point, Point]): void {
  const [ex, ey] = edges.eye;
  const [[ax, ay], [bx, by]] = line;
  add(edges, { ax: ax - ex, ay: ay - ey, bx: bx - ex, by: by - ey, effect: ENDLESS });
}

/**
 * Adds a ring that hides what lies between its near side, moved out by one factor, and its far side, moved out by another.
 *
 * A ray that enters at d₁ and leaves at d₂ is hidden from d₁ · near to d₂ · far. Only how many hidings are open matters, so rings need not be
 * convex: enters and leaves pair up by themselves.
 *
 * @param edges - The list. @param ring - Counter-clockwise; a hole clockwise. [m]
 * @param factors.near - On the entering side, at least 1. @param factors.far - On the leaving side, at least `near`; ∞ hides without end.
 * @example A column to the ceiling: near 1, far ∞
 */
export function addRing(
  edges: SweepEdges,
  ring: Outline,
  factors: { readonly near: number; readonly far: number },
): void {
  const n = ring.length;
  if (n < 2) return;
  const [ex, ey] = edges.eye;
  const endless = factors.far === Infinity;
  const last = ring[n - 1] as Point;
  let ax = last[0] - ex;
  let ay = last[1] - ey;
  let aKey = directionKey(ax, ay);
  let turns = 0;
  for (let i = 0; i < n; i++) {
    const b = ring[i] as Point;
    const bx = b[0] - ex;
    const by = b[1] - ey;
    const bKey = directionKey(bx, by);
    const turn = keyDifference(aKey, bKey);
    turns += turn;
    if (turn < 0) {
      const f = factors.near;
      push(edges, bKey, aKey, bx * f, by * f, ax * f, ay * f, endless ? ENDLESS : 1);
    } else if (turn > 0 && !endless) {
      const f = factors.far;
      push(edges, aKey, bKey, ax * f, ay * f, bx * f, by * f, -1);
    }
    ax = bx;
    ay = by;
    aKey = bKey;
  }
  edges.depth += Math.round(turns / 4);
}

/**
 * Adds a chain of straight edges round the eye that open or close a hiding, or end all sight.
 *
 * @param edges - The list. @param chain - Counter-clockwise round the eye, measured from it. [m] @param effect - 1, -1 or ENDLESS.
 * @example The outline of the reach, closed, ENDLESS
 */
export function addChain(edges: SweepEdges, chain: readonly Point[], effect: number): void {
  for (let i = 0; i + 1 < chain.length; i++) {
    const [ax, ay] = chain[i] as Point;
    const [bx, by] = chain[i + 1] as Point;
    add(edges, { ax, ay, bx, by, effect });
  }
}

function add(
  edges: SweepEdges,
  line: {
    readonly ax: Metres;
    readonly ay: Metres;
    readonly bx: Metres;
    readonly by: Metres;
    readonly effect: number;
  },
): void {
  const { ax, ay, bx, by, effect } = line;
  const aKey = directionKey(ax, ay);
  const bKey = directionKey(bx, by);
  const turn = keyDifference(aKey, bKey);
  if (turn > 0) push(edges, aKey, bKey, ax, ay, bx, by, effect);
  else if (turn < 0) push(edges, bKey, aKey, bx, by, ax, ay, effect);
}

/** Positional on purpose: called for every edge of every zone, where an object apiece costs more than the edge. */
function push(
  edges: SweepEdges,
  startKey: number,
  endKey: number,
  startX: Metres,
  startY: Metres,
  endX: Metres,
  endY: Metres,
  effect: number,
): void {
  const dx = endX - startX;
  const dy = endY - startY;
  const c = startX * dy - startY * dx;
  // The whole line lies beyond what matters: no ray is decided by it.
  if (c * c > edges.most * edges.most * (dx * dx + dy * dy)) return;
  edges.startKey.push(startKey);
  edges.endKey.push(endKey);
  edges.startX.push(startX);
  edges.startY.push(startY);
  edges.endX.push(endX);
  edges.endY.push(endY);
  edges.effect.push(effect);
}
