import type { Metres } from "../quantity/index.ts";
import type { Outline, Point, Region } from "./shapes.ts";
import { side } from "./side.ts";

/** Answers whether the straight line between two places stays inside a region. */
export interface SightGrid {
  readonly clear: (from: Point, to: Point) => boolean;
}

/**
 * How far outside a region an end of a line may lie without counting as blocked. [m]
 * Booleans round to 10 µm, so a place that stands on the edge may come out a grain outside; two grains are allowed.
 */
export const WAY_SKIN: Metres = 2e-5;

interface Edge {
  readonly a: Point;
  readonly b: Point;
  /** Corner after b, to judge a line that passes exactly through b. */
  readonly next: Point;
}

/**
 * A grid over the edges of a region that answers whether a straight line stays inside it, its edge included.
 *
 * A line is blocked where it properly crosses an edge, or passes through a corner from which the solid on both sides, or the region's
 * own inner angle below π, leaves no way on. Signs are exact. Lines that start in the solid are not recognised: ask only from places in the region.
 *
 * @param region - Where one may walk. [m]
 * @returns A test for pairs of places; its work is proportional to the cells that the line crosses.
 * @example Across an L from end to end: blocked; along its inner edges: clear
 */
export function sightGrid(region: Region): SightGrid {
  const edges = region.flatMap((piece) => [piece.outline, ...piece.holes].flatMap(edgesOf));
  const grid = cellsOf(edges);
  const seen = new Int32Array(edges.length);
  let question = 0;
  const clear = (from: Point, to: Point): boolean => {
    question++;
    return grid.along(from, to, (index) => {
      if (seen[index] === question) return true;
      seen[index] = question;
      return !blocks(edges[index] as Edge, from, to);
    });
  };
  return { clear };
}

function edgesOf(ring: Outline): Edge[] {
  return ring.map((a, i) => ({
    a,
    b: ring[(i + 1) % ring.length] as Point,
    next: ring[(i + 2) % ring.length] as Point,
  }));
}

function blocks({ a, b, next }: Edge, from: Point, to: Point): boolean {
  const sideA = side(from, to, a);
  const sideB = side(from, to, b);
  if (sideB === 0) return blocksAtCorner({ a, b, next }, from, to, sideA);
  if (sideA === 0 || sideA > 0 === sideB > 0) return false;
  const sideFrom = side(a, b, from);
  const sideTo = side(a, b, to);
  if (sideFrom === 0 || sideTo === 0 || sideFrom > 0 === sideTo > 0) return false;
  // A proper crossing; one that lies within the skin of an end is rounding, not a wall.
  const share = sideFrom / (sideFrom - sideTo);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const depthFrom = distanceToEdgeLine(a, b, from);
  const depthTo = distanceToEdgeLine(a, b, to);
  if (share * length <= WAY_SKIN || (1 - share) * length <= WAY_SKIN) return false;
  return !(depthFrom <= WAY_SKIN && sideFrom < 0) && !(depthTo <= WAY_SKIN && sideTo < 0);
}

/** The corner b lies on the line; it blocks only strictly between the line's ends. */
function blocksAtCorner({ a, b, next }: Edge, from: Point, to: Point, sideA: number): boolean {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const along = (b[0] - from[0]) * dx + (b[1] - from[1]) * dy;
  const length = Math.hypot(dx, dy);
  if (along <= WAY_SKIN * length || along >= (length - WAY_SKIN) * length) return false;
  const sideNext = side(from, to, next);
  if ((sideA > 0 && sideNext < 0) || (sideA < 0 && sideNext > 0)) return true;
  return side(a, b, next) > 0;
}

const distanceToEdgeLine = (a: Point, b: Point, p: Point): Metres =>
  Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) /
  (Math.hypot(b[0] - a[0], b[1] - a[1]) || 1);

interface Cells {
  /** Visits the edges near a line until the visitor returns false; returns whether it never did. */
  readonly along: (from: Point, to: Point, visit: (edge: number) => boolean) => boolean;
}

/** Square cells, about as many as edges, each with the edges whose box touches it. */
function cellsOf(edges: readonly Edge[]): Cells {
  let [left, bottom, right, top] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const { a } of edges) {
    left = Math.min(left, a[0]);
    right = Math.max(right, a[0]);
    bottom = Math.min(bottom, a[1]);
    top = Math.max(top, a[1]);
  }
  if (edges.length === 0) return { along: () => true };
  const size = Math.max(
    Math.sqrt(((right - left) * (top - bottom)) / edges.length),
    (right - left + top - bottom) / 400,
    1e-3,
  );
  const columns = Math.floor((right - left) / size) + 1;
  const rows = Math.floor((top - bottom) / size) + 1;
  const column = (x: number): number => Math.min(columns - 1, Math.max(0, Math.floor((x - left) / size)));
  const row = (y: number): number => Math.min(rows - 1, Math.max(0, Math.floor((y - bottom) / size)));
  const cells: number[][] = Array.from({ length: columns * rows }, () => []);
  for (const [index, { a, b }] of edges.entries()) {
    for (let r = row(Math.min(a[1], b[1])); r <= row(Math.max(a[1], b[1])); r++) {
      for (let c = column(Math.min(a[0], b[0])); c <= column(Math.max(a[0], b[0])); c++)
        cells[r * columns + c]?.push(index);
    }
  }
  const along: Cells["along"] = (from, to, visit) => {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const first = column(Math.min(from[0], to[0]));
    const last = column(Math.max(from[0], to[0]));
    const forward = dx >= 0;
    for (let step = 0; step <= last - first; step++) {
      const c = forward ? first + step : last - step;
      // Heights between which the line runs inside this column, a grain wider so that rounding loses no cell.
      const x0 = left + c * size;
      const y = (x: number): number => (dx === 0 ? from[1] : from[1] + ((x - from[0]) / dx) * dy);
      const ends =
        dx === 0 ? [from[1], to[1]] : [y(clamp(x0, from[0], to[0])), y(clamp(x0 + size, from[0], to[0]))];
      const low = row(Math.min(...(ends as [number, number])) - 1e-9);
      const high = row(Math.max(...(ends as [number, number])) + 1e-9);
      for (let r = low; r <= high; r++) {
        for (const index of cells[r * columns + c] as number[]) if (!visit(index)) return false;
      }
    }
    return true;
  };
  return { along };
}

const clamp = (value: number, a: number, b: number): number =>
  Math.min(Math.max(a, b), Math.max(Math.min(a, b), value));
