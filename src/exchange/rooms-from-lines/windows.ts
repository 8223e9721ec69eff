import type { Metres, Outline, Piece, Point } from "#engine";
import { boxOf, inPiece } from "../region.ts";
import { boxIndex, boxSearch, type LineSearch } from "./box-index.ts";
import type { FoundOpening } from "./found.ts";
import { wallThickness } from "./wall-ends.ts";

/** Narrowest and widest window. [m] @source COMMON-PRACTICE */
const windowWidths: readonly [Metres, Metres] = [0.4, 6];
/** Glass lies within its wall by this much. [m] */
const WITHIN: Metres = 0.015;
/** Jambs meet the glass and the room's face this nearly. [m] */
const NEAR: Metres = 0.04;
/** Lines turn by less than this (cosine) where they count as parallel, and by more than its counterpart where they cross. */
const PARALLEL = 0.998;
const ACROSS = 0.06;

interface Glass {
  /** Along the face, from the first corner of its edge. [m] */
  readonly from: Metres;
  readonly to: Metres;
}

/**
 * Windows: lines within the strip of a wall between a room and outside, along it, from jamb to jamb.
 *
 * A jamb is a line across the wall at the end of the glass that reaches the room's face; walls with linings run on and have none.
 *
 * @param of.lines - Lines of the plan. [m] @param of.search - Finds them in boxes. @param of.glazed - Whether a line is on a layer that is called a window: it needs no jambs.
 * @param of.pieces - The rooms. @param of.doors - Openings known already: a window does not overlap one.
 * @source DERIVED-HERE
 * @example A wall of 0.3 m, two jambs 1.2 m apart, one line between them: a window of 1.2 m
 */
export function windowsOf(of: {
  readonly lines: Float64Array;
  readonly search: LineSearch;
  readonly glazed: (line: number) => boolean;
  readonly pieces: readonly Piece[];
  readonly doors: readonly FoundOpening[];
}): readonly FoundOpening[] {
  const { lines, search, glazed, pieces, doors } = of;
  const rooms = boxIndex(pieces.map(({ outline }) => outline));
  const roomAt = (p: Point): number => rooms(p).find((index) => inPiece(p, pieces[index]!)) ?? -1;
  const doorsNear = boxSearch(doors.map(({ from, to }) => boxOf([from, to])));

  const alongEdge = (a: Point, b: Point, room: number): readonly FoundOpening[] => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length < windowWidths[0]) return [];
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const reach = wallThickness[1];
    const [x1, y1, x2, y2] = boxOf([
      a,
      b,
      [a[0] + reach * uy, a[1] - reach * ux],
      [b[0] + reach * uy, b[1] - reach * ux],
    ]);
    /** Of each line nearby: where its ends are along the edge, and how far out of the room. */
    const around = search([x1 - NEAR, y1 - NEAR, x2 + NEAR, y2 + NEAR]).map((line) => {
      const end = (k: number): readonly [Metres, Metres] => {
        const [dx, dy] = [lines[4 * line + k]! - a[0], lines[4 * line + k + 1]! - a[1]];
        return [dx * ux + dy * uy, dx * uy - dy * ux];
      };
      const [p, q] = [end(0), end(2)];
      const size = Math.hypot(q[0] - p[0], q[1] - p[1]);
      return { line, p, q, size, turn: size === 0 ? 0 : Math.abs(q[0] - p[0]) / size };
    });
    const jambs = around.filter(
      ({ turn, size, p, q }) => turn < ACROSS && size > 2 * WITHIN && Math.min(p[1], q[1]) < NEAR,
    );
    const jambAt = (s: Metres, off: Metres): boolean =>
      jambs.some(({ p, q }) => Math.abs((p[0] + q[0]) / 2 - s) < NEAR && Math.max(p[1], q[1]) > off - NEAR);
    const glass = around.flatMap(({ line, p, q, size, turn }): (Glass & { off: Metres })[] => {
      const off = (p[1] + q[1]) / 2;
      const [from, to] = [Math.min(p[0], q[0]), Math.max(p[0], q[0])];
      if (turn < PARALLEL || off < WITHIN || off > reach || from < -NEAR || to > length + NEAR) return [];
      if (size < windowWidths[0] || size > windowWidths[1]) return [];
      const whole = jambAt(from, off) && jambAt(to, off);
      return whole || glazed(line) ? [{ from: Math.max(0, from), to: Math.min(length, to), off }] : [];
    });
    return joined(glass).flatMap(({ from, to }): FoundOpening[] => {
      const at = (s: Metres, off: Metres): Point => [a[0] + s * ux + off * uy, a[1] + s * uy - off * ux];
      // The outer face: the farthest line along the window that is no farther than a wall is thick.
      const thickness = around.reduce((most, { p, q, turn }) => {
        const off = (p[1] + q[1]) / 2;
        const shared = Math.min(to, Math.max(p[0], q[0])) - Math.max(from, Math.min(p[0], q[0]));
        return turn >= PARALLEL && shared > 0.5 * (to - from) && off > most && off < reach ? off : most;
      }, 0);
      const middle = (from + to) / 2;
      if (thickness < wallThickness[0]) return [];
      // A window looks out: no room lies right behind it, nor behind a second leaf of the wall.
      if (roomAt(at(middle, thickness + 0.15)) >= 0 || roomAt(at(middle, thickness + 0.5)) >= 0) return [];
      const [dx1, dy1, dx2, dy2] = boxOf([at(from, 0), at(to, thickness)]);
      if (doorsNear([dx1 - NEAR, dy1 - NEAR, dx2 + NEAR, dy2 + NEAR]).length > 0) return [];
      return [{ kind: "window", from: at(from, 0), to: at(to, 0), thickness, rooms: [room, -1] }];
    });
  };

  return pieces.flatMap((piece, room) => edgesOf(piece.outline).flatMap(([a, b]) => alongEdge(a, b, room)));
}

/** Glass and frames of one window lie beside one another: what overlaps is one. */
function joined(glass: readonly Glass[]): readonly Glass[] {
  const windows: { from: Metres; to: Metres }[] = [];
  for (const { from, to } of glass.toSorted((p, q) => p.from - q.from)) {
    const last = windows.at(-1);
    if (last && from < last.to - NEAR) last.to = Math.max(last.to, to);
    else windows.push({ from, to });
  }
  return windows;
}

const edgesOf = (ring: Outline): readonly (readonly [Point, Point])[] =>
  ring.map((a, i) => [a, ring[(i + 1) % ring.length]!]);
