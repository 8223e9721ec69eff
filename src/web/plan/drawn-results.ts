import type { RoomCoverage } from "#engine";
import type { DeviceZones } from "../contract.ts";

/** What is drawn of a room's coverage. */
export type DrawnCoverage = Pick<RoomCoverage, "room" | "gaps" | "spill" | "darkWalks">;

/** What is drawn of all that was calculated. */
export interface DrawnResults {
  readonly zones: ReadonlyMap<string, DeviceZones>;
  readonly rooms: ReadonlyMap<string, DrawnCoverage>;
}
