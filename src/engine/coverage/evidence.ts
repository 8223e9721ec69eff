import type { Detector } from "../site/index.ts";
import type { ClearanceBroken } from "./interference.ts";
import type { PreparedRoom } from "./prepared-room.ts";
import type { RoomCoverage } from "./results.ts";
import type { StairLight } from "./stair-light.ts";

/** Everything that was calculated for a room, before it is judged. */
export interface Evidence
  extends Pick<RoomCoverage, "demanded" | "covered" | "gaps" | "spill" | "interference" | "darkWalks"> {
  readonly prepared: PreparedRoom;
  /** Devices that switch the room's light. */
  readonly counted: readonly Detector[];
  /** Devices that hang in the room. */
  readonly hung: readonly Detector[];
  readonly stairs: readonly StairLight[];
  readonly broken: readonly ClearanceBroken[];
  /** A reach was extrapolated above its data sheet. */
  readonly verify: boolean;
}
