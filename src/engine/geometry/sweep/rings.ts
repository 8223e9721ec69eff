import { placeInOutline } from "../contains.ts";
import { signedArea } from "../measure.ts";
import type { Outline, Piece, Point, Region } from "../shapes.ts";
import { NO_AREA } from "../tolerances.ts";
import { keyX, keyY } from "./direction-key.ts";
import type { Wedges } from "./wedges.ts";

/** Distances on one ray closer than this are one corner: 0.1 µm. [m] */
const SAME_CORNER = 1e-7;

/**
 * The polygon of what an eye sees.
 *
 * Its edge consists of the near and far lines of every wedge, and of the parts of rays that only one of the two neighbouring wedges sees.
 * These pieces are directed with the seen on their left and chained to rings.
 *
 * @param wedges - Result of a sweep.
 * @returns Pieces with their holes (shadows that light surrounds); corners only where the bounding line changes. [m]
 * @source DERIVED-HERE
 * @example Eye in an empty convex room within reach: the room
 */
export function regionOfWedges(wedges: Wedges): Region {
  const graph: Graph = { x: [], y: [], head: [], next: [], from: [], to: [], label: [] };
  const count = wedges.keys.length;
  if (count === 0) return [];
  // Node number of each interval's four corners.
  const corner = new Int32Array(wedges.near.length * 4);
  graph.x.push(wedges.eye[0]);
  graph.y.push(wedges.eye[1]);
  graph.head.push(-1);
  for (let j = 0; j < count; j++) ray(wedges, { graph, corner, j });
  for (let i = 0; i < wedges.near.length; i++) {
    const [n0, f0, n1, f1] = [corner[4 * i], corner[4 * i + 1], corner[4 * i + 2], corner[4 * i + 3]] as [
      number,
      number,
      number,
      number,
    ];
    if (f0 !== f1) edge(graph, { from: f0, to: f1, label: wedges.far[i] as number });
    if (n0 !== n1) edge(graph, { from: n1, to: n0, label: wedges.near[i] as number });
  }
  return piecesOf(ringsOfGraph(graph));
}

interface Graph {
  readonly x: number[];
  readonly y: number[];
  /** First edge that leaves each node, and the next after each edge. */
  readonly head: number[];
  readonly next: number[];
  readonly from: number[];
  readonly to: number[];
  /** Line that an edge lies on: two edges in a row with one label need no corner between. */
  readonly label: number[];
}

function edge(
  graph: Graph,
  one: { readonly from: number; readonly to: number; readonly label: number },
): void {
  graph.next.push(graph.head[one.from] as number);
  graph.from.push(one.from);
  graph.to.push(one.to);
  graph.label.push(one.label);
  graph.head[one.from] = graph.to.length - 1;
}

/** Corners on the ray where wedge j begins, and the parts of the ray that only one neighbour sees. */
function ray(
  wedges: Wedges,
  at: { readonly graph: Graph; readonly corner: Int32Array; readonly j: number },
): void {
  const { graph, corner, j } = at;
  const { keys, first, r } = wedges;
  const key = keys[j] as number;
  const [ux, uy] = [keyX(key), keyY(key)];
  const before = j === 0 ? keys.length - 1 : j - 1;
  // Ends on this ray, both lists outwards: of the wedge before (clockwise side) at its last ray, of wedge j at its first.
  let p = 2 * (first[before] as number);
  const pEnd = 2 * (first[before + 1] as number);
  let q = 2 * (first[j] as number);
  const qEnd = 2 * (first[j + 1] as number);
  let clockwise = 0;
  let counter = 0;
  let node = -1;
  while (p < pEnd || q < qEnd) {
    const pr = p < pEnd ? (r[2 * p - (p & 1) + 2] as number) : Infinity;
    const qr = q < qEnd ? (r[2 * q - (q & 1)] as number) : Infinity;
    const start = Math.min(pr, qr);
    const previous = node;
    const [seenBefore, seenNow] = [clockwise > 0, counter > 0];
    if (start < SAME_CORNER) node = 0;
    else {
      node = graph.x.length;
      graph.x.push(wedges.eye[0] + ux * start);
      graph.y.push(wedges.eye[1] + uy * start);
      graph.head.push(-1);
    }
    // Going out along the ray the counter-clockwise side is on the left.
    if (previous >= 0 && seenBefore !== seenNow) {
      if (seenNow) edge(graph, { from: previous, to: node, label: -2 - 2 * j });
      else edge(graph, { from: node, to: previous, label: -3 - 2 * j });
    }
    // An even end begins a seen interval, an odd one ends it; slots of interval i are 4i … 4i + 3.
    for (; p < pEnd && (r[2 * p - (p & 1) + 2] as number) - start < SAME_CORNER; p++) {
      corner[2 * p - (p & 1) + 2] = node;
      clockwise += p & 1 ? -1 : 1;
    }
    for (; q < qEnd && (r[2 * q - (q & 1)] as number) - start < SAME_CORNER; q++) {
      corner[2 * q - (q & 1)] = node;
      counter += q & 1 ? -1 : 1;
    }
  }
}

function ringsOfGraph(graph: Graph): readonly Outline[] {
  const { x, y, to, label } = graph;
  const used = new Uint8Array(to.length);
  const rings: Outline[] = [];
  for (let first = 0; first < to.length; first++) {
    if (used[first]) continue;
    const ring: Point[] = [];
    const labels: number[] = [];
    let current = first;
    do {
      used[current] = 1;
      const node = to[current] as number;
      ring.push([x[node] as number, y[node] as number]);
      labels.push(label[current] as number);
      current = leaving(graph, { arriving: current, first, used });
    } while (current !== first);
    rings.push(ring.filter((_, i) => labels[i] !== labels[(i + 1) % labels.length]));
  }
  return rings;
}

/** The edge that follows another; where several leave its end, the first clockwise from the way back, which keeps to one and the same piece of what is seen. */
function leaving(
  graph: Graph,
  at: { readonly arriving: number; readonly first: number; readonly used: Uint8Array },
): number {
  const { head, next, x, y, from, to } = graph;
  const node = to[at.arriving] as number;
  const only = head[node] as number;
  if (only >= 0 && (next[only] as number) < 0) return at.used[only] ? at.first : only;
  const [nx, ny] = [x[node] as number, y[node] as number];
  const source = from[at.arriving] as number;
  const back = Math.atan2((y[source] as number) - ny, (x[source] as number) - nx);
  let best = at.first;
  let least = Infinity;
  for (let candidate = only; candidate >= 0; candidate = next[candidate] as number) {
    if (at.used[candidate] && candidate !== at.first) continue;
    const end = to[candidate] as number;
    const angle = back - Math.atan2((y[end] as number) - ny, (x[end] as number) - nx);
    const turn = angle <= 0 ? angle + 2 * Math.PI : angle > 2 * Math.PI ? angle - 2 * Math.PI : angle;
    if (turn < least) {
      least = turn;
      best = candidate;
    }
  }
  return best;
}

/** Outer rings with the holes that lie in them. */
function piecesOf(rings: readonly Outline[]): Region {
  const pieces: { outline: Outline; area: number; holes: Outline[] }[] = [];
  const holes: Outline[] = [];
  for (const ring of rings) {
    const area = signedArea(ring);
    if (area > NO_AREA) pieces.push({ outline: ring, area, holes: [] });
    else if (area < -NO_AREA) holes.push(ring);
  }
  pieces.sort((a, b) => a.area - b.area);
  for (const hole of holes) {
    const home = pieces.length === 1 ? pieces[0] : pieces.find((piece) => liesIn(hole, piece.outline));
    home?.holes.push(hole);
  }
  return pieces.map(({ outline, holes: inside }): Piece => ({ outline, holes: inside }));
}

/** Whether a ring that does not cross another lies in it: the first corner that is not on its edge decides. */
function liesIn(ring: Outline, outer: Outline): boolean {
  for (const corner of ring) {
    const place = placeInOutline(outer, corner);
    if (place !== "edge") return place === "inside";
  }
  return true;
}
