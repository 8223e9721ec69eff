import type { Metres, Opening, Point, Room, Site } from "#engine";
import { revealOf } from "#engine";
import { recordOf } from "../pick.ts";
import { insideRoom } from "../shapes.ts";

/** Two faces this near to each other may be the two sides of one wall. [m] */
export const thickestWall: Metres = 0.6;

/** Drawn faces may overlap by this and still be the two sides of a wall without thickness. [m] */
export const faceSlack: Metres = 0.02;

/** The same hole in the wall, seen from its second room: from and to lie on that room's face. */
export function seenFromSecond(site: Site, opening: Opening): Opening {
  const [first, second] = opening.rooms;
  const home = recordOf(site, "rooms", first);
  if (second === null || !home) return opening;
  const { far } = revealOf(opening, home);
  return { ...opening, rooms: [second, first], from: far[0], to: far[1] };
}

/** The room behind an opening's wall, and how thick that wall is; undefined: outside. */
export function behind(
  site: Site,
  opening: Opening,
): { readonly room: Room; readonly thickness: Metres } | undefined {
  const home = recordOf(site, "rooms", opening.rooms[0]);
  if (!home) return undefined;
  const { through } = revealOf(opening, home);
  const middle: Point = [(opening.from[0] + opening.to[0]) / 2, (opening.from[1] + opening.to[1]) / 2];
  let nearest: { room: Room; thickness: Metres } | undefined;
  for (const room of site.rooms) {
    if (room.id === home.id || room.storey !== home.storey) continue;
    for (const ring of [room.outline, ...room.holes])
      ring.forEach((a, i) => {
        const away = crossing(middle, through, [a, ring[(i + 1) % ring.length] as Point]);
        if (away === undefined || away < -faceSlack || away > thickestWall) return;
        if (nearest && nearest.thickness <= away) return;
        const past: Point = [middle[0] + through[0] * (away + 0.01), middle[1] + through[1] * (away + 0.01)];
        if (insideRoom(room, past)) nearest = { room, thickness: Math.max(0, away) };
      });
  }
  return nearest;
}

/** How far along a ray a segment is crossed; negative behind its start. [m] */
function crossing(from: Point, way: Point, [a, b]: readonly [Point, Point]): Metres | undefined {
  const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
  const turn = way[0] * ey - way[1] * ex;
  if (Math.abs(turn) < 1e-9) return undefined;
  const share = ((a[0] - from[0]) * way[1] - (a[1] - from[1]) * way[0]) / turn;
  return share < 0 || share > 1 ? undefined : ((a[0] - from[0]) * ey - (a[1] - from[1]) * ex) / turn;
}

/** A door high up in a stair leads to another storey: what lies behind it on its own storey is not what it leads to. */
export function leadsUpOrDown(site: Site, { rooms }: Opening): boolean {
  const [first, second] = rooms.map((id) => (id === null ? undefined : recordOf(site, "rooms", id)?.storey));
  return first !== undefined && second !== undefined && first !== second;
}

/**
 * An opening led to the room that now lies behind its wall, or to the outside. A leaf that swung into the room that is no
 * longer there swings the same way into what is.
 */
export function relinked(site: Site, opening: Opening): Opening {
  if (leadsUpOrDown(site, opening)) return opening;
  const found = behind(site, opening);
  const second = found?.room.id ?? null;
  const thickness = found ? Math.round(found.thickness * 1e6) / 1e6 : opening.thickness;
  const opensInto = opening.opensInto === opening.rooms[0] ? opening.opensInto : second;
  return { ...opening, rooms: [opening.rooms[0], second], opensInto, thickness };
}
