import { longestReach, maskContains, reachOf, reachTowards, type ZoneKind } from "../detector/index.ts";
import { distanceToSegment, FACE_FIT, type Outline, type Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import { lookUp, openingInSentence, roomTitle, thingInSentence } from "../site/index.ts";
import type { GapCause } from "./results.ts";
import { floorIn, type Prism, partAt, type Scene, type ScenePart } from "./scene.ts";
import { planningReach, sightHeightOf } from "./zone.ts";
import type { DeviceLike } from "./zone-types.ts";

type Behind = Extract<GapCause, { kind: "hidden" }>["behind"];

/**
 * Why a detector does not cover a point, in the order in which one would mend it: limits, reach, warmth, mask, what hides.
 *
 * @param scene - The scene of the coverage. @param question - Detector, kind, point, sight height (the kind's default if absent).
 * @returns undefined where the detector does cover the point.
 * @source SIGHT-GEOMETRY
 * @example A point behind a rack: hidden behind it, with its id and name
 */
export function unseenReason(
  scene: Scene,
  question: {
    readonly device: DeviceLike & { readonly id: string };
    readonly kind: ZoneKind;
    readonly point: Point;
    readonly sightHeight?: Metres;
    /** `floorIn`, where the caller remembers it: a hall asks hundreds of devices about hundreds of places. */
    readonly floorOf?: typeof floorIn;
  },
): GapCause | undefined {
  const { device, kind, point, floorOf = floorIn } = question;
  const sight = question.sightHeight ?? sightHeightOf(kind, scene.site.defaults);
  const ground = floorOf(scene, point);
  const lens = floorOf(scene, device.at) + device.height;
  const height = lens - ground;
  const declared = reachOf(device.model, { kind, height, sightHeight: sight, mounted: device.height });
  if (declared.standing === "limits") return { kind: "mounting-limits", device: device.id };
  const distance = Math.hypot(point[0] - device.at[0], point[1] - device.at[1]);
  // Planning never exceeds the declared reach: most devices of a hall are told from a place by this alone.
  if (distance > longestReach(declared.shape) + FACE_FIT) return { kind: "beyond-reach" };
  const azimuth = Math.atan2(point[1] - device.at[1], point[0] - device.at[0]) - device.turn;
  const asked = { device, kind, height, sight, purpose: "coverage" as const };
  const within = (temperature: number): boolean =>
    distance <= reachTowards(planningReach(scene.site.defaults, { ...asked, temperature }).shape, azimuth);
  if (height <= sight || !within(22)) return { kind: "beyond-reach" };
  const temperature = partAt(scene, point)?.room.highestTemperature ?? 22;
  if (!within(temperature)) return { kind: "too-warm" };
  if (kind === "sound") return undefined;
  const ray = { azimuth, offNadir: Math.atan2(distance, height - sight) };
  if (device.masks.some((mask) => maskContains(mask, ray))) return { kind: "masked", device: device.id };
  const behind = firstBehind(scene, { from: device.at, lens, to: point, plane: ground + sight });
  return behind && { kind: "hidden", behind };
}

interface Ray {
  readonly from: Point;
  readonly lens: Metres;
  readonly to: Point;
  readonly plane: Metres;
}

/** The first solid on a ray, walking along it. */
function firstBehind(scene: Scene, ray: Ray): Behind | undefined {
  const part = partAt(scene, ray.from)?.part;
  if (!part) return undefined;
  let least = Infinity;
  let behind: Behind | undefined;
  const look = lookUp(scene.site);
  for (const prism of part.prisms) {
    const at = entryOf(prism, ray);
    if (at === undefined || at >= least) continue;
    least = at;
    behind = named(prism);
  }
  for (const wall of part.walls) {
    const at = crossingShare(ray, [wall.a, wall.b]);
    if (at === undefined || at >= least) continue;
    least = at;
    behind = closedOpening(at) ?? {
      kind: "wall",
      id: wall.room,
      name: roomTitle(look.roomById.get(wall.room)),
    };
  }
  return behind;

  function named(prism: Prism): Behind {
    const opening = look.openingById.get(prism.id);
    const obstacle = scene.site.obstacles.find((one) => one.id === prism.id);
    const name =
      prism.kind === "obstacle"
        ? obstacle && thingInSentence(obstacle)
        : opening && openingInSentence(opening, look);
    return { kind: prism.kind, id: prism.id, name: name ?? prism.name };
  }

  function closedOpening(share: number): Behind | undefined {
    const at: Point = [
      ray.from[0] + share * (ray.to[0] - ray.from[0]),
      ray.from[1] + share * (ray.to[1] - ray.from[1]),
    ];
    const rooms = new Set((part as ScenePart).rooms.map((room) => room.id));
    for (const opening of scene.site.openings) {
      if (!rooms.has(opening.rooms[0]) && !(opening.rooms[1] && rooms.has(opening.rooms[1]))) continue;
      if (distanceToSegment(at, [opening.from, opening.to]) > opening.thickness + FACE_FIT) continue;
      const along =
        distanceToSegment(at, [opening.from, opening.to]) <
        Math.min(distanceTo(at, opening.from), distanceTo(at, opening.to)) - 1e-9;
      if (along) return { kind: "opening", id: opening.id, name: openingInSentence(opening, look) };
    }
    return undefined;
  }
}

const distanceTo = (a: Point, b: Point): Metres => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Share of the ray's way at which it enters a prism; undefined where it misses. */
function entryOf(prism: Prism, ray: Ray): number | undefined {
  const shares = prism.rings.flatMap((ring) =>
    edgesOf(ring).flatMap((edge) => crossingShare(ray, edge) ?? []),
  );
  const inside = (share: number): boolean =>
    insideRings(prism.rings, share === 0 ? ray.from : along(ray, share));
  const cuts = [0, ...shares.toSorted((a, b) => a - b), 1];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [u, v] = [cuts[i] as number, cuts[i + 1] as number];
    if (v > u && !inside((u + v) / 2)) continue;
    // Heights fall evenly: the ray is between base and top on one interval of its way.
    const fall = ray.plane - ray.lens;
    const [a, b] = [(prism.base - ray.lens) / fall, (prism.top - ray.lens) / fall];
    const enter = Math.max(u, Math.min(a, b));
    if (enter <= Math.min(v, Math.max(a, b))) return enter;
  }
  return undefined;
}

const along = (ray: Ray, share: number): Point => [
  ray.from[0] + share * (ray.to[0] - ray.from[0]),
  ray.from[1] + share * (ray.to[1] - ray.from[1]),
];

const edgesOf = (ring: Outline): readonly (readonly [Point, Point])[] =>
  ring.map((a, i) => [a, ring[(i + 1) % ring.length] as Point] as const);

function crossingShare(ray: Ray, [a, b]: readonly [Point, Point]): number | undefined {
  const [dx, dy] = [ray.to[0] - ray.from[0], ray.to[1] - ray.from[1]];
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const det = dx * ey - dy * ex;
  if (det === 0) return undefined;
  const [px, py] = [a[0] - ray.from[0], a[1] - ray.from[1]];
  const [u, t] = [(px * ey - py * ex) / det, (px * dy - py * dx) / det];
  return u >= 0 && u <= 1 && t >= 0 && t <= 1 ? u : undefined;
}

function insideRings(rings: readonly Outline[], p: Point): boolean {
  let inside = false;
  for (const ring of rings) {
    for (const [a, b] of edgesOf(ring)) {
      if (a[1] > p[1] !== b[1] > p[1] && p[0] < a[0] + ((p[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
        inside = !inside;
    }
  }
  return inside;
}
