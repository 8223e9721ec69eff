import type { Metres, Obstacle, Opening, Outline, Point, Radians, Region, Room } from "#engine";
import { type Direction, directionOf, type Eye } from "./direction.ts";

/** Spacing at which straight edges are followed; they are curves for the eye. */
const step: Metres = 0.1;
/** Azimuths at which the nearest wall is looked for. */
const rays = 720;

/** Points along an edge, its ends included. */
export function along([ax, ay]: Point, [bx, by]: Point): readonly Point[] {
  const count = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / step));
  return Array.from({ length: count + 1 }, (_, index): Point => {
    const share = index / count;
    return [ax + (bx - ax) * share, ay + (by - ay) * share];
  });
}

/** Distance to the nearest wall of a room in one direction of the plan; undefined where there is none. */
export function wallDistance(rings: readonly Outline[], [x, y]: Point, heading: Radians): Metres | undefined {
  const [dx, dy] = [Math.cos(heading), Math.sin(heading)];
  let nearest: Metres | undefined;
  for (const ring of rings)
    for (const [index, [ax, ay]] of ring.entries()) {
      const [bx, by] = ring[(index + 1) % ring.length]!;
      const cross = dx * (by - ay) - dy * (bx - ax);
      if (cross === 0) continue;
      const distance = ((ax - x) * (by - ay) - (ay - y) * (bx - ax)) / cross;
      const share = ((ax - x) * dy - (ay - y) * dx) / cross;
      if (share < 0 || share > 1 || distance <= 0) continue;
      if (nearest === undefined || distance < nearest) nearest = distance;
    }
  return nearest;
}

/** Where the floor ends at the walls, all the way round. */
export function floorEdge(eye: Eye, room: Pick<Room, "outline" | "holes">): readonly Direction[] {
  const rings = [room.outline, ...room.holes];
  return Array.from({ length: rays }, (_, index): Direction => {
    const heading = (index * 2 * Math.PI) / rays;
    const distance = wallDistance(rings, eye.at, heading) ?? 0;
    const at: Point = [eye.at[0] + Math.cos(heading) * distance, eye.at[1] + Math.sin(heading) * distance];
    return directionOf(eye, at, 0);
  });
}

/** Whether nothing of the room's walls stands before a place, apart from the wall it lies in. */
export function inView(eye: Eye, room: Pick<Room, "outline" | "holes">, [x, y]: Point): boolean {
  const [dx, dy] = [x - eye.at[0], y - eye.at[1]];
  const wall = wallDistance([room.outline, ...room.holes], eye.at, Math.atan2(dy, dx));
  // An opening lies in the wall, or behind it by the wall's thickness in the room on its other side.
  return wall === undefined || Math.hypot(dx, dy) <= wall + 0.6;
}

/** The hole of an opening: its upper edge one way, its lower edge back; only the part that is in view. */
export function openingFace(eye: Eye, room: Room, { from, to, sill, head }: Opening): readonly Direction[] {
  const points = along(from, to).filter((point) => inView(eye, room, point));
  return [
    ...points.map((point) => directionOf(eye, point, head)),
    ...points.toReversed().map((point) => directionOf(eye, point, sill)),
  ];
}

/** A side or the top of an obstacle. */
export interface Face {
  readonly key: string;
  readonly distance: Metres;
  readonly edge: readonly Direction[];
}

/** Faces of an obstacle, the farthest first, so that nearer ones are drawn over them. */
export function obstacleFaces(eye: Eye, room: Room, obstacle: Obstacle): readonly Face[] {
  const { footprint, base } = obstacle;
  const top = Math.min(obstacle.top, eye.height);
  if (!footprint.some((point) => inView(eye, room, point))) return [];
  const sides = footprint.map((a, index): Face => {
    const points = along(a, footprint[(index + 1) % footprint.length]!);
    return {
      key: `${obstacle.id} ${index}`,
      distance: Math.min(...points.map((point) => distance(eye, point))),
      edge: [
        ...points.map((point) => directionOf(eye, point, top)),
        ...points.toReversed().map((point) => directionOf(eye, point, base)),
      ],
    };
  });
  const lid: readonly Face[] =
    obstacle.top < eye.height
      ? [{ key: `${obstacle.id} top`, distance: -1, edge: ringDirections(eye, footprint, obstacle.top) }]
      : [];
  return [...sides.sort((a, b) => b.distance - a.distance), ...lid];
}

/** A ring of the plan at a height. */
export const ringDirections = (eye: Eye, ring: Outline, height: Metres): readonly Direction[] =>
  ring.flatMap((point, index) =>
    along(point, ring[(index + 1) % ring.length]!)
      .slice(0, -1)
      .map((between) => directionOf(eye, between, height)),
  );

/** Edges of a zone at the height at which a person is seen. */
export const zoneEdges = (eye: Eye, region: Region, height: Metres): readonly (readonly Direction[])[] =>
  region
    .flatMap(({ outline, holes }) => [outline, ...holes])
    .map((ring) => ringDirections(eye, ring, height));

export const circle = ([x, y]: Point, radius: Metres): Outline =>
  Array.from({ length: 24 }, (_, index): Point => {
    const angle = (index * Math.PI) / 12;
    return [x + Math.cos(angle) * radius, y + Math.sin(angle) * radius];
  });

const distance = ({ at }: Eye, [x, y]: Point): Metres => Math.hypot(x - at[0], y - at[1]);
