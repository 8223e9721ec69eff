import type { SiteLookUp } from "./look-up.ts";
import { isWalkable } from "./reveal.ts";

/** Way from one room to another, or outside, through an opening. */
export interface RoomLink {
  readonly opening: string;
  /** Room on the other side; null: outside. */
  readonly room: string | null;
}

/**
 * Where the doors and passages of a room lead.
 *
 * @param look - The site's records at hand. @param room - Id of the room.
 * @returns One link for each walkable opening of the room; an opening with the same room on both sides leads to itself.
 * @example A corridor with two offices and an entrance door has three links, one of them to null
 */
export function linksOf(look: SiteLookUp, room: string): readonly RoomLink[] {
  return look
    .openingsOf(room)
    .filter((opening) => isWalkable(opening.kind))
    .map((opening) => ({
      opening: opening.id,
      room: opening.rooms[0] === room ? opening.rooms[1] : opening.rooms[0],
    }));
}

/**
 * Rooms that people reach from a room on foot, the room itself included, without going outside.
 *
 * @param look - The site's records at hand. @param start - Id of the room to start in.
 * @returns Ids in the order in which they are reached.
 * @example Two offices on a corridor: from one the three of them are reached
 */
export function roomsReachedFrom(look: SiteLookUp, start: string): readonly string[] {
  const reached = [start];
  const seen = new Set(reached);
  for (const room of reached) {
    for (const link of linksOf(look, room)) {
      if (link.room === null || seen.has(link.room)) continue;
      seen.add(link.room);
      reached.push(link.room);
    }
  }
  return reached;
}
