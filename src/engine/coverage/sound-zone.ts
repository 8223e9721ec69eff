import { longestReach, type ReachShape, reachOf } from "../detector/index.ts";
import {
  contains,
  inset,
  type Point,
  prepareWays,
  type Region,
  ringsOf,
  union,
  waysFrom,
} from "../geometry/index.ts";
import { addChain, addEndless, ENDLESS, regionOfWedges, sweep, sweepEdges } from "../geometry/sweep/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Site } from "../site/index.ts";
import { arc } from "./reach-polygon.ts";
import type { Scene, ScenePart } from "./scene.ts";
import { soundFloor } from "./sound-floor.ts";
import type { Zone, ZoneOptions } from "./zone-types.ts";

/** How far a bend of the way keeps off its corner, so that it has open floor all round: a tenth of a millimetre. [m] */
const OFF_CORNER: Metres = 1e-4;

/**
 * Where a detector hears: floor within the radius by the shortest way inside the room and through open doors.
 *
 * The set of points p with way(d, p) ≤ R: around the device and every corner that ways bend round, at way length g, what lies in straight
 * sight within R − g, all joined. Only what reaches the ceiling stops it.
 *
 * @param scene - Doors as they count. @param options - As for a zone, with the part in which the device hangs.
 * @returns The zone; the declared radius with no margin, the direction plays no part.
 * @source DERIVED-HERE
 * @example Radius 5 m, device 3 m before an opening: 2 m round its jambs on the other side
 */
export function soundZone(scene: Scene, options: ZoneOptions & { readonly part: ScenePart }): Zone {
  const { device, part } = options;
  const shape = soundReach(options);
  const radius = longestReach(shape) + (options.purpose === "outward" ? (scene.eroded ?? 0) : 0);
  if (radius <= 0) return { region: () => [], has: () => false, verify: false };
  let region: Region | undefined;
  const compute = (): Region =>
    (region ??= heard(part, {
      site: scene.site,
      at: device.at,
      radius,
      outward: options.purpose === "outward",
    }));
  return { region: compute, has: (x, y) => contains(compute(), [x, y]), verify: false };
}

function soundReach(options: ZoneOptions): ReachShape {
  const { device, purpose } = options;
  const model =
    purpose === "declared" ? { ...device.model, mounting: { min: 0, max: Infinity } } : device.model;
  return reachOf(model, { kind: "sound", height: device.height, sightHeight: 0 }).shape;
}

function heard(
  part: ScenePart,
  ask: { readonly site: Site; readonly at: Point; readonly radius: Metres; readonly outward: boolean },
): Region {
  const open = soundFloor(part, ask.site);
  if (!contains(open, ask.at)) return [];
  const ways = prepareWays(inset(open, OFF_CORNER));
  const from = waysFrom(ways, ask.at);
  const lines = ringsOf(open).flatMap((ring) =>
    ring.map((a, i) => [a, ring[(i + 1) % ring.length] as Point] as const),
  );
  const centres = [{ at: ask.at, rest: ask.radius }];
  for (const [i, bend] of ways.bends.entries()) {
    const rest = ask.radius - (from.lengths[i] as number);
    if (rest > OFF_CORNER) centres.push({ at: bend.at, rest });
  }
  return union(
    centres.map(({ at, rest }) => {
      const edges = sweepEdges(at);
      for (const [a, b] of lines) {
        if (Math.min(a[0], b[0]) > at[0] + rest || Math.max(a[0], b[0]) < at[0] - rest) continue;
        if (Math.min(a[1], b[1]) > at[1] + rest || Math.max(a[1], b[1]) < at[1] - rest) continue;
        addEndless(edges, [a, b]);
      }
      addChain(
        edges,
        arc({ radius: rest, from: 0, to: 2 * Math.PI, arcs: ask.outward ? "outside" : "inside" }),
        ENDLESS,
      );
      return regionOfWedges(sweep(edges));
    }),
  );
}
