import type { Region } from "../geometry/index.ts";
import type { Opening } from "../site/index.ts";
import { takenByLeaf } from "./open-leaf.ts";
import type { PreparedRoom } from "./prepared-room.ts";
import type { Scene } from "./scene.ts";

/** One way in which the doors of a room may stand while people are in it. */
export interface RoomDoorState {
  /** The leaf that is open; undefined: all doors closed. */
  readonly opening: Opening | undefined;
  readonly scene: Scene;
  /** Floor in which nobody stands because the open leaf is there. */
  readonly taken: Region;
}

/**
 * The states of its doors in which a room must be covered: all closed, and each leaf that opens into the room open on its own.
 *
 * @param prepared - The prepared room.
 * @returns At least the closed state, which comes first.
 * @source COMMON-PRACTICE
 * @example A room with one door that swings into the corridor has one state
 */
export function doorStates(prepared: PreparedRoom): readonly RoomDoorState[] {
  const { look, room } = prepared;
  const leaves = look
    .openingsOf(room.id)
    .filter((opening) => opening.kind === "door" && opening.opensInto === room.id);
  return [
    { opening: undefined, scene: prepared.closed(), taken: [] },
    ...leaves.flatMap((opening): RoomDoorState[] => {
      const taken = takenByLeaf(opening, look);
      return taken.length === 0 ? [] : [{ opening, scene: prepared.withOpen(opening.id), taken }];
    }),
  ];
}
