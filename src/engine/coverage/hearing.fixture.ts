import type { DetectorModel } from "../detector/index.ts";
import type { Point } from "../geometry/index.ts";
import type { Obstacle, Site } from "../site/index.ts";
import { fittedReveal } from "./fitted-reveal.ts";
import type { DoorState } from "./results.ts";
import { sees } from "./sees.ts";
import type { DeviceLike } from "./zone-types.ts";

/** How far the places beside a corner lie from it, so that a plain ray past the corner touches nothing. [m] */
const BESIDE = 2e-4;
/** An obstacle that ends this near to the ceiling reaches it. [m] */
const NEAR_CEILING = 0.05;

/**
 * Length of the shortest way of sound from a detector to a point, by the plain graph of all corners that see each other: slow, and obviously right.
 *
 * Lengths are at most a millimetre too long, because every bend keeps a fifth of one off its corner.
 *
 * @param site - Snapshot. @param question - The detector, its storey, the state of the doors, and how long a way is followed. [m]
 * @returns Length for a point; infinite where sound does not get, or no further than that. [m]
 */
export function wayOfSound(
  site: Site,
  question: {
    readonly device: DeviceLike;
    readonly storey: string;
    readonly doors: DoorState;
    readonly within: number;
  },
): (point: Point) => number {
  const { device, storey, doors, within } = question;
  const hollow = hollowed(site);
  const seesFrom = (at: Point) =>
    sees(hollow, {
      device: { ...device, at, height: 2, turn: 0, masks: [], model: endless },
      storey,
      kind: "towards",
      doors,
      sightHeight: 1,
    });
  const corners = [
    ...hollow.rooms.flatMap((room) => [room.outline, ...room.holes]),
    ...hollow.obstacles.map((obstacle) => obstacle.footprint),
    ...hollow.openings.map((opening) => {
      const [first, second] = opening.rooms.map((id) => hollow.rooms.find((room) => room.id === id));
      const fitted = first && fittedReveal(opening, { first, second });
      return fitted ? [...fitted.near, ...fitted.far] : [];
    }),
  ].flat();
  const places = corners
    .flatMap(([x, y]) =>
      Array.from({ length: 8 }, (_, i): Point => {
        const angle = 0.1 + (i * Math.PI) / 4;
        return [x + BESIDE * Math.cos(angle), y + BESIDE * Math.sin(angle)];
      }),
    )
    .filter((at) => between(at, device.at) <= within)
    .map((at) => ({ at, clear: seesFrom(at), length: Infinity, done: false }))
    // A place in a wall or in a solid sees nothing, not even itself.
    .filter(({ at, clear }) => clear([at[0] + 1e-7, at[1]]));
  const start = seesFrom(device.at);
  for (const place of places) if (start(place.at)) place.length = between(device.at, place.at);
  for (;;) {
    const next = places.filter((place) => !place.done).toSorted((a, b) => a.length - b.length)[0];
    if (!next || next.length > within) break;
    next.done = true;
    for (const other of places) {
      const length = next.length + between(next.at, other.at);
      if (!other.done && length < Math.min(within, other.length) && next.clear(other.at))
        other.length = length;
    }
  }
  return (point) => {
    let least = start(point) ? between(device.at, point) : Infinity;
    for (const place of places) {
      const length = place.length + between(place.at, point);
      if (length < least && length <= within && place.clear(point)) least = length;
    }
    return least;
  };
}

const between = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const endless: DetectorModel = {
  id: "ear",
  title: "Ear",
  mounting: { min: 0, max: 1000 },
  zones: { towards: [{ height: 1e-3, radius: 1e6 }] },
  declaration: "assumed",
  declaredBy: "test",
  cost: 1,
};

/** The site as sound meets it: what reaches from floor to ceiling is there at every height, all else at none; open doors have no leaf, sill or head. */
function hollowed(site: Site): Site {
  const reaches = (obstacle: Obstacle): boolean => {
    const room = site.rooms.find((one) => one.id === obstacle.room);
    return (
      room !== undefined && obstacle.base <= NEAR_CEILING && obstacle.top >= room.ceilingHeight - NEAR_CEILING
    );
  };
  return {
    ...site,
    rooms: site.rooms.map((room) => ({ ...room, floor: 0, highestTemperature: 22 })),
    floorPieces: [],
    obstacles: site.obstacles
      .filter(reaches)
      .map((obstacle) => ({ ...obstacle, seeThrough: false, base: -99, top: 99 })),
    openings: site.openings.map((opening) => ({ ...opening, sill: 0, head: 99, opensInto: null })),
  };
}
