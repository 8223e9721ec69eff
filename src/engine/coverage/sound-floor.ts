import { difference, type Outline, type Point, type Region, regionOf, union } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Site } from "../site/index.ts";
import type { FittedReveal } from "./fitted-reveal.ts";
import type { Prism, ScenePart } from "./scene.ts";
import type { WallLine } from "./wall-lines.ts";

/** An obstacle that ends this near to the ceiling stops sound as one that reaches it. [m] @source COMMON-PRACTICE */
const NEAR_CEILING: Metres = 0.05;

/** Reveals reach this far into their rooms, so that the grain of a turned plan leaves no slit between them in which sound ends. [m] */
const JOIN: Metres = 1e-3;

/** Half the thickness that a wall without thickness gets between two rooms that share it: a few grains. [m] */
const PARTED: Metres = 5e-5;

/** Edges of two rooms nearer to each other than this are one wall. [m] */
const SHARED: Metres = 1e-3;

/**
 * Floor that sound crosses: rooms and open reveals less obstacles from floor to ceiling.
 *
 * Rooms that share an outline stay parted by it, but for their open openings.
 *
 * @param part - Rooms that open reveals join. @param site - The site, for what its obstacles and rooms are.
 * @returns Region without slits where a reveal meets its rooms. [m]
 * @source DERIVED-HERE
 * @example Two rooms of 12 m² and an open door 1 m wide in a wall of 0.2 m: 24.2 m² in one piece
 */
export function soundFloor(part: ScenePart, site: Site): Region {
  const spaces = union([
    ...part.rooms.map((room): Region => [{ outline: room.outline, holes: room.holes }]),
    ...part.reveals.map(throughRooms),
  ]);
  const solid = part.prisms
    .filter((prism) => prism.kind === "obstacle" && reachesCeiling(prism, site))
    .flatMap((prism) => prism.rings.map((ring) => regionOf(ring)));
  return difference(spaces, union([...solid, ...sharedWalls(part)]));
}

/** A reveal that reaches a little into the rooms on both of its sides. */
function throughRooms({ near, far, reaches, reveal }: FittedReveal): Region {
  const [tx, ty] = reveal.through;
  const moved = (p: Point, by: Metres): Point => [p[0] + by * tx, p[1] + by * ty];
  const beyond = reaches ? JOIN : 0;
  return regionOf([
    moved(near[0], -JOIN),
    moved(near[1], -JOIN),
    moved(far[1], beyond),
    moved(far[0], beyond),
  ]);
}

/** Walls that two rooms of a part share without thickness, as thin as the grain allows. */
function sharedWalls(part: ScenePart): readonly Region[] {
  return part.walls
    .filter((line) => isShared(line, part))
    .map(({ a, b }) => {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [ux, uy] = [(PARTED * (b[0] - a[0])) / length, (PARTED * (b[1] - a[1])) / length];
      return regionOf([
        [a[0] - ux + uy, a[1] - uy - ux],
        [b[0] + ux + uy, b[1] + uy - ux],
        [b[0] + ux - uy, b[1] + uy + ux],
        [a[0] - ux - uy, a[1] - uy + ux],
      ]);
    });
}

function isShared(line: WallLine, part: ScenePart): boolean {
  const { a, b } = line;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length < SHARED) return false;
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const along = (p: Point): Metres => (p[0] - a[0]) * ux + (p[1] - a[1]) * uy;
  const aside = (p: Point): Metres => Math.abs((p[0] - a[0]) * uy - (p[1] - a[1]) * ux);
  const meets = (ring: Outline): boolean =>
    ring.some((p, i) => {
      const q = ring[(i + 1) % ring.length] as Point;
      if (aside(p) > SHARED || aside(q) > SHARED) return false;
      const [from, to] = [Math.min(along(p), along(q)), Math.max(along(p), along(q))];
      return from < length - SHARED && to > SHARED;
    });
  return part.rooms.some((room) => room.id !== line.room && [room.outline, ...room.holes].some(meets));
}

/** Obstacles that reach from the floor they stand on to the ceiling of their room, wherever they stick out of it. */
function reachesCeiling(prism: Prism, site: Site): boolean {
  const obstacle = site.obstacles.find((one) => one.id === prism.id);
  const room = site.rooms.find((one) => one.id === obstacle?.room);
  return (
    obstacle !== undefined &&
    room !== undefined &&
    obstacle.base <= NEAR_CEILING &&
    prism.top >= room.floor + room.ceilingHeight - NEAR_CEILING
  );
}
