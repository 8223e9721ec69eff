import type { Metres, Outline, Point, Room, Site } from "#engine";
import { faceSlack, thickestWall } from "./openings.ts";
import { edgeOf } from "./stretch.ts";

/** One side of a room's rim: ring 0 is the outline, then its holes. */
export interface Face {
  readonly room: Room;
  readonly ring: number;
  readonly edge: number;
}

/** A face on the other side of the wall, with where it lies along the first one. */
export interface FacingFace extends Face {
  /** Between the two faces: the wall's thickness. [m] */
  readonly away: Metres;
  /** Where this face begins and ends, along the first face from its start; also beyond its ends. [m] */
  readonly from: Metres;
  readonly to: Metres;
}

/** Faces that share less than this are not the two sides of a wall. [m] */
const leastShared: Metres = 0.05;

/** Sine of the angle by which the two faces of a wall may differ: half a degree. */
const parallel = 0.0087;

/** What adding up coordinates may cost. [m] */
const finest: Metres = 1e-6;

export const ringsOfRoom = (room: Room): readonly Outline[] => [room.outline, ...room.holes];

/**
 * The faces of other rooms on the other side of a room's wall: parallel, turned towards it, no further than the thickest wall.
 * Where one room lies behind another, only the nearer one is behind the wall.
 */
export function facing(site: Site, of: Face): readonly FacingFace[] {
  const ring = ringsOfRoom(of.room)[of.ring] ?? [];
  const a = ring[of.edge] as Point;
  const { length, way } = edgeOf(ring, of.edge);
  const found = site.rooms
    .filter((room) => room.id !== of.room.id && room.storey === of.room.storey)
    .flatMap((room) =>
      ringsOfRoom(room).flatMap((other, number) =>
        other.flatMap((p, edge): FacingFace[] => {
          const there = edgeOf(other, edge);
          const against = there.way[0] * way[0] + there.way[1] * way[1];
          if (against > 0 || Math.abs(there.way[0] * way[1] - there.way[1] * way[0]) > parallel) return [];
          const [dx, dy] = [p[0] - a[0], p[1] - a[1]];
          const to = dx * way[0] + dy * way[1];
          const from = to - there.length;
          const away = dx * way[1] - dy * way[0];
          const shared = Math.min(length, to) - Math.max(0, from);
          return shared < leastShared || away < -faceSlack || away > thickestWall + finest
            ? []
            : [{ room, ring: number, edge, away: Math.max(0, away), from, to }];
        }),
      ),
    )
    .sort((one, two) => one.away - two.away);
  return found.filter((face, i) => !isHidden(face, found.slice(0, i), length));
}

/** Whether nearer faces stand before most of a face. */
function isHidden(face: FacingFace, nearer: readonly FacingFace[], length: Metres): boolean {
  const [from, to] = [Math.max(0, face.from), Math.min(length, face.to)];
  const before = nearer
    .filter(({ away }) => away < face.away - faceSlack)
    .reduce((sum, one) => sum + Math.max(0, Math.min(to, one.to) - Math.max(from, one.from)), 0);
  return before > (to - from) / 2;
}
