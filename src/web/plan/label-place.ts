import type { Point, Room, Site } from "#engine";
import { distance, insideRoom, nearestOn } from "./shapes.ts";

/** Size of a room's label at the zoom at which a plan is usually read. [m] */
const label = { wide: 3, high: 1.1 };

/** A place for a room's label: inside the room, clear of walls, off furniture, signs and detectors as far as that goes. */
export function labelPlace(room: Room, site: Site): Point {
  const xs = room.outline.map(([x]) => x);
  const ys = room.outline.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
  const own = <T extends { readonly room: string }>(records: readonly T[]): readonly T[] =>
    records.filter((record) => record.room === room.id);
  const boxes = [...own(site.obstacles), ...own(site.floorPieces)].map(({ footprint }) => ({
    left: Math.min(...footprint.map(([x]) => x)),
    right: Math.max(...footprint.map(([x]) => x)),
    bottom: Math.min(...footprint.map(([, y]) => y)),
    top: Math.max(...footprint.map(([, y]) => y)),
  }));
  const signs = [
    ...own(site.detectors).map(({ at }) => ({ at, weight: 5 })),
    ...own(site.interference).map(({ at }) => ({ at, weight: 3 })),
    ...own(site.dwellPlaces).map(({ at }) => ({ at, weight: 1 })),
    ...own(site.ceilingThings).map(({ at }) => ({ at, weight: 1 })),
    ...own(site.luminaires).map(({ at }) => ({ at, weight: 0.6 })),
  ];
  const middle: Point = [(left + right) / 2, (bottom + top) / 2];
  const wide = Math.min(label.wide, (right - left) * 0.9) / 2;
  const high = Math.min(label.high, (top - bottom) * 0.9) / 2;
  let best: Point | undefined;
  let least = Infinity;
  const steps = 16;
  for (let i = 1; i < steps; i++)
    for (let j = 1; j < steps; j++) {
      const at: Point = [left + ((right - left) * i) / steps, bottom + ((top - bottom) * j) / steps];
      if (!insideRoom(room, at)) continue;
      let cost = 0.25 * distance(at, middle);
      for (const ring of [room.outline, ...room.holes])
        ring.forEach((a, k) => {
          const [x, y] = nearestOn(a, ring[(k + 1) % ring.length] as Point, at);
          const short = 1 - Math.max(Math.abs(x - at[0]) / wide, Math.abs(y - at[1]) / high);
          if (short > 0) cost += 8 * short;
        });
      for (const box of boxes) {
        const across = Math.min(at[0] + wide, box.right) - Math.max(at[0] - wide, box.left);
        const along = Math.min(at[1] + high, box.top) - Math.max(at[1] - high, box.bottom);
        if (across > 0 && along > 0) cost += (across * along) / (wide * high);
      }
      for (const sign of signs)
        if (Math.abs(sign.at[0] - at[0]) < wide + 0.3 && Math.abs(sign.at[1] - at[1]) < high + 0.3)
          cost += sign.weight;
      if (cost < least) [best, least] = [at, cost];
    }
  return best ?? room.outline[0] ?? middle;
}
