export { causeInWords } from "./coverage-problems.ts";
export { baysOf, roomDemand } from "./demand.ts";
export { doorStates, type RoomDoorState } from "./door-states.ts";
export { type ClearanceBroken, clearancesBroken } from "./interference.ts";
export { type MaskLoss, maskLoss } from "./mask-loss.ts";
export { maskAgainstSource, masksAgainstFloor } from "./masks-against.ts";
export { openLeaf, takenByLeaf } from "./open-leaf.ts";
export { type PreparedRoom, prepareRoom, withOneOpen } from "./prepared-room.ts";
export type * from "./results.ts";
export { type CoveredAreas, coverageOf, gapsOf, roomCoverage } from "./room-coverage.ts";
export { nearestIn } from "./room-ways.ts";
export { type Scene, type SceneOptions, sceneOf } from "./scene.ts";
export { type SeesQuestion, sees } from "./sees.ts";
export { type SharedSight, sharedSight } from "./shared-sight.ts";
export { seesSource, spillZone } from "./spill-zone.ts";
export { type Entrance, type StandingArea, standingArea } from "./standing-area.ts";
export { unseenReason } from "./unseen-reason.ts";
export { deviceOf } from "./watchers.ts";
export {
  declaredZone,
  deviceZone,
  placedDevice,
  planningReach,
  sightHeightOf,
  watchZone,
  zoneInScene,
} from "./zone.ts";
export { type CountedDevice, countedDevices } from "./zone-book.ts";
export type { DeviceLike, DeviceZoneQuestion, Zone, ZoneOptions, ZonePurpose } from "./zone-types.ts";
