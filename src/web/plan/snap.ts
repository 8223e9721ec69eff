import type { Point, Room, Site } from "#engine";
import type { RecordRef } from "../contract.ts";
import { placeOf, recordOf, roomAt, roomsOn } from "./pick.ts";
import type { View } from "./view.ts";

export type SnapKind =
  | "grid"
  | "device"
  | "luminaire"
  | "middle"
  | "wall"
  | "corner"
  | "end"
  | "line"
  | "square"
  | "behind";

/** A line that a thing snapped to, from what it was taken from. */
export interface Guide {
  readonly kind: SnapKind;
  readonly from: Point;
  readonly to: Point;
}

export interface Snapped {
  readonly at: Point;
  readonly guides: readonly Guide[];
}

/** How near one must come, in pixels. */
const pull = 8;

interface Line {
  readonly kind: SnapKind;
  readonly axis: 0 | 1;
  readonly value: number;
  readonly from: Point;
}

/** Where a moved device or small thing comes to rest: middle of a tile first, else in line with others or the room's middle. */
export function snapPlace(
  site: Site,
  storey: string,
  thing: { view: View; ref: RecordRef | undefined; at: Point },
): Snapped {
  const { view, ref, at } = thing;
  const room = roomAt(site, storey, at);
  const reach = pull / view.scale;
  if (!room) return { at: centimetre(at), guides: [] };
  const tile = tileMiddle(room, at);
  if (tile && Math.hypot(tile[0] - at[0], tile[1] - at[1]) < Math.max(reach, tileReach(room, view)))
    return { at: tile, guides: [{ kind: "grid", from: tile, to: tile }] };
  return alongLines(linesIn(site, room, ref), at, reach);
}

/** Where a moved corner comes to rest: on other corners, or in line with them. */
export function snapCorner(
  site: Site,
  storey: string,
  corner: { view: View; ref: RecordRef; index: number; at: Point },
): Snapped {
  const { view, at } = corner;
  const reach = pull / view.scale;
  const lines: Line[] = [];
  for (const room of roomsOn(site, storey).values())
    room.outline.forEach((point, index) => {
      if (corner.ref.kind === "rooms" && room.id === corner.ref.id && index === corner.index) return;
      if (Math.hypot(point[0] - at[0], point[1] - at[1]) > 12) return;
      for (const axis of [0, 1] as const)
        lines.push({ kind: "corner", axis, value: point[axis], from: point });
    });
  return alongLines(lines, at, reach);
}

/** Inside a ceiling grid the tiles hold a device: half of a tile at most, so that between them stays free only when zoomed in. */
function tileReach(room: Room, view: View): number {
  const tile = room.ceilingGrid?.tile;
  return tile ? Math.min(Math.min(tile[0], tile[1]) * 0.35, (pull * 2) / view.scale) : 0;
}

/** Middle of the tile that a point lies in, in a room with a ceiling grid. */
export function tileMiddle(room: Room, [x, y]: Point): Point | undefined {
  const grid = room.ceilingGrid;
  if (!grid) return undefined;
  const [c, s] = [Math.cos(grid.turn), Math.sin(grid.turn)];
  const [dx, dy] = [x - grid.origin[0], y - grid.origin[1]];
  const u = (Math.floor((dx * c + dy * s) / grid.tile[0]) + 0.5) * grid.tile[0];
  const v = (Math.floor((-dx * s + dy * c) / grid.tile[1]) + 0.5) * grid.tile[1];
  return [grid.origin[0] + u * c - v * s, grid.origin[1] + u * s + v * c];
}

function linesIn(site: Site, room: Room, ref: RecordRef | undefined): Line[] {
  const lines: Line[] = [];
  const both = (kind: SnapKind, from: Point): void => {
    for (const axis of [0, 1] as const) lines.push({ kind, axis, value: from[axis], from });
  };
  for (const device of site.detectors)
    if (device.room === room.id && device.id !== ref?.id) both("device", device.at);
  for (const one of site.luminaires)
    if (one.room === room.id && one.id !== ref?.id) both("luminaire", one.at);
  const xs = room.outline.map(([x]) => x);
  const ys = room.outline.map(([, y]) => y);
  const middle: Point = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  both("middle", middle);
  return lines;
}

function alongLines(lines: readonly Line[], at: Point, reach: number): Snapped {
  const best: [Line | undefined, Line | undefined] = [undefined, undefined];
  for (const line of lines) {
    const away = Math.abs(line.value - at[line.axis]);
    const known = best[line.axis];
    if (away < reach && (!known || away < Math.abs(known.value - at[line.axis]))) best[line.axis] = line;
  }
  const free = centimetre(at);
  const to: Point = [best[0]?.value ?? free[0], best[1]?.value ?? free[1]];
  return {
    at: to,
    guides: best.flatMap((line) => (line ? [{ kind: line.kind, from: line.from, to }] : [])),
  };
}

/** Shift that brings an obstacle's sides flush with the walls of its room. */
export function snapObstacle(
  site: Site,
  thing: { view: View; ref: RecordRef; by: Point },
): { by: Point; guides: readonly Guide[] } {
  const obstacle = recordOf(site, "obstacles", thing.ref.id);
  const room = obstacle && recordOf(site, "rooms", obstacle.room);
  if (!obstacle || !room) return { by: thing.by, guides: [] };
  const reach = pull / thing.view.scale;
  const by: [number, number] = [...centimetre(thing.by)];
  const guides: Guide[] = [];
  for (const axis of [0, 1] as const) {
    let least = reach;
    room.outline.forEach((a, i) => {
      const b = room.outline[(i + 1) % room.outline.length] as Point;
      if (Math.abs(a[axis] - b[axis]) > 1e-6) return;
      for (const point of obstacle.footprint) {
        const away = a[axis] - (point[axis] + thing.by[axis]);
        if (Math.abs(away) >= least) continue;
        least = Math.abs(away);
        by[axis] = thing.by[axis] + away;
        guides[axis] = { kind: "wall", from: a, to: b };
      }
    });
  }
  return { by, guides: guides.filter(Boolean) };
}

/** Distances from a place to the walls left, right, below and above it, for figures while dragging. */
export function wallDistances(
  room: Room,
  at: Point,
): readonly { readonly to: Point; readonly metres: number }[] {
  const rays: Point[] = [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ];
  return rays.flatMap((ray) => {
    let least = Infinity;
    for (const ring of [room.outline, ...room.holes])
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length] as Point;
        const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
        const turn = ray[0] * ey - ray[1] * ex;
        if (Math.abs(turn) < 1e-12) return;
        const t = ((a[0] - at[0]) * ey - (a[1] - at[1]) * ex) / turn;
        const s = ((a[0] - at[0]) * ray[1] - (a[1] - at[1]) * ray[0]) / turn;
        if (t > 1e-9 && s >= 0 && s <= 1) least = Math.min(least, t);
      });
    return Number.isFinite(least)
      ? [{ to: [at[0] + ray[0] * least, at[1] + ray[1] * least] as Point, metres: least }]
      : [];
  });
}

const centimetre = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

export const snapReference = (site: Site, refs: readonly RecordRef[]): Point | undefined =>
  refs[0] && placeOf(site, refs[0]);
