import type { Metres } from "../../quantity/index.ts";
import type { Room } from "../../site/index.ts";

/** Height of a board's top above the floor, where its cables leave it. [m] An estimate of the trade. */
export const BOARD_TOP: Metres = 1.8;

/** From the top of a board up to the ceiling of its room. @param room - Undefined on a storey without rooms. @returns Way, never below 0. [m] @example Ceiling at 2.5 m: 0.7 m */
export const boardRise = (room: Pick<Room, "floor" | "ceilingHeight"> | undefined): Metres =>
  room ? Math.max(0, room.floor + room.ceilingHeight - BOARD_TOP) : 0;
