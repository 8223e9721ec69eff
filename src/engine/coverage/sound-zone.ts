import type { Scene, ScenePart } from "./scene.ts";
import type { Zone, ZoneOptions } from "./zone-types.ts";

/** Floor within the radius by the shortest way. */
export function soundZone(_scene: Scene, _options: ZoneOptions & { readonly part: ScenePart }): Zone {
  throw new Error("Under construction");
}
