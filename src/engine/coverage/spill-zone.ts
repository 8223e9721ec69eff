import type { Point, Region } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { Interference, Site } from "../site/index.ts";
import type { Scene } from "./scene.ts";
import type { DeviceLike } from "./zone-types.ts";

/** Where a passer-by may set off a device; scene with doors open. */
export function spillZone(_scene: Scene, _device: DeviceLike): Region {
  throw new Error("Under construction");
}

/** Nearest visible part of a source of false triggering within the spill reach; undefined: not seen. */
export function seesSource(
  _scene: Scene,
  _question: { readonly device: DeviceLike; readonly source: Interference },
): { readonly distance: Metres; readonly at: Point } | undefined {
  throw new Error("Under construction");
}

export type { Site };
