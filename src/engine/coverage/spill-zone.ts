import {
  declaredReachAt,
  longestReach,
  maskedSectors,
  type ReachShape,
  scaledReach,
} from "../detector/index.ts";
import {
  distanceBetween,
  distanceToSegment,
  FACE_FIT,
  intersection,
  nearestOnRings,
  type Outline,
  outlineContains,
  type Point,
  type Region,
  union,
} from "../geometry/index.ts";
import { nearestSeen, regionOfWedges, type Wedges } from "../geometry/sweep/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Interference } from "../site/index.ts";
import { maskChains, reachPolygon } from "./reach-polygon.ts";
import { floorIn, type Level, type Prism, partAt, type Scene, type ScenePart } from "./scene.ts";
import { sightSweep } from "./sight-sweep.ts";
import type { DeviceLike } from "./zone-types.ts";

/** Heights of a passer-by at which a detector may see one. [m] @source COMMON-PRACTICE */
export const SPILL_PLANES: readonly Metres[] = [0.2, 0.6, 1.0, 1.4, 1.8];

/** Height up to which every ray must be masked before a passer-by counts as gone. [m] */
const PASSER_BY: Metres = 1.8;

/**
 * Where a passer-by may set off a detector.
 *
 * Across ∪ towards, declared reach × (1 + spill margin), arcs circumscribed; seen if any of the planes 0.2 … 1.8 m is in sight; masked only
 * where all rays from 0 to 1.8 m are. Neither warmth nor mounting limits take anything off.
 *
 * @param scene - With doors open. @param device - The detector.
 * @returns Region on the storey, its own room included. [m]
 * @source SIGHT-GEOMETRY
 * @example h 2.7 m, lintel at 2.0 m, 2 m away: the plane of 1.0 m is in sight to 4.857 m, that of 0.2 m to 7.143 m
 */
export function spillZone(scene: Scene, device: DeviceLike): Region {
  const found = partAt(scene, device.at);
  if (!found) return [];
  const lens = floorIn(scene, device.at) + device.height;
  const regions = found.part.levels.flatMap((level) => {
    const seen = SPILL_PLANES.flatMap((plane) =>
      spillLooks(scene, { device, part: found.part, lens, level, plane }),
    );
    const region = union(seen.map(regionOfWedges));
    return level.region ? [intersection(region, level.region)] : [region];
  });
  return regions.length === 1 ? (regions[0] as Region) : union(regions);
}

/**
 * Distance beyond which a detector spills nowhere, whatever stands in between.
 *
 * @param scene - With doors open. @param device - The detector.
 * @returns No less than the longest reach of its spill zone [m]; 0 where it has none.
 * @source SIGHT-GEOMETRY
 * @example Towards 4 m, across 8 m: 11.1 m, which is 9.6 m to the corners of a hexagon
 */
export function spillFarthest(scene: Scene, device: DeviceLike): Metres {
  const found = partAt(scene, device.at);
  if (!found) return 0;
  const lens = floorIn(scene, device.at) + device.height;
  const reaches = found.part.levels.flatMap((level) =>
    SPILL_PLANES.flatMap((sightHeight) => {
      const height = lens - level.height;
      return height <= sightHeight
        ? []
        : spillReach(scene, { device, height, sightHeight }).map(longestReach);
    }),
  );
  return Math.max(0, ...reaches) * CIRCUMSCRIBED;
}

/** Corners of a ring about a circle lie farther out by at most this: it has six or more. */
const CIRCUMSCRIBED = 2 / Math.sqrt(3);

/**
 * Whether a source of false triggering is in sight of a detector, and where.
 *
 * A source counts when it lies within the spill reach and in straight sight of its own height. What it stands on or in does not hide it.
 *
 * @param scene - With doors open. @param question.device - The detector. @param question.source - Point or line.
 * @returns Nearest seen place of it and its distance in plan [m]; undefined: not seen, or at or above the lens.
 * @source SIGHT-GEOMETRY
 * @example A heater at 2.3 m, 3 m from a detector at 2.7 m: seen at 3 m
 */
export function seesSource(
  scene: Scene,
  question: { readonly device: DeviceLike; readonly source: Interference },
): { readonly distance: Metres; readonly at: Point } | undefined {
  const { device, source } = question;
  const found = partAt(scene, device.at);
  const room = scene.site.rooms.find((one) => one.id === source.room);
  if (!found || !room || room.storey !== scene.storey) return undefined;
  const lens = floorIn(scene, device.at) + device.height;
  const line = [source.at, source.to ?? source.at].map((p) =>
    inRoom(p, [room.outline, ...room.holes]),
  ) as unknown as readonly [Point, Point];
  const floor = floorIn(scene, line[0]);
  const height = floor + source.height;
  const carriesSource = (prism: Prism): boolean =>
    prism.kind === "obstacle" &&
    prism.base <= height + FACE_FIT &&
    prism.top >= height - FACE_FIT &&
    prism.rings.some((ring) => outlineContains(ring, source.at) || onRing(ring, source.at));
  const part = { ...found.part, prisms: found.part.prisms.filter((prism) => !carriesSource(prism)) };
  const level = { height: floor, temperature: 22, region: undefined };
  const looks = spillLooks(scene, { device, part, lens, level, plane: source.height, source: true });
  // A source on a wall lies on the edge of what is seen: it is looked for a little in front of it.
  const front = line.map((p): Point => stepTowards(p, device.at)) as unknown as readonly [Point, Point];
  const seen = looks
    .map((wedges) => nearestSeen(wedges, front))
    .filter((at) => at !== undefined)
    .toSorted((a, b) => distanceBetween(a, device.at) - distanceBetween(b, device.at))[0];
  return seen && { distance: distanceBetween(seen, device.at), at: seen };
}

/**
 * Reach for spill and nuisance at one height: across and towards, each × (1 + margin), whatever the mounting limits.
 *
 * @param scene - For its margin. @param question - The detector, the height of its lens above the floor, and the height of what is seen. [m]
 * @returns One shape where both are round, otherwise both.
 * @source SIGHT-GEOMETRY
 * @example Towards 4 m, across 8 m: round 9.6 m
 */
export function spillReach(
  scene: Scene,
  question: { readonly device: DeviceLike; readonly height: Metres; readonly sightHeight: Metres },
): readonly ReachShape[] {
  const { device, height, sightHeight } = question;
  const { zones } = device.model;
  const shapes = [zones.towards, zones.across]
    .flatMap((rows) =>
      rows && rows.length > 0 ? [declaredReachAt(rows, { height, sightHeight }).shape] : [],
    )
    .map((shape) => scaledReach(shape, 1 + scene.site.defaults.margin.spill))
    .filter((shape) => shape.kind !== "none");
  if (shapes.some((shape) => shape.kind !== "round")) return shapes;
  return shapes.length === 0 ? [] : [{ kind: "round", radius: Math.max(...shapes.map(longestReach)) }];
}

interface SpillLook {
  readonly device: DeviceLike;
  readonly part: ScenePart;
  readonly lens: Metres;
  readonly level: Level;
  /** Above the level's floor. */
  readonly plane: Metres;
  /** A mask hides a source by its own ray alone, a passer-by only by all rays. */
  readonly source?: boolean;
}

function spillLooks(scene: Scene, look: SpillLook): readonly Wedges[] {
  const { device, part, lens, level, plane } = look;
  const height = lens - level.height;
  if (height - plane <= 0) return [];
  const drops = look.source
    ? { lowDrop: height - plane, highDrop: height - plane }
    : { lowDrop: height, highDrop: Math.max(0, height - PASSER_BY) };
  const masks = maskChains(maskedSectors(device.masks), { turn: device.turn, ...drops, masked: "small" });
  return spillReach(scene, { device, height, sightHeight: plane }).map((shape) =>
    sightSweep(part, {
      eye: device.at,
      from: lens,
      plane: level.height + plane,
      reach: reachPolygon(shape, { turn: device.turn, arcs: "outside" }),
      masks,
    }),
  );
}

/** A place in a wall or window is looked for on the nearest face of its room. */
function inRoom(p: Point, rings: readonly Outline[]): Point {
  if (rings[0] && outlineContains(rings[0], p) && !rings.slice(1).some((hole) => outlineContains(hole, p)))
    return p;
  return nearestOnRings(p, rings) ?? p;
}

function stepTowards(p: Point, eye: Point): Point {
  const distance = distanceBetween(p, eye);
  const share = distance <= FACE_FIT ? 0 : FACE_FIT / distance;
  return [p[0] + share * (eye[0] - p[0]), p[1] + share * (eye[1] - p[1])];
}

const onRing = (ring: Outline, p: Point): boolean =>
  ring.some((a, i) => distanceToSegment(p, [a, ring[(i + 1) % ring.length] as Point]) <= FACE_FIT);
