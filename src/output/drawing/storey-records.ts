import type {
  Detector,
  DwellPlace,
  FloorPiece,
  Interference,
  Luminaire,
  Obstacle,
  Opening,
  Room,
  Site,
} from "#engine";

/** What lies on one storey. */
export interface OnStorey {
  readonly rooms: readonly Room[];
  readonly roomIds: ReadonlySet<string>;
  readonly openings: readonly Opening[];
  readonly floorPieces: readonly FloorPiece[];
  readonly obstacles: readonly Obstacle[];
  readonly dwellPlaces: readonly DwellPlace[];
  readonly interference: readonly Interference[];
  readonly luminaires: readonly Luminaire[];
  readonly detectors: readonly Detector[];
}

/** The records of the rooms of a storey. */
export function onStorey(site: Site, storey: string): OnStorey {
  return inRooms(site, new Set(site.rooms.filter((room) => room.storey === storey).map((room) => room.id)));
}

/** The records of some rooms. */
export function inRooms(site: Site, roomIds: ReadonlySet<string>): OnStorey {
  const here = (record: { readonly room: string }): boolean => roomIds.has(record.room);
  return {
    rooms: site.rooms.filter((room) => roomIds.has(room.id)),
    roomIds,
    openings: site.openings.filter((opening) =>
      opening.rooms.some((room) => room !== null && roomIds.has(room)),
    ),
    floorPieces: site.floorPieces.filter(here),
    obstacles: site.obstacles.filter(here),
    dwellPlaces: site.dwellPlaces.filter(here),
    interference: site.interference.filter(here),
    luminaires: site.luminaires.filter(here),
    detectors: site.detectors.filter(here),
  };
}
