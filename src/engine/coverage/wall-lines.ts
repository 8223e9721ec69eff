import { FACE_FIT, type Point } from "../geometry/index.ts";
import type { Room } from "../site/index.ts";
import type { FittedReveal } from "./fitted-reveal.ts";

/** A line that stops all sight, from floor to ceiling. */
export interface WallLine {
  readonly a: Point;
  readonly b: Point;
  /** Room whose outline or reveal it belongs to. */
  readonly room: string;
}

/**
 * Lines that stop all sight: the outlines of rooms less their open openings, and the jambs of these.
 *
 * @param rooms - Rooms of one part. @param reveals - Their open reveals, fitted to the rooms' faces.
 * @returns Lines that close the rooms and reveals all round.
 * @source DERIVED-HERE
 * @example A rectangle with one passage: five pieces of outline and two jambs
 */
export function wallLines(rooms: readonly Room[], reveals: readonly FittedReveal[]): readonly WallLine[] {
  const lines: WallLine[] = [];
  for (const room of rooms) {
    const gaps = reveals.flatMap((fitted) => [
      ...(fitted.opening.rooms[0] === room.id ? [fitted.near] : []),
      ...(fitted.opening.rooms[1] === room.id && fitted.reaches ? [fitted.far] : []),
    ]);
    for (const ring of [room.outline, ...room.holes]) {
      for (const [i, a] of ring.entries())
        lines.push(
          ...without([a, ring[(i + 1) % ring.length] as Point], gaps).map(([p, q]) => ({
            a: p,
            b: q,
            room: room.id,
          })),
        );
    }
  }
  for (const { near, far, reaches, opening } of reveals) {
    const room = opening.rooms[0];
    for (const i of [0, 1] as const)
      if (near[i][0] !== far[i][0] || near[i][1] !== far[i][1]) lines.push({ a: near[i], b: far[i], room });
    if (!reaches) lines.push({ a: far[0], b: far[1], room });
  }
  return lines;
}

type Line = readonly [Point, Point];

/** The pieces of an edge that no gap takes away. A gap's ends are taken as they are, so that jamb and wall meet in one corner. */
function without(edge: Line, gaps: readonly Line[]): readonly Line[] {
  const [a, b] = edge;
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  if (length === 0) return [];
  const along = (p: Point): number => ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length;
  const aside = (p: Point): number => Math.abs((p[0] - a[0]) * dy - (p[1] - a[1]) * dx) / length;
  const cuts: { from: number; to: number; start: Point; end: Point }[] = [];
  for (const [p, q] of gaps) {
    const width = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const [s, t] = [along(p), along(q)];
    // Nearly parallel, and the gap's ends nearly on the edge's line.
    if (Math.abs(t - s) < 0.99 * width || aside(p) > FACE_FIT || aside(q) > FACE_FIT) continue;
    const [from, to, start, end] = s < t ? [s, t, p, q] : [t, s, q, p];
    if (to <= 0 || from >= length) continue;
    cuts.push({ from, to, start, end });
  }
  cuts.sort((x, y) => x.from - y.from);
  const pieces: Line[] = [];
  let at = 0;
  let point = a;
  for (const cut of cuts) {
    if (cut.from > at + 1e-9) pieces.push([point, cut.start]);
    if (cut.to > at) {
      at = cut.to;
      point = cut.end;
    }
  }
  if (at < length - 1e-9) pieces.push([point, b]);
  return pieces;
}
