import type { Metres, Point, Site } from "#engine";
import { roomsOn } from "./pick.ts";
import { distance, nearestOn } from "./shapes.ts";
import type { Guide, SnapKind, Snapped } from "./snap.ts";
import type { View } from "./view.ts";

/** The nearest end of a line, else the nearest place on one, within a distance. */
export type Nearest = (
  at: Point,
  within: Metres,
) => { readonly at: Point; readonly kind: "end" | "line" } | undefined;

/** What one draws over. */
export interface DrawGround {
  readonly site: Site;
  readonly storey: string;
  readonly view: View;
  readonly nearest?: Nearest | undefined;
}

/** How near one must come, in pixels. */
const pull = 10;
/** Walls and corners farther away than this are not lined up with. [m] */
const farthest = 15;

interface Line {
  readonly kind: SnapKind;
  readonly axis: 0 | 1;
  readonly value: Metres;
  readonly from: Point;
}

/**
 * Where a drawn corner comes to rest: on a corner or on the end of a line; else square to the corner before, in line with other corners,
 * on a wall or behind it by a wall's thickness; else on a line of the drawing; else on the nearest centimetre.
 *
 * @param drawn.own Corners of what is being drawn, the last one last.
 * @param drawn.of What it is the outline of: only a room may stand behind another one's wall.
 */
export function snapDrawn(
  ground: DrawGround,
  at: Point,
  drawn: { readonly own: readonly Point[]; readonly of: "room" | "thing" },
): Snapped {
  const { own } = drawn;
  const { site, storey, view, nearest } = ground;
  const reach = pull / view.scale;
  const rooms = [...roomsOn(site, storey).values()];
  const lined = nearest?.(at, reach);
  const ends = [...own, ...rooms.flatMap(({ outline }) => outline)].filter(
    (one) => distance(one, at) < reach,
  );
  if (lined?.kind === "end") ends.push(lined.at);
  const end = ends.sort((a, b) => distance(a, at) - distance(b, at))[0];
  if (end) return { at: end, guides: [{ kind: "end", from: end, to: end }] };
  const lines: Line[] = [];
  const both = (kind: SnapKind, from: Point): void => {
    for (const axis of [0, 1] as const) lines.push({ kind, axis, value: from[axis], from });
  };
  const last = own.at(-1);
  const first = own[0];
  if (last) both("square", last);
  if (first && first !== last) both("square", first);
  const thickness = wallThickness(site, storey);
  for (const { outline } of rooms)
    outline.forEach((a, index) => {
      if (distance(a, at) > farthest) return;
      both("corner", a);
      const b = outline[(index + 1) % outline.length] as Point;
      for (const axis of [0, 1] as const) {
        if (drawn.of === "thing" || Math.abs(a[axis] - b[axis]) > 1e-6) continue;
        // The room lies on the left of its sides; the other face of the wall on the right.
        const way = axis === 0 ? Math.sign(b[1] - a[1]) : -Math.sign(b[0] - a[0]);
        lines.push({ kind: "behind", axis, value: a[axis] + way * thickness, from: a });
      }
    });
  const snapped = alongAxes(lines, at, reach);
  if (snapped.guides.length > 0) {
    const across = lined && snapped.guides.length === 1 ? crossing(snapped, lined.at, reach) : undefined;
    return across ?? snapped;
  }
  const wall = onWall(rooms, at, reach);
  if (wall) return { at: wall, guides: [{ kind: "wall", from: wall, to: wall }] };
  if (lined) return { at: lined.at, guides: [{ kind: "line", from: lined.at, to: lined.at }] };
  return { at: centimetre(at), guides: [] };
}

/** In line along one axis, and on a line of the drawing along the other. */
function crossing(snapped: Snapped, line: Point, reach: Metres): Snapped | undefined {
  const guide = snapped.guides[0] as Guide;
  const axis = Math.abs(guide.from[0] - snapped.at[0]) < 1e-9 ? 0 : 1;
  const at: Point = axis === 0 ? [snapped.at[0], line[1]] : [line[0], snapped.at[1]];
  if (distance(at, line) > reach / 2) return undefined;
  return {
    at,
    guides: [
      { ...guide, to: at },
      { kind: "line", from: at, to: at },
    ],
  };
}

function alongAxes(lines: readonly Line[], at: Point, reach: Metres): Snapped {
  const best: [Line | undefined, Line | undefined] = [undefined, undefined];
  for (const line of lines) {
    const away = Math.abs(line.value - at[line.axis]);
    const known = best[line.axis];
    if (away < reach && (!known || away < Math.abs(known.value - at[line.axis]) - 1e-9))
      best[line.axis] = line;
  }
  const free = centimetre(at);
  const to: Point = [best[0]?.value ?? free[0], best[1]?.value ?? free[1]];
  return {
    at: to,
    guides: best.flatMap((line) => (line ? [{ kind: line.kind, from: line.from, to }] : [])),
  };
}

function onWall(
  rooms: readonly { readonly outline: readonly Point[] }[],
  at: Point,
  reach: Metres,
): Point | undefined {
  let best: Point | undefined;
  let least = reach;
  for (const { outline } of rooms)
    outline.forEach((a, index) => {
      const on = nearestOn(a, outline[(index + 1) % outline.length] as Point, at);
      if (distance(on, at) >= least) return;
      least = distance(on, at);
      best = on;
    });
  return best;
}

/** Thickness of the walls of a storey: that of most of its openings, a light wall where there are none. [m] */
function wallThickness(site: Site, storey: string): Metres {
  const rooms = roomsOn(site, storey);
  const counts = new Map<number, number>();
  for (const { rooms: sides, thickness } of site.openings)
    if (rooms.has(sides[0]) && sides[1] !== null) counts.set(thickness, (counts.get(thickness) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0.1;
}

const centimetre = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];
