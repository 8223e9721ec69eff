import type { ZoneRow } from "../detector/index.ts";
import { type Outline, type Point, signedArea } from "../geometry/index.ts";
import type { Site } from "../site/index.ts";

/** A motion of the plan that keeps all distances; it may turn it over. */
export type Motion = (point: Point) => Point;

export const turnedBy =
  (angle: number): Motion =>
  ([x, y]) => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];

/** Turned by odd angles, mirrored, moved by 10 km, and all of it at once. */
export const motions: Readonly<Record<string, Motion>> = {
  "turned by 0.01": turnedBy(0.01),
  "turned by 0.7": turnedBy(0.7),
  "turned by 2.3": turnedBy(2.3),
  mirrored: ([x, y]) => [-x, y],
  "moved by 10 km": ([x, y]) => [x + 10_000, y - 10_000],
  "mirrored, turned and moved": (point) => {
    const [x, y] = turnedBy(1.1)([point[1], point[0]]);
    return [x - 10_000, y + 4_000];
  },
};

/** Direction in the moved plan of what pointed in a direction. [rad] */
export function movedDirection(angle: number, move: Motion): number {
  const [origin, along] = [move([0, 0]), move([Math.cos(angle), Math.sin(angle)])];
  return Math.atan2(along[1] - origin[1], along[0] - origin[0]);
}

/** A site in another frame: places move, notches turn, and where it is turned over, so are masks and polar outlines. */
export function movedSite(site: Site, move: Motion): Site {
  const ring = (one: Outline): Outline => one.map(move);
  const isOver =
    signedArea(
      ring([
        [0, 0],
        [1, 0],
        [0, 1],
      ]),
    ) < 0;
  const row = (one: ZoneRow): ZoneRow =>
    "outline" in one
      ? { ...one, outline: one.outline.map(([angle, radius]) => [-angle, radius] as const) }
      : one;
  return {
    ...site,
    rooms: site.rooms.map((room) => ({ ...room, outline: ring(room.outline), holes: room.holes.map(ring) })),
    floorPieces: site.floorPieces.map((one) => ({
      ...one,
      footprint: ring(one.footprint),
      from: move(one.from),
      to: move(one.to),
    })),
    openings: site.openings.map((one) => ({ ...one, from: move(one.from), to: move(one.to) })),
    obstacles: site.obstacles.map((one) => ({ ...one, footprint: ring(one.footprint) })),
    dwellPlaces: site.dwellPlaces.map((one) => ({ ...one, at: move(one.at) })),
    detectors: site.detectors.map((one) => ({
      ...one,
      at: move(one.at),
      turn: movedDirection(one.turn, move),
      masks: isOver ? one.masks.map((mask) => ({ ...mask, from: -mask.to, to: -mask.from })) : one.masks,
    })),
    models: isOver
      ? site.models.map((model) => ({
          ...model,
          zones: Object.fromEntries(Object.entries(model.zones).map(([kind, rows]) => [kind, rows.map(row)])),
        }))
      : site.models,
  };
}
