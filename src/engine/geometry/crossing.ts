import { orient2d } from "robust-predicates";
import type { Outline, Point } from "./shapes.ts";

/**
 * Where a ring crosses or touches itself.
 *
 * @param outline - Closed ring. [m]
 * @returns A point of the first crossing found [m]; undefined for a simple ring.
 * @example A bow tie (0,0) (1,1) (1,0) (0,1): (0.5, 0.5)
 */
export function selfCrossing(outline: Outline): Point | undefined {
  const n = outline.length;
  const edges = outline
    .map((a, index) => ({ index, a, b: outline[(index + 1) % n] as Point }))
    .map((edge) => ({ ...edge, left: Math.min(edge.a[0], edge.b[0]), right: Math.max(edge.a[0], edge.b[0]) }))
    .toSorted((p, q) => p.left - q.left);
  for (const [i, first] of edges.entries()) {
    for (let j = i + 1; j < edges.length; j++) {
      const second = edges[j] as (typeof edges)[number];
      if (second.left > first.right) break;
      const apart = Math.abs(first.index - second.index);
      const neighbours = apart === 1 || apart === n - 1;
      const at = neighbours ? foldedBack(first, second) : meeting(first, second);
      if (at) return at;
    }
  }
  return undefined;
}

interface Edge {
  readonly a: Point;
  readonly b: Point;
}

/** A point that two segments share, ends included; the decision is exact, the place rounded. */
function meeting(first: Edge, second: Edge): Point | undefined {
  const { a, b } = first;
  const { a: c, b: d } = second;
  const [p, q] = [turn(a, b, c), turn(a, b, d)];
  const [r, s] = [turn(c, d, a), turn(c, d, b)];
  if (p === 0 && onSegment(first, c)) return c;
  if (q === 0 && onSegment(first, d)) return d;
  if (r === 0 && onSegment(second, a)) return a;
  if (s === 0 && onSegment(second, b)) return b;
  if (p * q >= 0 || r * s >= 0) return undefined;
  const t = r / (r - s);
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

/** Neighbouring edges share a corner; they overlap when one runs back along the other. */
function foldedBack(first: Edge, second: Edge): Point | undefined {
  const shared = same(first.b, second.a) ? first.b : first.a;
  const p = same(shared, first.a) ? first.b : first.a;
  const q = same(shared, second.a) ? second.b : second.a;
  if (turn(p, shared, q) !== 0) return undefined;
  const back = (p[0] - shared[0]) * (q[0] - shared[0]) + (p[1] - shared[1]) * (q[1] - shared[1]) > 0;
  return back ? shared : undefined;
}

const same = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1];
const turn = (a: Point, b: Point, c: Point): number => -orient2d(a[0], a[1], b[0], b[1], c[0], c[1]);
const onSegment = (edge: Edge, p: Point): boolean =>
  p[0] >= Math.min(edge.a[0], edge.b[0]) &&
  p[0] <= Math.max(edge.a[0], edge.b[0]) &&
  p[1] >= Math.min(edge.a[1], edge.b[1]) &&
  p[1] <= Math.max(edge.a[1], edge.b[1]);
