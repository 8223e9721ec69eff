import type { Outline, Point } from "../geometry/index.ts";
import { isUsableOutline } from "./problems/outlines.ts";
import type { Room, Site } from "./site.ts";

/**
 * A site without the records that cannot be calculated with: `siteProblems` of the whole site names each of them.
 *
 * Left out: outlines that cross themselves or enclose nothing, numbers that are none, prisms upside down, flights that do not rise, places without size.
 *
 * @param site - Any site, also one that a merge broke.
 * @returns The same records, fewer of them; no calculation on it meets a number that is none.
 * @example A rack whose top is not a number is left out, its room stays
 */
export function calculable(site: Site): Site {
  return {
    ...site,
    rooms: site.rooms
      .filter(isCalculable)
      .map((room) => ({ ...room, noDevices: room.noDevices.filter(isUsableOutline) })),
    floorPieces: site.floorPieces.filter(
      (piece) =>
        isUsableOutline(piece.footprint) &&
        isNumber(piece.low, piece.high, ...piece.from, ...piece.to) &&
        (piece.kind === "landing" || piece.high > piece.low),
    ),
    openings: site.openings.filter(
      ({ from, to, sill, head, thickness, angle }) =>
        isNumber(sill, head, thickness, angle) &&
        isPlace(from) &&
        isPlace(to) &&
        head > sill &&
        thickness >= 0,
    ),
    obstacles: site.obstacles.filter(
      ({ footprint, base, top }) => isNumber(base, top) && top > base && isUsableOutline(footprint),
    ),
    dwellPlaces: site.dwellPlaces.filter(({ at, radius }) => isPlace(at) && isNumber(radius) && radius > 0),
    interference: site.interference.filter(
      ({ at, to, height }) => isPlace(at) && (to === undefined || isPlace(to)) && isNumber(height),
    ),
    ceilingThings: site.ceilingThings.filter(({ at }) => isPlace(at)),
    luminaires: site.luminaires.filter(
      ({ at, height, length, width, turn }) => isPlace(at) && isNumber(height, length, width, turn),
    ),
    detectors: site.detectors.filter(
      ({ at, height, turn }) => isPlace(at) && isNumber(height, turn) && height > 0,
    ),
  };
}

/** Whether a room can be calculated with: its outline and holes are usable, its heights are numbers. @example A room drawn as a figure of eight: false */
export const isCalculable = (room: Room): boolean =>
  [room.outline, ...room.holes].every((ring: Outline) => isUsableOutline(ring)) &&
  isNumber(room.floor, room.ceilingHeight, room.highestTemperature ?? 0);

const isNumber = (...values: readonly number[]): boolean => values.every((value) => Math.abs(value) < 1e6);
/** Plans may lie far from the origin; beyond 10 000 km coordinates no longer hold a millimetre. */
const isPlace = (point: Point): boolean => point.every((value) => Math.abs(value) < 1e7);
