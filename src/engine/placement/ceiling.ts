import { joined, type Said, say } from "../check/index.ts";
import {
  areaOf,
  boundsOf,
  difference,
  distanceToRings,
  distanceToSegment,
  inset,
  intersection,
  type Outline,
  outlineContains,
  outset,
  type Point,
  placeInRegion,
  type Region,
  regionOf,
  ringsOf,
  union,
} from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import {
  type CeilingThing,
  clearanceOf,
  floorHeight,
  floorOf,
  type Luminaire,
  type Room,
  type SiteLookUp,
} from "../site/index.ts";

/** Why nothing may be mounted at a place. */
export type Refusal =
  | "outside"
  | "wall"
  | "no-devices"
  | "luminaire"
  | "heat-or-air"
  | "smoke-head"
  | "ceiling-thing"
  | "obstacle";

/** Why no place is left, in the order in which the reasons came. @param refused - Places by the reason for which they were refused. @returns Words for a sentence. @example 12 at the wall and 3 at luminaires: "12 wall, 3 luminaire" */
export const whyNoPlace = (refused: ReadonlyMap<Refusal, number>): Said =>
  refused.size === 0
    ? say`no grid place inside`
    : joined(
        [...refused].map(([why, count]) => refusedFor[why](count)),
        ", ",
      );

const refusedFor: Readonly<Record<Refusal, (count: number) => Said>> = {
  outside: (count) => say`${count} outside`,
  wall: (count) => say`${count} wall`,
  "no-devices": (count) => say`${count} where no devices may hang`,
  luminaire: (count) => say`${count} luminaire`,
  "heat-or-air": (count) => say`${count} heat or air`,
  "smoke-head": (count) => say`${count} smoke head`,
  "ceiling-thing": (count) => say`${count} ceiling thing`,
  obstacle: (count) => say`${count} obstacle`,
};

/** Where on the ceiling of a room devices may be mounted. */
export interface Ceiling {
  readonly room: Room;
  /** The allowed part; its round edges lie on the generous side by less than two millimetres. [m] */
  readonly allowed: Region;
  /** Why a place is refused; undefined where a device may be mounted. */
  readonly refusal: (at: Point) => Refusal | undefined;
  /** Height of the ceiling above the local floor. [m] */
  readonly heightAt: (at: Point) => Metres;
}

/** Speakers, hatches and signs need room for the device's own body and the hand beside it. [m] @source COMMON-PRACTICE */
const BESIDE_CEILING_THING: Metres = 0.2;
/** Things nearer to the ceiling than this leave no room for a device under them. [m] @source COMMON-PRACTICE */
const UNDER_CEILING: Metres = 0.15;
/** Parts of a narrow strip smaller than this are the rest of a sharp corner, not a place. [m²] */
const CORNER_REST = 0.01;
/** Distances are compared with this much in hand, so that 0.5 m drawn as 0.49999 m is 0.5 m. [m] */
const DRAWN: Metres = 1e-4;

interface Kept {
  readonly why: Refusal;
  readonly ring: Outline;
  readonly clear: Metres;
}

/**
 * Where devices may be mounted: clear of walls by the default or by what a narrow part allows, but never under the least; clear of
 * luminaires, hot lamps, air outlets, heaters, air curtains, smoke heads, sprinklers and other things; outside areas that a person forbids.
 *
 * @param look - The site's records at hand.
 * @param options.walls - "clear": the default clearance of walls where there is room for it; "least": the least clearance everywhere.
 * @returns Allowed part of the ceiling and the test for single places.
 * @source COMMON-PRACTICE
 * @example An empty room 4 × 3 m: 3 × 2 m are allowed; a corridor 0.8 m wide: a strip of 0.4 m
 */
export function ceilingOf(
  look: SiteLookUp,
  options: { readonly room: Room; readonly walls: "clear" | "least" },
): Ceiling {
  const { room, walls } = options;
  const floor = floorOf(room);
  const pieces = look.floorPiecesOf(room.id);
  const heightAt = (at: Point): Metres => room.ceilingHeight - floorHeight(pieces, at);
  const clear = wallClearance(floor, { clearances: look.site.defaults.clearances, walls });
  const kept = keptClear(look, room);
  const boxes = kept.map(({ ring, clear: distance }) => boxRound(ring, distance));
  const taken = union(kept.map(({ ring, clear: distance }) => grown(ring, distance - DRAWN)));
  const edges = ringsOf(floor);
  return {
    room,
    allowed: difference(clear.region, taken),
    heightAt,
    refusal: (at) => {
      if (placeInRegion(floor, at) !== "inside") return "outside";
      if (distanceToRings(at, edges) < clear.distanceAt(at) - DRAWN) return "wall";
      return kept.find(
        ({ ring, clear: distance }, index) =>
          boxes[index]!(at) && (distanceToThing(at, ring) < distance - DRAWN || outlineHolds(ring, at)),
      )?.why;
    },
  };
}

interface WallClearance {
  readonly region: Region;
  readonly distanceAt: (at: Point) => Metres;
}

function wallClearance(
  floor: Region,
  {
    clearances,
    walls,
  }: {
    readonly clearances: { readonly wall: Metres; readonly wallLeast: Metres };
    readonly walls: "clear" | "least";
  },
): WallClearance {
  const least = Math.min(clearances.wall, clearances.wallLeast);
  const close = inset(floor, least - DRAWN);
  if (walls === "least") return { region: close, distanceAt: () => least };
  const wide = inset(floor, clearances.wall - DRAWN);
  // What a disc of the full clearance cannot reach is narrow: there the least clearance counts.
  const narrow = intersection(difference(floor, outset(wide, clearances.wall + 2e-3)), close).filter(
    (part) => areaOf([part]) > CORNER_REST,
  );
  return {
    region: union([wide, narrow]),
    distanceAt: (at) => (placeInRegion(narrow, at) === "outside" ? clearances.wall : least),
  };
}

function keptClear(look: SiteLookUp, room: Room): readonly Kept[] {
  const { clearances } = look.site.defaults;
  return [
    ...room.noDevices.map((ring): Kept => ({ why: "no-devices", ring, clear: 0 })),
    ...look.luminairesOf(room.id).map((luminaire): Kept => {
      const clear = luminaire.hot ? clearances.luminaireHot : clearances.luminaireFlush;
      return { why: "luminaire", ring: luminaireRing(luminaire), clear };
    }),
    ...look.interferenceOf(room.id).flatMap((source): Kept[] => {
      const clear = clearanceOf(source, look.site.defaults);
      return clear > 0
        ? [
            {
              why: "heat-or-air",
              ring: source.to === undefined ? [source.at] : [source.at, source.to],
              clear,
            },
          ]
        : [];
    }),
    ...look.ceilingThingsOf(room.id).map((thing): Kept => {
      const smoke = isSmokeOrSprinkler(thing);
      return {
        why: smoke ? "smoke-head" : "ceiling-thing",
        ring: [thing.at],
        clear: smoke ? clearances.smokeHead : BESIDE_CEILING_THING,
      };
    }),
    ...look
      .obstaclesOf(room.id)
      .filter(
        (obstacle) => obstacle.top > room.ceilingHeight - UNDER_CEILING && obstacle.footprint.length >= 3,
      )
      .map((obstacle): Kept => ({ why: "obstacle", ring: obstacle.footprint, clear: clearances.wallLeast })),
  ];
}

/** Smoke heads and sprinklers keep more distance than a speaker. */
const isSmokeOrSprinkler = (thing: CeilingThing): boolean =>
  thing.kind === "smoke-head" || thing.kind === "sprinkler";

function luminaireRing({ at, length, width, turn }: Luminaire): Outline {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [l, w] = [length / 2, width / 2];
  const corner = (x: number, y: number): Point => [at[0] + c * x - s * y, at[1] + s * x + c * y];
  return [corner(-l, -w), corner(l, -w), corner(l, w), corner(-l, w)];
}

/** A thing grown by a distance; arcs lie inside the true ones, so that what is left of the ceiling is never too small. */
function grown(ring: Outline, distance: Metres): Region {
  const solid = ring.length >= 3 ? regionOf(ring) : [];
  if (distance <= 0) return solid;
  if (areaOf(solid) > 1e-6) return outset(solid, distance);
  // Points and lines: the discs along them, close enough together to leave no gap of a millimetre.
  const [a, b] = [ring[0], ring.length > 1 ? ring[ring.length - 1] : undefined];
  if (a === undefined) return [];
  if (b === undefined || (a[0] === b[0] && a[1] === b[1])) return disc(a, distance);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [nx, ny] = [(-(b[1] - a[1]) / length) * distance, ((b[0] - a[0]) / length) * distance];
  const band: Outline = [
    [a[0] - nx, a[1] - ny],
    [b[0] - nx, b[1] - ny],
    [b[0] + nx, b[1] + ny],
    [a[0] + nx, a[1] + ny],
  ];
  return union([regionOf(band), disc(a, distance), disc(b, distance)]);
}

function disc([x, y]: Point, radius: Metres): Region {
  return [
    {
      outline: Array.from(
        { length: 72 },
        (_, i): Point => [
          x + radius * Math.cos((i * Math.PI) / 36),
          y + radius * Math.sin((i * Math.PI) / 36),
        ],
      ),
      holes: [],
    },
  ];
}

/** Whether a place lies in the box that holds a thing and its clearance: a hall has hundreds of things, and few are near. */
function boxRound(ring: Outline, clear: Metres): (at: Point) => boolean {
  const { minX, minY, maxX, maxY } = boundsOf([ring]);
  return ([x, y]) => x >= minX - clear && x <= maxX + clear && y >= minY - clear && y <= maxY + clear;
}

function distanceToThing(at: Point, ring: Outline): Metres {
  if (ring.length === 1) return Math.hypot(at[0] - ring[0]![0], at[1] - ring[0]![1]);
  if (ring.length === 2) return distanceToSegment(at, [ring[0]!, ring[1]!]);
  return distanceToRings(at, [ring]);
}

const outlineHolds = (ring: Outline, at: Point): boolean => ring.length >= 3 && outlineContains(ring, at);
