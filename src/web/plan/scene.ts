import type { FloorPiece, Obstacle, Point, Room, Site } from "#engine";
import { labelPlace } from "./label-place.ts";
import {
  addRing,
  distance,
  middleOf,
  type OpeningShape,
  openingShape,
  roomArea,
  turnedRectangle,
} from "./shapes.ts";
import { type Bounds, boundsOf } from "./view.ts";

/** Tones of obstacles from floor to ceiling. */
export const obstacleTones = 5;

/** The fixed drawing of one storey as paths in plan metres, made once for a snapshot and painted at any zoom. */
export interface Scene {
  readonly bounds: Bounds;
  /** One wide outline: what shows of it round the rooms are the walls. */
  readonly walls: { readonly width: number; readonly path: Path2D };
  readonly rooms: Path2D;
  /** Outlines of rooms that nobody has confirmed yet. */
  readonly proposed: Path2D;
  readonly grids: Path2D;
  readonly noDevices: Path2D;
  readonly reveals: Path2D;
  readonly jambs: Path2D;
  readonly leaves: Path2D;
  readonly swings: Path2D;
  readonly panes: Path2D;
  readonly steps: Path2D;
  readonly tones: readonly Path2D[];
  readonly raised: Path2D;
  readonly glass: Path2D;
  readonly mesh: Path2D;
  readonly luminaires: Path2D;
  readonly labels: readonly RoomLabel[];
  readonly obstacleLabels: readonly ObstacleLabel[];
  readonly openings: ReadonlyMap<string, OpeningShape>;
}

export interface RoomLabel {
  readonly room: Room;
  readonly at: Point;
  readonly area: number;
  /** How far the room reaches at the label, from wall to wall both ways. */
  readonly span: Bounds;
}

export interface ObstacleLabel {
  readonly obstacle: Obstacle;
  readonly at: Point;
  readonly wide: number;
}

/** An obstacle that begins above heads: beams, ducts. */
export const isRaised = (obstacle: Obstacle): boolean => obstacle.base >= 1.9;

const wallWithoutOpenings = 0.15;
const riser = 0.17;

export function sceneOf(site: Site, storey: string): Scene {
  const rooms = site.rooms.filter((room) => room.storey === storey);
  const byId = new Map(rooms.map((room) => [room.id, room]));
  const here = <T extends { readonly room: string }>(list: readonly T[]): T[] =>
    list.filter((one) => byId.has(one.room));
  const openings = site.openings.filter((opening) => opening.rooms.some((id) => id !== null && byId.has(id)));

  // One width for the whole storey: what a room's band takes from its neighbour is painted over by the neighbour's floor.
  const outer = openings
    .filter(({ rooms: sides }) => sides.includes(null))
    .map((opening) => opening.thickness);
  const wallWidth = Math.min(0.5, Math.max(wallWithoutOpenings, ...outer));
  const walls = new Path2D();
  const roomPath = new Path2D();
  const proposed = new Path2D();
  const grids = new Path2D();
  const noDevices = new Path2D();
  for (const room of rooms) {
    for (const ring of [room.outline, ...room.holes]) {
      if (!room.proposed) addRing(walls, ring);
      addRing(room.proposed ? proposed : roomPath, ring);
    }
    for (const ring of room.noDevices) addRing(noDevices, ring);
    addGrid(grids, room);
  }

  const shapes = new Map<string, OpeningShape>();
  const [reveals, jambs, leaves, swings, panes] = [
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
  ];
  for (const opening of openings) {
    const shape = openingShape(opening, byId.get(opening.rooms[0]));
    shapes.set(opening.id, shape);
    addRing(reveals, shape.reveal);
    const [a, b, c, d] = shape.reveal as [Point, Point, Point, Point];
    addLine(jambs, a, d);
    addLine(jambs, b, c);
    if (opening.kind === "window" || opening.kind === "glazing") {
      addLine(panes, a, b);
      addLine(panes, d, c);
      addLine(panes, between(a, d, 0.5), between(b, c, 0.5));
    }
    if (shape.leaf) addLeaf(leaves, swings, shape.leaf);
  }

  const tones = Array.from({ length: obstacleTones }, () => new Path2D());
  const [raised, glass, mesh, steps, luminaires] = [
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
    new Path2D(),
  ];
  const obstacleLabels: ObstacleLabel[] = [];
  for (const obstacle of here(site.obstacles)) {
    const ceiling = byId.get(obstacle.room)?.ceilingHeight ?? 2.5;
    const tone = Math.min(
      obstacleTones - 1,
      Math.max(0, Math.floor((obstacle.top / ceiling) * obstacleTones)),
    );
    const path = isRaised(obstacle)
      ? raised
      : obstacle.kind === "glass"
        ? glass
        : obstacle.seeThrough
          ? mesh
          : tones[tone];
    addRing(path!, obstacle.footprint);
    const xs = obstacle.footprint.map(([x]) => x);
    obstacleLabels.push({
      obstacle,
      at: middleOf(obstacle.footprint),
      wide: Math.max(...xs) - Math.min(...xs),
    });
  }
  for (const piece of here(site.floorPieces)) addSteps(steps, piece);
  for (const one of here(site.luminaires)) {
    if (one.length > 0.05 && one.width > 0.02) addRing(luminaires, turnedRectangle(one.at, one));
    else circle(luminaires, one.at, 0.08);
  }

  const labels = rooms.map((room) => {
    const at = labelPlace(room, site);
    return { room, at, area: roomArea(room), span: spanAt(room, at) };
  });
  return {
    bounds: boundsOf(rooms.flatMap((room) => room.outline)) ?? { left: 0, right: 10, bottom: 0, top: 7 },
    walls: { width: 2 * wallWidth, path: walls },
    rooms: roomPath,
    proposed,
    grids,
    noDevices,
    reveals,
    jambs,
    leaves,
    swings,
    panes,
    steps,
    tones,
    raised,
    glass,
    mesh,
    luminaires,
    labels,
    obstacleLabels,
    openings: shapes,
  };
}

export function addLine(path: Path2D, a: Point, b: Point): void {
  path.moveTo(a[0], a[1]);
  path.lineTo(b[0], b[1]);
}

export function circle(path: Path2D, at: Point, radius: number): void {
  path.moveTo(at[0] + radius, at[1]);
  path.arc(at[0], at[1], radius, 0, 2 * Math.PI);
}

const between = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

function addLeaf(leaves: Path2D, swings: Path2D, leaf: NonNullable<OpeningShape["leaf"]>): void {
  addLine(leaves, leaf.hinge, leaf.open);
  const radius = distance(leaf.hinge, leaf.closed);
  const from = Math.atan2(leaf.closed[1] - leaf.hinge[1], leaf.closed[0] - leaf.hinge[0]);
  const to = Math.atan2(leaf.open[1] - leaf.hinge[1], leaf.open[0] - leaf.hinge[0]);
  swings.moveTo(leaf.closed[0], leaf.closed[1]);
  swings.arc(leaf.hinge[0], leaf.hinge[1], radius, from, to, !leaf.leftHanded);
}

/** Treads across the way up, and an arrow that points up. */
function addSteps(path: Path2D, piece: FloorPiece): void {
  addRing(path, piece.footprint);
  if (piece.kind !== "flight") return;
  const length = distance(piece.from, piece.to);
  const count = Math.max(1, Math.round(Math.abs(piece.high - piece.low) / riser));
  if (length < 0.1) return;
  const along: Point = [(piece.to[0] - piece.from[0]) / length, (piece.to[1] - piece.from[1]) / length];
  const across: Point = [-along[1], along[0]];
  for (let i = 1; i < count; i++) {
    const at: Point = [
      piece.from[0] + along[0] * length * (i / count),
      piece.from[1] + along[1] * length * (i / count),
    ];
    const cut = crossing(piece.footprint, at, across);
    if (cut) addLine(path, cut[0], cut[1]);
  }
  const tip = between(piece.from, piece.to, 0.94);
  addLine(path, between(piece.from, piece.to, 0.04), tip);
  for (const side of [1, -1])
    addLine(path, tip, [
      tip[0] - along[0] * 0.15 + across[0] * 0.09 * side,
      tip[1] - along[1] * 0.15 + across[1] * 0.09 * side,
    ]);
}

/** Where a line crosses a convex ring. */
function crossing(ring: readonly Point[], at: Point, direction: Point): [Point, Point] | undefined {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[j] as Point, ring[i] as Point];
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const turn = direction[0] * ey - direction[1] * ex;
    if (Math.abs(turn) < 1e-12) continue;
    const t = ((a[0] - at[0]) * ey - (a[1] - at[1]) * ex) / turn;
    const s = ((a[0] - at[0]) * direction[1] - (a[1] - at[1]) * direction[0]) / turn;
    if (s < -1e-9 || s > 1 + 1e-9) continue;
    low = Math.min(low, t);
    high = Math.max(high, t);
  }
  return high > low
    ? [
        [at[0] + direction[0] * low, at[1] + direction[1] * low],
        [at[0] + direction[0] * high, at[1] + direction[1] * high],
      ]
    : undefined;
}

/** Lines of the ceiling grid; clipped to the room when painted, so they may reach too far here. */
function addGrid(path: Path2D, room: Room): void {
  const grid = room.ceilingGrid;
  if (!grid || grid.tile[0] < 0.1 || grid.tile[1] < 0.1) return;
  const [c, s] = [Math.cos(grid.turn), Math.sin(grid.turn)];
  const local = room.outline.map(
    ([x, y]): Point => [
      (x - grid.origin[0]) * c + (y - grid.origin[1]) * s,
      -(x - grid.origin[0]) * s + (y - grid.origin[1]) * c,
    ],
  );
  const world = ([x, y]: Point): Point => [grid.origin[0] + x * c - y * s, grid.origin[1] + x * s + y * c];
  for (const axis of [0, 1] as const) {
    const other = axis === 0 ? 1 : 0;
    const values = local.map((point) => point[axis]);
    const first = Math.ceil(Math.min(...values) / grid.tile[axis]);
    const last = Math.floor(Math.max(...values) / grid.tile[axis]);
    if (last - first > 500) continue;
    for (let i = first; i <= last; i++) {
      const value = i * grid.tile[axis];
      const cuts = cutsAt(local, axis, value + 1e-9);
      for (let k = 0; k + 1 < cuts.length; k += 2) {
        const point = (along: number): Point => (other === 1 ? world([value, along]) : world([along, value]));
        addLine(path, point(cuts[k]!), point(cuts[k + 1]!));
      }
    }
  }
}

/** From wall to wall through a point, along x and along y. */
function spanAt(room: Room, at: Point): Bounds {
  const rings = [room.outline, ...room.holes];
  const along = (axis: 0 | 1): readonly number[] =>
    rings.flatMap((ring) => cutsAt(ring, axis, at[axis] + 1e-9));
  const [across, up] = [along(1), along(0)];
  return {
    left: Math.max(...across.filter((x) => x <= at[0])),
    right: Math.min(...across.filter((x) => x > at[0])),
    bottom: Math.max(...up.filter((y) => y <= at[1])),
    top: Math.min(...up.filter((y) => y > at[1])),
  };
}

/** Where the line "axis = value" enters and leaves a ring, in order along the other axis. */
function cutsAt(ring: readonly Point[], axis: 0 | 1, value: number): number[] {
  const other = axis === 0 ? 1 : 0;
  const cuts: number[] = [];
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[j] as Point, ring[i] as Point];
    if (a[axis] > value === b[axis] > value) continue;
    cuts.push(a[other] + ((value - a[axis]) / (b[axis] - a[axis])) * (b[other] - a[other]));
  }
  return cuts.sort((p, q) => p - q);
}
