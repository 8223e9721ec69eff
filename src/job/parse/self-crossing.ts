import { orient2d } from "robust-predicates";
import type { Outline, Point } from "#engine";

/**
 * A place where a ring crosses itself or runs along itself; touching in a point is no crossing.
 *
 * @param outline - Ring without repeated corners. [m]
 * @returns The place, or undefined where the ring is simple.
 * @example The bow tie (0,0) (1,1) (1,0) (0,1) crosses itself at (0.5, 0.5).
 */
export function selfCrossing(outline: Outline): Point | undefined {
  const count = outline.length;
  // Swept from left to right: only edges whose spans in x overlap are compared.
  const edges = outline
    .map((a, index) => ({ a, b: outline[(index + 1) % count]!, index }))
    .map((edge) => ({ ...edge, left: Math.min(edge.a[0], edge.b[0]), right: Math.max(edge.a[0], edge.b[0]) }))
    .sort((one, other) => one.left - other.left);
  let open: typeof edges = [];
  for (const edge of edges) {
    open = open.filter((other) => other.right >= edge.left);
    for (const other of open) {
      const place = meeting(edge, other, count);
      if (place) return place;
    }
    open.push(edge);
  }
  return undefined;
}

interface Edge {
  readonly a: Point;
  readonly b: Point;
  readonly index: number;
}

function meeting(one: Edge, other: Edge, count: number): Point | undefined {
  const [p, q, r, s] = [one.a, one.b, other.a, other.b];
  if (Math.max(p[1], q[1]) < Math.min(r[1], s[1]) || Math.max(r[1], s[1]) < Math.min(p[1], q[1]))
    return undefined;
  const r1 = side(p, q, r);
  const s1 = side(p, q, s);
  if (r1 === 0 && s1 === 0) return overlap(p, q, r, s);
  const neighbours =
    Math.abs(one.index - other.index) === 1 || Math.abs(one.index - other.index) === count - 1;
  if (neighbours) return undefined;
  const p1 = side(r, s, p);
  const q1 = side(r, s, q);
  if (r1 * s1 >= 0 || p1 * q1 >= 0) return undefined;
  const share = Math.abs(r1) / (Math.abs(r1) + Math.abs(s1));
  return [r[0] + share * (s[0] - r[0]), r[1] + share * (s[1] - r[1])];
}

const side = (a: Point, b: Point, c: Point): number => orient2d(a[0], a[1], b[0], b[1], c[0], c[1]);

/** Middle of the common part of two edges on one line; undefined where they share a point at most. */
function overlap(p: Point, q: Point, r: Point, s: Point): Point | undefined {
  const along = Math.abs(q[0] - p[0]) >= Math.abs(q[1] - p[1]) ? 0 : 1;
  const low = Math.max(Math.min(p[along], q[along]), Math.min(r[along], s[along]));
  const high = Math.min(Math.max(p[along], q[along]), Math.max(r[along], s[along]));
  if (!(low < high)) return undefined;
  const share = ((low + high) / 2 - p[along]) / (q[along] - p[along]);
  return [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])];
}
