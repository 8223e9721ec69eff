import type { RoomDemand } from "../coverage/index.ts";
import {
  boundsOf,
  COVER_SKIN,
  contains,
  difference,
  distanceToRings,
  inset,
  type Point,
  placeInRegion,
  type Region,
  ringsOf,
} from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { PlanningDefaults } from "../site/index.ts";

/** One place that somebody must be seen at, with one state of the doors. */
export interface DemandRow {
  readonly kind: "walk" | "hold";
  readonly at: Point;
  readonly sightHeight: Metres;
  /** "closed", or the id of the one opening whose leaf stands open. */
  readonly doors: string;
  /** Inside a bay: being heard serves as well. */
  readonly sound: boolean;
  /** All of the skin round it is demanded: it may be a witness of a bound. */
  readonly deep: boolean;
}

/** A region that must be covered to the skin, with one state of the doors. */
export interface DemandPart {
  readonly kind: "walk" | "hold";
  readonly region: Region;
  /** Part of the region where being heard serves as well. */
  readonly bays: Region;
  readonly sightHeight: Metres;
  /** "closed", or the id of the one opening whose leaf stands open. */
  readonly doors: string;
}

/** Samples on the edge lie this far inside: a disc of the skin's 5 mm round each is wholly demanded, which the bound needs. [m] */
export const SAMPLE_DEPTH: Metres = 6e-3;

/**
 * What must be covered in a room, once for each state of its doors.
 *
 * @param demand - Demand of the room.
 * @param options.states - States of the doors, with the floor on which nobody stands in each.
 * @returns Standing area and dwell places that are asked for.
 * @example A room with a door into it, one desk: walk and hold, closed and open, makes four
 */
export function demandParts(
  demand: RoomDemand,
  options: {
    readonly states: readonly { readonly doors: string; readonly taken: Region }[];
    readonly defaults: PlanningDefaults;
  },
): readonly DemandPart[] {
  return options.states.flatMap(({ doors, taken }): DemandPart[] => {
    const less = (region: Region): Region => (taken.length === 0 ? region : difference(region, taken));
    const walk: DemandPart = {
      kind: "walk",
      region: less(demand.standing),
      bays: demand.bays,
      sightHeight: options.defaults.sightHeights.walking,
      doors,
    };
    const hold = demand.dwell.map(
      ({ region, sightHeight, inBay }): DemandPart => ({
        kind: "hold",
        region: less(region),
        bays: inBay ? region : [],
        sightHeight,
        doors,
      }),
    );
    return [...(demand.asked.walk ? [walk] : []), ...(demand.asked.hold ? hold : [])].filter(
      (part) => part.region.length > 0,
    );
  });
}

/**
 * Sample points of a part: a grid, and points along its edges a little inside.
 *
 * @param part - Region to be covered.
 * @param spacing - Distance of samples. [m]
 * @returns Rows; more are added later where an exact check finds a gap.
 * @example A square of 1 m at 0.5 m: samples in the middle and round the edge
 */
export function sampledRows(part: DemandPart, spacing: Metres): readonly DemandRow[] {
  const inner = inset(part.region, SAMPLE_DEPTH);
  const points: Point[] = [];
  for (const ring of ringsOf(inner)) {
    ring.forEach((a, index) => {
      const b = ring[(index + 1) % ring.length]!;
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const count = Math.max(1, Math.ceil(length / spacing - 1e-9));
      // Rounded corners have many short edges: one sample a tenth of the spacing is plenty.
      const last = points.at(-1);
      if (
        last !== undefined &&
        length < spacing / 10 &&
        Math.hypot(last[0] - a[0], last[1] - a[1]) < spacing / 10
      )
        return;
      for (let i = 0; i < count; i++)
        points.push([a[0] + ((b[0] - a[0]) * i) / count, a[1] + ((b[1] - a[1]) * i) / count]);
    });
  }
  if (inner.length > 0) {
    const { minX, minY, maxX, maxY } = boundsOf(ringsOf(inner));
    const [nx, ny] = [
      Math.max(1, Math.ceil((maxX - minX) / spacing)),
      Math.max(1, Math.ceil((maxY - minY) / spacing)),
    ];
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        const at: Point = [minX + ((i + 0.5) * (maxX - minX)) / nx, minY + ((j + 0.5) * (maxY - minY)) / ny];
        if (placeInRegion(inner, at) === "inside") points.push(at);
      }
  }
  return points.map((at) => rowAt(part, at));
}

/** The row of a part at a place. @param part - Region to be covered. @param at - Place in it. [m] @returns The row. */
export const rowAt = (part: DemandPart, at: Point): DemandRow => ({
  kind: part.kind,
  at,
  sightHeight: part.sightHeight,
  doors: part.doors,
  sound: part.bays.length > 0 && contains(part.bays, at),
  deep:
    placeInRegion(part.region, at) === "inside" && distanceToRings(at, ringsOf(part.region)) >= COVER_SKIN,
});
