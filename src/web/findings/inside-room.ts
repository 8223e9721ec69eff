import type { Metres, Point, Room, Site } from "#engine";
import { boundsOf, contains, distanceToRings, floorOf, ringsOf } from "#engine";

/** Spacing of the points that are tried: finer than anyone hangs a detector by eye. */
const step: Metres = 0.1;

/** The room on whose floor a point lies. */
export const roomAt = (site: Pick<Site, "rooms">, storey: string | undefined, at: Point): Room | undefined =>
  site.rooms.find((room) => (storey === undefined || room.storey === storey) && contains(floorOf(room), at));

/** The place in a room nearest to a point and clear of its walls by this much, or by as much as the room allows. */
export function nearestInside(room: Room, at: Point, clearance: Metres): Point | undefined {
  const floor = floorOf(room);
  const rings = ringsOf(floor);
  const { minX, minY, maxX, maxY } = boundsOf([room.outline]);
  for (const clear of [clearance, clearance / 2, step / 2]) {
    let best: Point | undefined;
    let least = Infinity;
    for (let x = minX + step / 2; x <= maxX; x += step)
      for (let y = minY + step / 2; y <= maxY; y += step) {
        const distance = Math.hypot(x - at[0], y - at[1]);
        if (distance >= least || !contains(floor, [x, y])) continue;
        if (distanceToRings([x, y], rings) < clear) continue;
        best = [x, y];
        least = distance;
      }
    if (best !== undefined) return [Math.round(best[0] * 100) / 100, Math.round(best[1] * 100) / 100];
  }
  return undefined;
}
