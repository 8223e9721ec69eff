import type { ZoneKind } from "../detector/index.ts";
import type { Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";
import type { GapCause } from "./results.ts";
import type { Scene } from "./scene.ts";
import type { DeviceLike } from "./zone-types.ts";

/** Why a device does not cover a point; undefined where it does. */
export function unseenReason(
  _scene: Scene,
  _question: {
    readonly device: DeviceLike & { readonly id: string };
    readonly kind: ZoneKind;
    readonly point: Point;
    readonly sightHeight?: Metres;
  },
): GapCause | undefined {
  throw new Error("Under construction");
}
