import { maskContains, reachTowards, type ZoneKind } from "../detector/index.ts";
import type { Outline, Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Room, Site } from "../site/index.ts";
import { type FittedReveal, fittedReveal } from "./fitted-reveal.ts";
import { standingHeight } from "./floors.ts";
import type { DoorState } from "./results.ts";
import { isOpenToSight, leafOf } from "./scene.ts";
import { planningReach, sightHeightOf } from "./zone.ts";
import type { DeviceLike } from "./zone-types.ts";

/** A question to the plain ray test. */
export interface SeesQuestion {
  readonly device: DeviceLike;
  readonly storey: string;
  readonly kind: Exclude<ZoneKind, "sound">;
  readonly doors: DoorState;
  readonly sightHeight?: Metres;
}

/**
 * Whether a detector covers a person at a point, by following the one straight ray between them: slow, and obviously right.
 *
 * It shares the definitions of reach, reveal, leaf and floor with the zones, but none of their sight: it cuts the ray at every edge and height of
 * every solid and asks of the middle of each piece what is there. The zones are checked against it.
 *
 * @param site - Snapshot of the job. @param question - Detector, storey, kind, doors, sight height.
 * @returns A test for points. [m]
 * @source SIGHT-GEOMETRY
 * @example sees(site, question)([2, 3])
 */
export function sees(site: Site, question: SeesQuestion): (point: Point) => boolean {
  const { device, kind, doors } = question;
  const rooms = site.rooms.filter((room) => room.storey === question.storey);
  const reveals = openReveals(site, { rooms, doors });
  const solids = solidsOf(site, { rooms, reveals });
  const sight = question.sightHeight ?? sightHeightOf(kind, site.defaults);
  const home = roomOf(device.at, { rooms, reveals });
  if (!home) return () => false;
  const lens = groundAt(site, home, device.at) + device.height;
  return (point) => {
    const room = roomOf(point, { rooms, reveals });
    if (!room) return false;
    const floor = groundAt(site, room, point);
    const plane = floor + sight;
    if (plane >= lens) return false;
    const reach = planningReach(site.defaults, {
      device,
      kind,
      height: lens - floor,
      sight,
      purpose: "coverage",
      temperature: room.highestTemperature ?? 22,
    });
    const [dx, dy] = [point[0] - device.at[0], point[1] - device.at[1]];
    const azimuth = Math.atan2(dy, dx) - device.turn;
    const distance = Math.hypot(dx, dy);
    if (distance > reachTowards(reach.shape, azimuth)) return false;
    const offNadir = Math.atan2(distance, lens - plane);
    if (device.masks.some((mask) => maskContains(mask, { azimuth, offNadir }))) return false;
    const ray = { from: device.at, to: point, lens, plane };
    return staysInRooms(ray, { rooms, reveals }) && !solids.some((solid) => blocks(solid, ray));
  };
}

interface Spaces {
  readonly rooms: readonly Room[];
  readonly reveals: readonly FittedReveal[];
}

interface Ray {
  readonly from: Point;
  readonly to: Point;
  readonly lens: Metres;
  readonly plane: Metres;
}

interface Solid {
  readonly footprint: Outline;
  readonly base: Metres;
  readonly top: Metres;
}

function openReveals(
  site: Site,
  options: { readonly rooms: readonly Room[]; readonly doors: DoorState },
): readonly FittedReveal[] {
  return site.openings.flatMap((opening) => {
    const first = options.rooms.find((room) => room.id === opening.rooms[0]);
    const second = options.rooms.find((room) => room.id === opening.rooms[1]);
    const fitted =
      first && isOpenToSight(opening, options.doors) ? fittedReveal(opening, { first, second }) : undefined;
    return fitted ? [fitted] : [];
  });
}

function solidsOf(site: Site, spaces: Spaces): readonly Solid[] {
  const solids: Solid[] = [];
  for (const obstacle of site.obstacles) {
    const room = spaces.rooms.find((one) => one.id === obstacle.room);
    if (!room || obstacle.seeThrough) continue;
    const xs = obstacle.footprint.map(([x]) => x);
    const ys = obstacle.footprint.map(([, y]) => y);
    const middle: Point = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
    const ground = groundAt(site, room, middle);
    solids.push({ footprint: obstacle.footprint, base: ground + obstacle.base, top: ground + obstacle.top });
  }
  for (const fitted of spaces.reveals) {
    const { opening, near, far, reveal } = fitted;
    const room = spaces.rooms.find((one) => one.id === opening.rooms[0]);
    if (!room) continue;
    const step: Point = [
      (near[0][0] + near[1][0]) / 2 - 0.01 * reveal.through[0],
      (near[0][1] + near[1][1]) / 2 - 0.01 * reveal.through[1],
    ];
    const ground = groundAt(site, room, step);
    const footprint = [near[0], near[1], far[1], far[0]];
    solids.push({ footprint, base: ground + opening.head, top: Infinity });
    if (opening.sill > 0) solids.push({ footprint, base: -Infinity, top: ground + opening.sill });
    const leaf = opening.kind === "door" ? leafOf(fitted) : undefined;
    if (leaf) solids.push({ footprint: leaf, base: ground, top: ground + opening.head });
  }
  return solids;
}

function groundAt(site: Site, room: Room, at: Point): Metres {
  return standingHeight({ room, pieces: site.floorPieces.filter((piece) => piece.room === room.id) }, at);
}

function roomOf(point: Point, spaces: Spaces): Room | undefined {
  const room = spaces.rooms.find((one) => isInRoom(one, point));
  if (room) return room;
  const fitted = spaces.reveals.find((one) => isInRing(quadOf(one), point));
  return fitted && spaces.rooms.find((one) => one.id === fitted.opening.rooms[0]);
}

/** Follows the ray from space to space: from room to reveal to room, never straight from one room into another. */
function staysInRooms(ray: Ray, spaces: Spaces): boolean {
  const rings = [
    ...spaces.rooms.flatMap((room) => [room.outline, ...room.holes]),
    ...spaces.reveals.map(quadOf),
  ];
  const cuts = [0, ...rings.flatMap((ring) => cutsOf(ring, ray)), 1].toSorted((a, b) => a - b);
  let before: readonly string[] | undefined;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [u, v] = [cuts[i] as number, cuts[i + 1] as number];
    if (v - u < 1e-9) continue;
    const middle = pointOn(ray, (u + v) / 2);
    const here = [
      ...spaces.rooms.filter((room) => isInRoom(room, middle)).map((room) => room.id),
      ...spaces.reveals
        .filter((one) => isInRing(quadOf(one), middle))
        .map((one) => `reveal ${one.opening.id}`),
    ];
    if (here.length === 0) return false;
    const crossed = pointOn(ray, u);
    if (before && !before.some((a) => here.some((b) => leads(a, b)))) {
      if (!spaces.reveals.some((one) => isThin(one) && isOn(one.near, crossed))) return false;
    }
    before = here;
  }
  return true;

  function leads(a: string, b: string): boolean {
    if (a === b) return true;
    return spaces.reveals.some(({ opening }) => {
      const reveal = `reveal ${opening.id}`;
      return (a === reveal && opening.rooms.includes(b)) || (b === reveal && opening.rooms.includes(a));
    });
  }
}

/** Cuts the ray at the footprint's edges and at the two heights; it is blocked if the middle of a piece lies in the solid. */
function blocks(solid: Solid, ray: Ray): boolean {
  const fall = ray.plane - ray.lens;
  const heights = [(solid.base - ray.lens) / fall, (solid.top - ray.lens) / fall].filter(
    (u) => u > 0 && u < 1,
  );
  const cuts = [0, ...cutsOf(solid.footprint, ray), ...heights, 1].toSorted((a, b) => a - b);
  for (let i = 0; i + 1 < cuts.length; i++) {
    const middle = ((cuts[i] as number) + (cuts[i + 1] as number)) / 2;
    const z = ray.lens + middle * fall;
    if (z > solid.base && z < solid.top && isInRing(solid.footprint, pointOn(ray, middle))) return true;
  }
  // A solid without width is crossed at a single place.
  if (!isFlat(solid.footprint)) return false;
  return cutsOf(solid.footprint, ray).some(
    (u) => ray.lens + u * fall > solid.base && ray.lens + u * fall < solid.top,
  );
}

const quadOf = (fitted: FittedReveal): Outline => [
  fitted.near[0],
  fitted.near[1],
  fitted.far[1],
  fitted.far[0],
];
const pointOn = (ray: Ray, u: number): Point => [
  ray.from[0] + u * (ray.to[0] - ray.from[0]),
  ray.from[1] + u * (ray.to[1] - ray.from[1]),
];
const isInRoom = (room: Room, p: Point): boolean =>
  isInRing(room.outline, p) && !room.holes.some((hole) => isInRing(hole, p));
const isThin = (fitted: FittedReveal): boolean => isFlat(quadOf(fitted));
const isOn = ([a, b]: readonly [Point, Point], p: Point): boolean =>
  Math.hypot(p[0] - a[0], p[1] - a[1]) + Math.hypot(p[0] - b[0], p[1] - b[1]) <
  Math.hypot(a[0] - b[0], a[1] - b[1]) + 1e-6;

function isFlat(ring: Outline): boolean {
  const [x0, y0] = ring[0] as Point;
  let area = 0;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] as Point;
    area += (a[0] - x0) * (b[1] - y0) - (b[0] - x0) * (a[1] - y0);
  }
  return Math.abs(area) < 1e-6;
}

function isInRing(ring: Outline, p: Point): boolean {
  let inside = false;
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] as Point;
    if (a[1] > p[1] === b[1] > p[1]) continue;
    if (p[0] < a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
  }
  return inside;
}

/** Shares of the ray's way at which it meets the edges of a ring. */
function cutsOf(ring: Outline, ray: Ray): readonly number[] {
  const cuts: number[] = [];
  const [dx, dy] = [ray.to[0] - ray.from[0], ray.to[1] - ray.from[1]];
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] as Point;
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const det = dx * ey - dy * ex;
    if (det === 0) continue;
    const u = ((a[0] - ray.from[0]) * ey - (a[1] - ray.from[1]) * ex) / det;
    const t = ((a[0] - ray.from[0]) * dy - (a[1] - ray.from[1]) * dx) / det;
    if (u > 0 && u < 1 && t >= -1e-12 && t <= 1 + 1e-12) cuts.push(u);
  }
  return cuts;
}
