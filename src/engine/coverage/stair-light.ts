import type { Metres } from "../quantity/index.ts";
import { type Watcher, walkInTheDark } from "./dark-walk.ts";
import type { RoomWays } from "./room-ways.ts";

/** How long before the first step of a flight the light is on, for one who comes in through an entrance. */
export interface StairLight {
  readonly opening: string;
  readonly flight: string;
  /** Way from the light's coming on to the first step; negative: after it; −∞: never lit. [m] */
  readonly lead: Metres;
}

/**
 * For each flight of a room how far before its first step the light is on.
 *
 * @param ways - Ways from one entrance. @param question.watchers - Devices that switch the light. @param question.speed - Walking speed. [m/s]
 * @returns One entry for each flight that the entrance leads to.
 * @source COMMON-PRACTICE
 * @example The first step 4 m from the door, the light on after 1.9 m: 2.1 m
 */
export function stairLights(
  ways: RoomWays,
  question: { readonly watchers: readonly Watcher[]; readonly speed: number },
): readonly StairLight[] {
  return ways.stairs.map(({ flight, way }) => ({
    opening: ways.entrance.opening.id,
    flight,
    lead: way.length - walkInTheDark(way, question).lightAt,
  }));
}
