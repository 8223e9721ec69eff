import {
  type Bounds,
  boundsOf,
  contains,
  inset,
  type Outline,
  outset,
  type Point,
  type Region,
  regionOf,
  ringsOf,
  selfCrossing,
  signedArea,
  union,
} from "../geometry/index.ts";
import type { Celsius, Metres } from "../quantity/index.ts";
import { type FloorPiece, lookUp, type Obstacle, type Opening, type Room, type Site } from "../site/index.ts";
import { type FittedReveal, fittedReveal } from "./fitted-reveal.ts";
import { type FloorPatch, floorPatches, standingHeight } from "./floors.ts";
import type { DoorState } from "./results.ts";
import { type WallLine, wallLines } from "./wall-lines.ts";

export interface SceneOptions {
  readonly storey: string;
  readonly doors: DoorState;
  /** Solids shrunk by this much on all sides, for bounds that must hold. */
  readonly eroded?: Metres;
}

/** The solids of a storey, prepared once for many zones. */
export interface Scene extends SceneOptions {
  readonly site: Site;
  readonly parts: readonly ScenePart[];
}

/** Rooms that sight joins through open openings, with what surrounds and fills them. */
export interface ScenePart {
  readonly rooms: readonly Room[];
  readonly reveals: readonly FittedReveal[];
  readonly walls: readonly WallLine[];
  readonly prisms: readonly Prism[];
  readonly levels: readonly Level[];
  readonly bounds: Bounds;
}

/** A solid: rings counter-clockwise (holes clockwise) between two heights above the storey's floor. */
export interface Prism {
  readonly kind: "obstacle" | "door-leaf" | "opening";
  readonly id: string;
  readonly name: string;
  readonly rings: readonly Outline[];
  readonly base: Metres;
  readonly top: Metres;
  readonly bounds: Bounds;
}

/** Floor at one height in rooms that get equally warm. */
export interface Level {
  /** Above the storey's floor. [m] */
  readonly height: Metres;
  readonly temperature: Celsius;
  /** Absent where the part has one level only: all of it. */
  readonly region: Region | undefined;
}

/** Thickness of a door's leaf. [m] @source COMMON-PRACTICE */
export const LEAF_THICKNESS: Metres = 0.04;

/** Temperature of a room that nobody gave one. [°C] @source COMMON-PRACTICE */
const ORDINARY: Celsius = 22;

/**
 * The solids of a storey for one state of its doors: everything outside rooms and open reveals, lintels and sills, open leaves, obstacles.
 *
 * Walls are lines: the outlines of the rooms less their open openings, and the jambs of these. Two rooms that share an outline are so still parted by it.
 *
 * @param site - Snapshot of the job.
 * @param options - Storey, doors, and erosion for bounds.
 * @returns Parts that no sight joins; see-through obstacles are left out, glass is solid.
 * @source GLASS-HEAT
 * @example A storey of three rooms with closed doors: three parts
 */
export function sceneOf(site: Site, options: SceneOptions): Scene {
  const look = lookUp(site);
  const rooms = site.rooms.filter((room) => room.storey === options.storey && room.outline.length >= 3);
  const reveals = site.openings
    .filter((opening) => isOpenToSight(opening, options.doors))
    .flatMap((opening) => {
      const first = rooms.find((room) => room.id === opening.rooms[0]);
      const second = rooms.find((room) => room.id === opening.rooms[1]);
      const fitted = first && fittedReveal(opening, { first, second });
      return fitted ? [fitted] : [];
    });
  const pieces = rooms.flatMap((room) => look.floorPiecesOf(room.id));
  // Solids stand wherever they stand, also where they stick out of the room that they belong to.
  const prisms = [
    ...rooms.flatMap((room) => obstaclePrisms(room, { look: look.obstaclesOf(room.id), pieces })),
    ...reveals.flatMap((fitted) => openingPrisms(fitted, { rooms, pieces, doors: options.doors })),
  ];
  const parts = joinedRooms(rooms, reveals).map((ids) => {
    const own = rooms.filter((room) => ids.has(room.id));
    const ownReveals = reveals.filter((fitted) => ids.has(fitted.opening.rooms[0]));
    const ownPieces = pieces.filter((piece) => ids.has(piece.room));
    return partOf({ rooms: own, reveals: ownReveals, pieces: ownPieces, prisms }, options.eroded ?? 0);
  });
  return { site, ...options, parts };
}

/** Whether sight passes an opening for a state of the doors: passages always, doors when open, glass never. @example A window: false */
export function isOpenToSight(opening: Opening, doors: DoorState): boolean {
  if (opening.kind === "passage") return true;
  return opening.kind === "door" && (doors === "open" || (doors === "drawn" && opening.state === "open"));
}

/** The part of a scene in whose rooms or reveals a point lies, and the room. @example A point in a wall: undefined */
export function partAt(
  scene: Scene,
  at: Point,
): { readonly part: ScenePart; readonly room: Room } | undefined {
  for (const part of scene.parts) {
    if (
      at[0] < part.bounds.minX ||
      at[0] > part.bounds.maxX ||
      at[1] < part.bounds.minY ||
      at[1] > part.bounds.maxY
    )
      continue;
    const room = part.rooms.find((one) => contains([{ outline: one.outline, holes: one.holes }], at));
    if (room) return { part, room };
    const reveal = part.reveals.find((fitted) => contains(fitted.region, at));
    const first = reveal && part.rooms.find((one) => one.id === reveal.opening.rooms[0]);
    if (first) return { part, room: first };
  }
  return undefined;
}

/** Height on which one stands at a place of a storey. @returns Above the storey's floor [m]; the storey's floor outside all rooms. @example A raised room: its floor */
export function floorIn(scene: Scene, at: Point): Metres {
  const found = partAt(scene, at);
  if (!found) return 0;
  const pieces = scene.site.floorPieces.filter((piece) => piece.room === found.room.id);
  return standingHeight({ room: found.room, pieces }, at);
}

interface PartInput {
  readonly rooms: readonly Room[];
  readonly reveals: readonly FittedReveal[];
  readonly pieces: readonly FloorPiece[];
  readonly prisms: readonly Prism[];
}

function partOf(input: PartInput, eroded: Metres): ScenePart {
  const { rooms, reveals, pieces } = input;
  const spaces = [
    ...rooms.map((room): Region => [{ outline: room.outline, holes: room.holes }]),
    ...reveals.map((fitted) => fitted.region),
  ];
  const bounds = boundsOf(spaces.flatMap(ringsOf));
  const levels = levelsOf(rooms, { reveals, pieces });
  const near = input.prisms.filter((prism) => overlap(prism.bounds, bounds));
  if (eroded === 0) return { rooms, reveals, walls: wallLines(rooms, reveals), prisms: near, levels, bounds };
  // One part in two hundred more than asked, plus ten grains: rounding and chords must not leave a solid too thick.
  const amount = eroded * 1.005 + 1e-4;
  const free = outset(union(spaces), amount);
  const walls = ringsOf(free).flatMap((ring) =>
    ring.map((a, i): WallLine => ({ a, b: ring[(i + 1) % ring.length] as Point, room: "" })),
  );
  const prisms = near.flatMap((prism) => {
    const rings = ringsOf(
      inset(
        prism.rings.flatMap((ring) => regionOf(ring)),
        amount,
      ),
    );
    return rings.length === 0 ? [] : [{ ...prism, rings }];
  });
  return { rooms, reveals, walls, prisms, levels, bounds };
}

const overlap = (a: Bounds, b: Bounds): boolean =>
  a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;

/** Sets of rooms that open reveals join. */
function joinedRooms(
  rooms: readonly Room[],
  reveals: readonly FittedReveal[],
): readonly ReadonlySet<string>[] {
  const setOf = new Map(rooms.map((room) => [room.id, new Set([room.id])]));
  for (const { opening, reaches } of reveals) {
    const [first, second] = [
      setOf.get(opening.rooms[0]),
      opening.rooms[1] === null ? undefined : setOf.get(opening.rooms[1]),
    ];
    if (!first || !second || !reaches || first === second) continue;
    for (const id of second) {
      first.add(id);
      setOf.set(id, first);
    }
  }
  return [...new Set(setOf.values())];
}

function obstaclePrisms(
  room: Room,
  floor: { readonly look: readonly Obstacle[]; readonly pieces: readonly FloorPiece[] },
): readonly Prism[] {
  const pieces = floor.pieces.filter((piece) => piece.room === room.id);
  return floor.look
    .filter(
      (obstacle) => !obstacle.seeThrough && obstacle.footprint.length >= 2 && obstacle.top > obstacle.base,
    )
    .map((obstacle) => {
      const rings = ringsOfFootprint(obstacle.footprint);
      const { minX, minY, maxX, maxY } = boundsOf([obstacle.footprint]);
      const ground = standingHeight({ room, pieces }, [(minX + maxX) / 2, (minY + maxY) / 2]);
      const { id, name, base, top } = obstacle;
      return {
        kind: "obstacle",
        id,
        name,
        rings,
        base: ground + base,
        top: ground + top,
        bounds: { minX, minY, maxX, maxY },
      };
    });
}

/** A footprint as it is where it is simple, also without width; a self-crossing one is joined to simple rings. */
function ringsOfFootprint(footprint: Outline): readonly Outline[] {
  const area = signedArea(footprint);
  if (Math.abs(area) > 0 && selfCrossing(footprint)) return ringsOf(regionOf(footprint));
  return [area < 0 ? footprint.toReversed() : footprint];
}

function openingPrisms(
  fitted: FittedReveal,
  floor: {
    readonly rooms: readonly Room[];
    readonly pieces: readonly FloorPiece[];
    readonly doors: DoorState;
  },
): readonly Prism[] {
  const { opening, near, far } = fitted;
  const room = floor.rooms.find((one) => one.id === opening.rooms[0]);
  if (!room) return [];
  const pieces = floor.pieces.filter((piece) => piece.room === room.id);
  const { through } = fitted.reveal;
  const inside: Point = [
    (near[0][0] + near[1][0]) / 2 - 0.01 * through[0],
    (near[0][1] + near[1][1]) / 2 - 0.01 * through[1],
  ];
  const ground = standingHeight({ room, pieces }, inside);
  const quad: Outline = [near[0], near[1], far[1], far[0]];
  const ring = signedArea(quad) < 0 ? quad.toReversed() : quad;
  const filled = (part: { readonly base: Metres; readonly top: Metres }): Prism => ({
    kind: "opening",
    id: opening.id,
    name: opening.kind,
    rings: [ring],
    ...part,
    bounds: boundsOf([ring]),
  });
  const prisms = [filled({ base: ground + opening.head, top: Infinity })];
  if (opening.sill > 0) prisms.push(filled({ base: -Infinity, top: ground + opening.sill }));
  const leaf = opening.kind === "door" ? leafOf(fitted) : undefined;
  if (leaf) {
    const solid = { base: ground, top: ground + opening.head, bounds: boundsOf([leaf]) };
    prisms.push({ kind: "door-leaf", id: opening.id, name: opening.kind, rings: [leaf], ...solid });
  }
  return prisms;
}

/** Footprint of the open leaf, hung at the face of the room into which it swings; undefined where it swings outside. */
export function leafOf(fitted: FittedReveal): Outline | undefined {
  const { opening, reveal } = fitted;
  if (opening.opensInto === null || !opening.rooms.includes(opening.opensInto)) return undefined;
  const first = opening.opensInto === opening.rooms[0];
  const face = first ? fitted.near : fitted.far;
  const inward: Point = first ? [-reveal.through[0], -reveal.through[1]] : reveal.through;
  const [pivot, strike] = opening.hinge === "from" ? [face[0], face[1]] : [face[1], face[0]];
  const width = Math.hypot(strike[0] - pivot[0], strike[1] - pivot[1]);
  const shut: Point = [(strike[0] - pivot[0]) / width, (strike[1] - pivot[1]) / width];
  const [c, s] = [Math.cos(opening.angle), Math.sin(opening.angle)];
  const along: Point = [c * shut[0] + s * inward[0], c * shut[1] + s * inward[1]];
  // Shut, the leaf fills the reveal from the face inwards; turned with it, that side looks along the opening.
  const thick: Point = [
    LEAF_THICKNESS * (s * shut[0] - c * inward[0]),
    LEAF_THICKNESS * (s * shut[1] - c * inward[1]),
  ];
  const end: Point = [pivot[0] + width * along[0], pivot[1] + width * along[1]];
  const ring: Outline = [
    pivot,
    end,
    [end[0] + thick[0], end[1] + thick[1]],
    [pivot[0] + thick[0], pivot[1] + thick[1]],
  ];
  return signedArea(ring) < 0 ? ring.toReversed() : ring;
}

function levelsOf(
  rooms: readonly Room[],
  floor: { readonly reveals: readonly FittedReveal[]; readonly pieces: readonly FloorPiece[] },
): readonly Level[] {
  const groups = new Map<string, { height: Metres; temperature: Celsius; regions: Region[] }>();
  const put = (patch: FloorPatch, temperature: Celsius): void => {
    const key = `${Math.round(patch.height * 1e6)} ${temperature}`;
    const group = groups.get(key);
    if (group) group.regions.push(patch.region);
    else groups.set(key, { height: patch.height, temperature, regions: [patch.region] });
  };
  const patchesOf = (room: Room) =>
    floorPatches(
      room,
      floor.pieces.filter((piece) => piece.room === room.id),
    );
  for (const room of rooms)
    for (const patch of patchesOf(room)) put(patch, room.highestTemperature ?? ORDINARY);
  for (const fitted of floor.reveals) {
    const room = rooms.find((one) => one.id === fitted.opening.rooms[0]);
    if (room && fitted.region.length > 0)
      put(
        { region: fitted.region, height: revealFloor(fitted, { room, pieces: floor.pieces }) },
        room.highestTemperature ?? ORDINARY,
      );
  }
  const single = groups.size === 1;
  return [...groups.values()].map(({ height, temperature, regions }) => ({
    height,
    temperature,
    region: single ? undefined : union(regions),
  }));
}

/** Floor in a reveal: that of its first room where one steps into it. [m] */
export function revealFloor(
  fitted: FittedReveal,
  floor: { readonly room: Room; readonly pieces: readonly FloorPiece[] },
): Metres {
  const { near, reveal } = fitted;
  const pieces = floor.pieces.filter((piece) => piece.room === floor.room.id);
  const inside: Point = [
    (near[0][0] + near[1][0]) / 2 - 0.01 * reveal.through[0],
    (near[0][1] + near[1][1]) / 2 - 0.01 * reveal.through[1],
  ];
  return standingHeight({ room: floor.room, pieces }, inside);
}
