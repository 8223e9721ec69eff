import type { Site } from "#engine";

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
