import type { Metres } from "../../quantity/index.ts";
import type { Detector, Site } from "../../site/index.ts";
import type { FoundBoard } from "../of-site/found.ts";
import { lengthAllowance } from "../routes/route.ts";
import { boardRise } from "./board-rise.ts";
import { ceilingWays } from "./ceiling-ways.ts";

/** A cable from a detector back to the board in which a contactor stands. */
export interface CoilWay {
  /** Id of the detector. */
  readonly start: string;
  /** As it lies, both ends into their terminals included. [m] */
  readonly length: Metres;
}

/**
 * The shortest cable from one of the detectors that hold a coil to the board of its contactor, along the ceilings.
 *
 * @param site - The site. @param board - Where the contactor stands. @param detectors - That hold the coil.
 * @returns Start and length; undefined where the board has no place, or no detector hangs on its storey.
 * @source DIJKSTRA-1959, COMMON-PRACTICE
 * @example Detector 7 m along the walls from a board under a ceiling of 2.5 m: 7 + 0.7 + 0.6 m
 */
export function coilWay(
  site: Site,
  board: FoundBoard | undefined,
  detectors: readonly Detector[],
): CoilWay | undefined {
  const { at, storey } = board ?? {};
  const rooms = new Map(site.rooms.map((room) => [room.id, room]));
  const near = detectors.filter(({ room }) => rooms.get(room)?.storey === storey);
  if (at === undefined || storey === undefined || near.length === 0) return undefined;
  const ways = ceilingWays(site, storey);
  const room = ways.roomAt(at);
  if (room === undefined) return undefined;
  const found = near.map((one) => ({
    start: one.id,
    length:
      ways.between({ room: one.room, at: one.at }, { room, at }).length +
      boardRise(rooms.get(room)) +
      2 * lengthAllowance.end,
  }));
  return found.reduce((least, one) => (one.length < least.length ? one : least));
}
