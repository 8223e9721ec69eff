import { type DetectorModel, longestReach, type ZoneKind } from "../detector/index.ts";
import { COVER_SKIN, type Point, placeInOutline } from "../geometry/index.ts";
import { wedgesHave } from "../geometry/sweep/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";
import { farthestOf, reachPolygon } from "./reach-polygon.ts";
import { floorIn, partAt, type Scene } from "./scene.ts";
import { sightSweep } from "./sight-sweep.ts";
import { planningReach } from "./zone.ts";

/** What is in straight sight from one place, whatever hangs there. */
export interface SharedSight {
  /** Whether a point is in sight. [m] */
  readonly sees: (x: Metres, y: Metres) => boolean;
  /** Places with the same words here have the same reach: height over the watched floor, and its temperature. */
  readonly standing: string;
  /**
   * Test whether a model's reach holds a point, given its offset from the place.
   *
   * Sight and reach together are the zone of `zoneInScene`.
   */
  readonly reachTest: (question: {
    readonly model: DetectorModel;
    readonly kind: Exclude<ZoneKind, "sound">;
    readonly turn: Radians;
  }) => (dx: Metres, dy: Metres) => boolean;
}

/**
 * Sight from a place on the ceiling, worked out once for all models that might hang there: many models at one place see the same walls.
 *
 * @param scene - From `sceneOf`; eroded for the purpose "outward".
 * @param question.at - Place. [m] @param question.height - Above the local floor. [m] @param question.sightHeight - Of what is seen. [m]
 * @param question.farthest - Longest reach that will be asked for. [m] @param question.purpose - As for a zone.
 * @returns undefined outside rooms and in rooms whose floor has several heights or temperatures: there ask `zoneInScene`.
 * @source SIGHT-GEOMETRY
 * @example Two round models under one lens: one look, two radii
 */
export function sharedSight(
  scene: Scene,
  question: {
    readonly at: Point;
    readonly height: Metres;
    readonly sightHeight: Metres;
    readonly farthest: Metres;
    readonly purpose: "coverage" | "outward";
  },
): SharedSight | undefined {
  const { at, height, sightHeight, purpose } = question;
  const part = partAt(scene, at)?.part;
  const [level, ...more] = part?.levels ?? [];
  if (!part || !level || more.length > 0 || level.region !== undefined) return undefined;
  const lens = floorIn(scene, at) + height;
  const drop = lens - level.height - sightHeight;
  if (drop <= 0) return { sees: () => false, standing: "below", reachTest: () => () => false };
  const outward = purpose === "outward";
  const rim = { arcs: outward ? "outside" : "inside", grown: outward ? COVER_SKIN : 0 } as const;
  const wedges = sightSweep(part, {
    eye: at,
    from: lens,
    plane: level.height + sightHeight,
    // Farther than any ring that is asked for, so that only solids bound what is seen.
    reach: reachPolygon({ kind: "round", radius: question.farthest + 0.2 }, { turn: 0, arcs: "outside" }),
    masks: [],
  });
  return {
    sees: (x, y) => wedgesHave(wedges, x, y),
    standing: `${height} ${lens - level.height} ${level.temperature}`,
    reachTest: ({ model, kind, turn }) => {
      const reach = planningReach(scene.site.defaults, {
        device: { model, height },
        kind,
        height: lens - level.height,
        sight: sightHeight,
        purpose,
        temperature: level.temperature,
      });
      if (longestReach(reach.shape) <= 0) return () => false;
      const ring = reachPolygon(reach.shape, { turn, ...rim });
      const most = farthestOf(ring) ** 2;
      const least = nearestEdge(ring) ** 2;
      return (dx, dy) => {
        const square = dx * dx + dy * dy;
        if (square > most) return false;
        return square < least || placeInOutline(ring, [dx, dy]) !== "outside";
      };
    },
  };
}

/** Distance from the origin, which lies in a ring, to its nearest edge. [m] */
function nearestEdge(ring: readonly Point[]): Metres {
  let least = Infinity;
  for (const [i, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(i + 1) % ring.length] as Point;
    const [dx, dy] = [bx - ax, by - ay];
    const square = dx * dx + dy * dy;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, -(ax * dx + ay * dy) / square));
    least = Math.min(least, Math.hypot(ax + t * dx, ay + t * dy));
  }
  return placeInOutline(ring, [0, 0]) === "inside" ? least : 0;
}
