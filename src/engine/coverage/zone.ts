import type { Region } from "../geometry/index.ts";
import type { Site } from "../site/index.ts";
import type { Scene } from "./scene.ts";
import type { DeviceZoneQuestion, Zone, ZoneOptions } from "./zone-types.ts";

export function deviceZone(_site: Site, _question: DeviceZoneQuestion): Region {
  throw new Error("Under construction");
}

export function declaredZone(_site: Site, _question: DeviceZoneQuestion): Region {
  throw new Error("Under construction");
}

export function zoneInScene(_scene: Scene, _options: ZoneOptions): Zone {
  throw new Error("Under construction");
}

/** Positions at `device.height` from which a device of this kind, turn and model sees the witness: the device's own `at` is the witness. */
export function watchZone(_scene: Scene, _options: ZoneOptions): Zone {
  throw new Error("Under construction");
}
