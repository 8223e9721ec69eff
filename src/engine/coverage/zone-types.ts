import type { DetectorModel, LensMask, ZoneKind } from "../detector/index.ts";
import type { Point, Region } from "../geometry/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";
import type { DoorState } from "./results.ts";

/** What a zone needs to know of a detector: one that hangs, or one that might. */
export interface DeviceLike {
  readonly model: DetectorModel;
  readonly at: Point;
  /** Above the local floor beneath it. */
  readonly height: Metres;
  readonly turn: Radians;
  readonly masks: readonly LensMask[];
}

/**
 * What a zone is computed for.
 * coverage: planning margin and warmth taken off, arcs inscribed.
 * declared: the data sheet's figure as it stands, for the screen.
 * outward: for bounds that must hold: coverage's reach + w, arcs circumscribed; use it with an eroded scene.
 */
export type ZonePurpose = "coverage" | "declared" | "outward";

export interface ZoneOptions {
  readonly device: DeviceLike;
  readonly kind: ZoneKind;
  /** Height at which a person is seen; walking for towards and across, the desk's for seated if absent. */
  readonly sightHeight?: Metres;
  readonly purpose?: ZonePurpose;
}

/** A zone in plan and, for many questions about single points, a quick test. */
export interface Zone {
  /** The exact polygon; computed at the first call. [m] */
  readonly region: () => Region;
  /** Whether a point of the plan is in the zone; O(log n). */
  readonly has: (x: Metres, y: Metres) => boolean;
  /** Part of the figures was extrapolated above the data sheet's top row. */
  readonly verify: boolean;
}

/** A zone asked for by the record's id. */
export interface DeviceZoneQuestion {
  readonly device: string;
  readonly kind: ZoneKind;
  readonly doors: DoorState;
  readonly sightHeight?: Metres;
}
