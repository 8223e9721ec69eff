import type { Metres, Point } from "#engine";
import type { Arrangement } from "./arrangement.ts";
import type { LineSearch } from "./box-index.ts";
import { endsOfWalls } from "./wall-ends.ts";

/** Walls stop short of glass, frames and linings by no more. [m] @source COMMON-PRACTICE */
const SHORT: Metres = 0.05;

/**
 * Lines that lead the faces of a wall on to what it stops short of by a few centimetres: nobody walks through there.
 *
 * @param graph - Walls without doors. @param of.lines - x1 y1 x2 y2 of each. [m] @param of.search - Finds them in boxes.
 * @param of.wall - Whether a line is on a layer that is called a wall: pieces of furniture stop short of walls, too.
 * @source DERIVED-HERE
 * @example A partition of 0.1 m that ends 0.02 m before a pane of glass: two lines of 0.02 m
 */
export function shortEnds(
  graph: Arrangement,
  of: { readonly lines: Float64Array; readonly search: LineSearch; readonly wall: (line: number) => boolean },
): readonly (readonly [Point, Point])[] {
  return endsOfWalls(graph).flatMap(({ a, b, out, line }): (readonly [Point, Point])[] => {
    if (line === undefined || !of.wall(line)) return [];
    const [p, q] = [aheadOf(a, out, of), aheadOf(b, out, of)];
    return p && q
      ? [
          [a, p],
          [b, q],
        ]
      : [];
  });
}

/** Where a ray meets the first line across it within reach. */
function aheadOf(
  [x, y]: Point,
  [ux, uy]: Point,
  { lines, search }: { readonly lines: Float64Array; readonly search: LineSearch },
): Point | undefined {
  const [ex, ey] = [x + SHORT * ux, y + SHORT * uy];
  let nearest = Number.POSITIVE_INFINITY;
  for (const i of search([Math.min(x, ex), Math.min(y, ey), Math.max(x, ex), Math.max(y, ey)])) {
    const [px, py] = [lines[4 * i]! - x, lines[4 * i + 1]! - y];
    const [dx, dy] = [lines[4 * i + 2]! - lines[4 * i]!, lines[4 * i + 3]! - lines[4 * i + 1]!];
    const turn = ux * dy - uy * dx;
    if (Math.abs(turn) < 0.3 * Math.hypot(dx, dy)) continue;
    const far = (px * dy - py * dx) / turn;
    const along = (px * uy - py * ux) / turn;
    if (far > LEAST && far <= SHORT && along >= 0 && along <= 1) nearest = Math.min(nearest, far);
  }
  return Number.isFinite(nearest) ? [x + nearest * ux, y + nearest * uy] : undefined;
}

/** What is nearer has been joined already. [m] */
const LEAST: Metres = 1e-3;
