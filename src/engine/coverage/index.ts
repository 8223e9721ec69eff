export type * from "./results.ts";
export { type Scene, type SceneOptions, sceneOf } from "./scene.ts";
export { seesSource, spillZone } from "./spill-zone.ts";
export { unseenReason } from "./unseen-reason.ts";
export { declaredZone, deviceZone, watchZone, zoneInScene } from "./zone.ts";
export type { DeviceLike, DeviceZoneQuestion, Zone, ZoneOptions, ZonePurpose } from "./zone-types.ts";
