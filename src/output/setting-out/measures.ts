import {
  contains,
  type Detector,
  distanceToSegment,
  type Obstacle,
  type Opening,
  type Point,
  type Room,
  regionOf,
  type Site,
} from "#engine";

/** One of the two measures that fix a detector on the ceiling. */
export type Measure =
  /** Square off a finished wall face. Distance. [m] */
  | { readonly kind: "wall"; readonly wall: number; readonly foot: Point; readonly distance: number }
  /** Whole tiles from a wall along the ceiling grid, counted to the detector's own tile; a cut tile at the wall is not counted. */
  | {
      readonly kind: "tiles";
      readonly wall: number;
      readonly foot: Point;
      readonly distance: number;
      readonly tiles: number;
      readonly cutTile: number;
    }
  /** Straight from a corner, where no two walls can be measured from. */
  | { readonly kind: "corner"; readonly wall: number; readonly foot: Point; readonly distance: number };

/** An edge of the room's outline or of a hole in it. */
export interface WallFace {
  readonly from: Point;
  readonly to: Point;
}

/** A wall shorter than this is no place to hold a tape to. [m] */
const shortestWall = 0.3;
/** Two walls closer in direction than 30° fix a place badly: an error is doubled across them. */
const leastSine = 0.5;
/** Wall above an opening is taken only where whole wall is this many times farther away. */
const lintelPenalty = 1.5;
/** A detector this near the middle of a tile is set out by tiles. [m] */
const tileTolerance = 0.015;

/** All wall faces of a room, in the order of its outline, then of its holes. */
export const wallFaces = (room: Room): readonly WallFace[] =>
  [room.outline, ...room.holes].flatMap((ring) =>
    ring.map((from, i): WallFace => ({ from, to: ring[(i + 1) % ring.length]! })),
  );

/**
 * The two measures from which a detector's place is found on site: tile counts where it sits in a tile of the ceiling grid,
 * otherwise square distances to the two nearest walls that are not parallel, otherwise distances from two corners.
 */
export function measuresOf(detector: Detector, room: Room, site: Site): readonly Measure[] {
  const ground = groundOf(room, site);
  for (const measure of [tileMeasures, wallMeasures, cornerMeasures]) {
    const measures = measure(detector.at, ground);
    if (measures.length === 2) return measures;
  }
  return [];
}

interface Ground {
  readonly room: Room;
  readonly faces: readonly WallFace[];
  /** Things up to the ceiling that no tape passes. */
  readonly blocks: readonly Obstacle[];
  /** Openings up to the ceiling: nothing to hold the tape to. */
  readonly gaps: readonly Opening[];
  /** Openings with wall above them: there the tape has to be held up high. */
  readonly lintels: readonly Opening[];
}

function groundOf(room: Room, site: Site): Ground {
  const high = room.ceilingHeight - 0.05;
  const openings = site.openings.filter((one) => one.rooms.includes(room.id));
  return {
    room,
    faces: wallFaces(room),
    blocks: site.obstacles.filter((one) => one.room === room.id && one.top >= high),
    gaps: openings.filter((one) => one.head >= high),
    lintels: openings.filter((one) => one.head < high),
  };
}

function wallMeasures(at: Point, ground: Ground): readonly Measure[] {
  const feet = ground.faces
    .flatMap((face, wall): readonly Measure[] => {
      const [dx, dy] = [face.to[0] - face.from[0], face.to[1] - face.from[1]];
      const length = Math.hypot(dx, dy);
      if (length < shortestWall) return [];
      const along = ((at[0] - face.from[0]) * dx + (at[1] - face.from[1]) * dy) / length;
      if (along < 0.02 || along > length - 0.02) return [];
      const foot: Point = [face.from[0] + (dx * along) / length, face.from[1] + (dy * along) / length];
      if (!reaches(at, foot, { wall, ground })) return [];
      return [{ kind: "wall", wall, foot, distance: Math.hypot(at[0] - foot[0], at[1] - foot[1]) }];
    })
    .sort((a, b) => effort(a, ground) - effort(b, ground));
  const first = feet[0];
  if (!first) return [];
  const second = feet.find(
    (one) => Math.abs(sine(ground.faces[one.wall]!, ground.faces[first.wall]!)) >= leastSine,
  );
  return second ? [first, second] : [];
}

const effort = (measure: Measure, ground: Ground): number =>
  measure.distance * (ground.lintels.some((one) => onOpening(measure.foot, one)) ? lintelPenalty : 1);

function cornerMeasures(at: Point, ground: Ground): readonly Measure[] {
  const corners = ground.faces
    .map((face, wall): Measure => {
      const foot = face.from;
      return { kind: "corner", wall, foot, distance: Math.hypot(at[0] - foot[0], at[1] - foot[1]) };
    })
    .filter((one) => reaches(at, one.foot, { wall: one.wall, ground }))
    .sort((a, b) => a.distance - b.distance);
  const first = corners[0];
  if (!first) return [];
  const second = corners.find((one) => {
    const cross =
      (first.foot[0] - at[0]) * (one.foot[1] - at[1]) - (first.foot[1] - at[1]) * (one.foot[0] - at[0]);
    return Math.abs(cross) >= leastSine * first.distance * one.distance;
  });
  return second ? [first, second] : [];
}

function tileMeasures(at: Point, ground: Ground): readonly Measure[] {
  const grid = ground.room.ceilingGrid;
  if (!grid) return [];
  const cos = Math.cos(grid.turn);
  const sin = Math.sin(grid.turn);
  const axes: readonly (readonly [Point, number])[] = [
    [[cos, sin], grid.tile[0]],
    [[-sin, cos], grid.tile[1]],
  ];
  return axes.flatMap(([axis, tile]): readonly Measure[] => {
    const place = (point: Point): number =>
      ((point[0] - grid.origin[0]) * axis[0] + (point[1] - grid.origin[1]) * axis[1]) / tile;
    const own = Math.floor(place(at));
    if (Math.abs(place(at) - own - 0.5) * tile > tileTolerance) return [];
    const hits = [1, -1].flatMap((sense) => {
      const hit = firstWall(at, [axis[0] * sense, axis[1] * sense], ground);
      return hit ? [{ ...hit, sense }] : [];
    });
    const hit = hits.sort((a, b) => a.distance - b.distance)[0];
    if (!hit) return [];
    // From the wall inwards: how far into the grid it stands, in tiles, seen along the way to the detector.
    const edge = hit.sense < 0 ? place(hit.foot) : -place(hit.foot);
    const ownFromWall = hit.sense < 0 ? own : -own - 1;
    const firstWhole = Math.ceil(edge - tileTolerance / tile);
    const cut = Math.max(0, (firstWhole - edge) * tile);
    return [
      {
        kind: "tiles",
        wall: hit.wall,
        foot: hit.foot,
        distance: hit.distance,
        tiles: ownFromWall - firstWhole + 1,
        cutTile: cut > tileTolerance ? cut : 0,
      },
    ];
  });
}

function firstWall(
  at: Point,
  way: Point,
  ground: Ground,
): { readonly wall: number; readonly foot: Point; readonly distance: number } | undefined {
  let best: { wall: number; foot: Point; distance: number } | undefined;
  for (const [wall, face] of ground.faces.entries()) {
    const [dx, dy] = [face.to[0] - face.from[0], face.to[1] - face.from[1]];
    const cross = way[0] * dy - way[1] * dx;
    if (Math.abs(cross) < 1e-9) continue;
    const [ex, ey] = [face.from[0] - at[0], face.from[1] - at[1]];
    const distance = (ex * dy - ey * dx) / cross;
    const share = (ex * way[1] - ey * way[0]) / cross;
    if (distance <= 0 || share < 0 || share > 1) continue;
    if (!best || distance < best.distance)
      best = { wall, foot: [at[0] + way[0] * distance, at[1] + way[1] * distance], distance };
  }
  return best && reaches(at, best.foot, { wall: best.wall, ground }) ? best : undefined;
}

/** Whether a tape held at the ceiling runs free from a place to a foot on a wall, and finds wall there. */
function reaches(at: Point, foot: Point, on: { readonly wall: number; readonly ground: Ground }): boolean {
  const { faces, blocks, gaps } = on.ground;
  // A hair short of the foot, so that the wall itself does not count as in the way.
  const end: Point = [foot[0] + (at[0] - foot[0]) * 1e-4, foot[1] + (at[1] - foot[1]) * 1e-4];
  if (faces.some((face, i) => i !== on.wall && meet([at, end], [face.from, face.to]))) return false;
  if (blocks.some((one) => contains(regionOf(one.footprint), end))) return false;
  if (
    blocks.some((one) =>
      one.footprint.some((a, i) => meet([at, end], [a, one.footprint[(i + 1) % one.footprint.length]!])),
    )
  )
    return false;
  return !gaps.some((gap) => onOpening(foot, gap));
}

const sine = (a: WallFace, b: WallFace): number => {
  const [ax, ay, bx, by] = [
    a.to[0] - a.from[0],
    a.to[1] - a.from[1],
    b.to[0] - b.from[0],
    b.to[1] - b.from[1],
  ];
  return (ax * by - ay * bx) / (Math.hypot(ax, ay) * Math.hypot(bx, by));
};

function meet([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  const turn = (p: Point, q: Point, r: Point): number =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/** The second room's face lies a wall's thickness away from the line that was surveyed. */
const onOpening = (foot: Point, opening: Opening): boolean =>
  distanceTo(foot, opening) < opening.thickness + 0.05;

const distanceTo = (point: Point, { from, to }: Opening): number => distanceToSegment(point, [from, to]);
