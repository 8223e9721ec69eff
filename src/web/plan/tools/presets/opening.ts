import type { Opening, Point, Room, Site } from "#engine";
import { nearestWall, roomAt, roomsOn } from "../../pick.ts";
import { distance, insideRoom, nearestOn } from "../../shapes.ts";
import { type Added, collected, type Ground, millimetres } from "./ground.ts";

const usual = {
  door: { width: 0.9, sill: 0, head: 2.05 },
  passage: { width: 1.2, sill: 0, head: 2.2 },
  window: { width: 1.2, sill: 0.9, head: 2.1 },
  glazing: { width: 2, sill: 0, head: 2.5 },
} as const;

/** An opening of usual size in the nearest wall; on its other side the room that begins behind that wall. */
export function opening(kind: keyof typeof usual, ground: Ground, at: Point): Added | undefined {
  const { site, storey, view } = ground;
  let best: { room: Room; wall: ReturnType<typeof nearestWall> } | undefined;
  for (const room of roomsOn(site, storey).values()) {
    const wall = nearestWall(room, at);
    if (!best || wall.away < best.wall.away) best = { room, wall };
  }
  if (!best || best.wall.away > Math.max(0.5, 24 / view.scale)) return undefined;
  const { room, wall } = best;
  const a = wall.ring[wall.index] as Point;
  const b = wall.ring[(wall.index + 1) % wall.ring.length] as Point;
  const length = distance(a, b);
  const width = Math.min(usual[kind].width, length - 0.02);
  if (width < 0.3) return undefined;
  const along = Math.min(length - width / 2, Math.max(width / 2, distance(a, wall.at)));
  const on = (metres: number): Point =>
    millimetres([a[0] + ((b[0] - a[0]) / length) * metres, a[1] + ((b[1] - a[1]) / length) * metres]);
  const [from, to] = [on(along - width / 2), on(along + width / 2)];
  const middle = on(along);
  const beyond = behind(site, storey, { room, middle, from });
  const { put, added } = collected(ground);
  const record: Omit<Opening, "id"> = {
    rooms: [room.id, beyond?.room.id ?? null],
    kind,
    from,
    to,
    sill: usual[kind].sill,
    head: Math.min(usual[kind].head, room.ceilingHeight),
    thickness: beyond?.thickness ?? 0.2,
    hinge: "from",
    opensInto: room.id,
    angle: Math.PI / 2,
    state: "closed",
  };
  put("openings", record);
  return added();
}

/** The room on the other side of a wall of at most 0.6 m, and the wall's thickness. */
function behind(
  site: Site,
  storey: string,
  door: { readonly room: Room; readonly middle: Point; readonly from: Point },
): { readonly room: Room; readonly thickness: number } | undefined {
  const width = distance(door.middle, door.from) || 1;
  let out: Point = [(door.middle[1] - door.from[1]) / width, -(door.middle[0] - door.from[0]) / width];
  if (insideRoom(door.room, [door.middle[0] + out[0] * 0.02, door.middle[1] + out[1] * 0.02]))
    out = [-out[0], -out[1]];
  for (let deep = 0.01; deep <= 0.6; deep += 0.01) {
    const there: Point = [door.middle[0] + out[0] * deep, door.middle[1] + out[1] * deep];
    const room = roomAt(site, storey, there);
    if (!room || room.id === door.room.id) continue;
    const wall = nearestWall(room, there);
    const face = nearestOn(wall.at, wall.at, door.middle);
    return { room, thickness: Math.max(0.01, Math.round(distance(face, door.middle) * 1000) / 1000) };
  }
  return undefined;
}
