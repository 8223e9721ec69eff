import type { Site } from "#engine";

/** What a room's result depends on, detectors aside, as far as the rooms in which those hang. */
export function groundParts(site: Site, room: string): readonly unknown[] {
  const hung = [
    ...new Set(site.detectors.filter(({ controls }) => controls.includes(room)).map((one) => one.room)),
  ];
  const [defaults, rooms, openings, pieces, obstacles, places, sources, luminaires, things] = roomParts(
    site,
    room,
  );
  const far = site.rooms.filter(({ id }) => hung.includes(id));
  const farObstacles = site.obstacles.filter((one) => hung.includes(one.room));
  return [
    defaults,
    rooms,
    openings,
    pieces,
    obstacles,
    places,
    sources,
    luminaires,
    things,
    site.models,
    far,
    farObstacles,
  ];
}

/** Everything that a room's result depends on: itself, its openings, the rooms behind them, what stands in them, and devices near by. */
export function roomParts(site: Site, room: string): readonly unknown[] {
  const openings = site.openings.filter(({ rooms }) => rooms.includes(room));
  const near = new Set<string>([room]);
  for (const { rooms } of openings) for (const id of rooms) if (id !== null) near.add(id);
  // Devices of a neighbour may look in through its door and spill through the next one.
  for (const { rooms } of site.openings)
    if (rooms.some((id) => id !== null && near.has(id)))
      for (const id of rooms) if (id !== null) near.add(id);
  const inside = <T extends { readonly room: string }>(records: readonly T[]): readonly T[] =>
    records.filter((record) => near.has(record.room));
  const devices = site.detectors.filter(
    (device) => near.has(device.room) || device.controls.some((id) => near.has(id)),
  );
  const models = new Set(devices.map(({ model }) => model));
  return [
    site.defaults,
    site.rooms.filter(({ id }) => near.has(id)),
    site.openings.filter(({ rooms }) => rooms.some((id) => id !== null && near.has(id))),
    inside(site.floorPieces),
    inside(site.obstacles),
    inside(site.dwellPlaces),
    inside(site.interference),
    inside(site.luminaires),
    inside(site.ceilingThings),
    devices,
    site.models.filter(({ id }) => models.has(id)),
  ];
}

/** Whether two lists of parts hold the same records: by identity, since an unchanged record keeps it. */
export const sameParts = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length &&
  a.every((part, i) => {
    const other = b[i];
    if (!Array.isArray(part) || !Array.isArray(other)) return part === other;
    return part.length === other.length && part.every((record, j) => record === other[j]);
  });
