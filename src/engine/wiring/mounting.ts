import type { DetectorModel } from "../detector/index.ts";
import type { Metres } from "../quantity/index.ts";
import { atMost, type WiringCheck } from "./wiring-check.ts";

/** Ceiling as far as mounting asks. What nobody measured stays absent. */
export interface CeilingBuild {
  /** Thickness of the panel. [m] */
  readonly thickness?: Metres;
  /** Free height above it. [m] */
  readonly voidHeight?: Metres;
}

/**
 * Whether a detector fits the ceiling of its room.
 *
 * @param model - Its data sheet. @param ceiling - The ceiling. @param device - Tag and record id.
 * @returns Checks of depth and thickness for a ceiling panel; empty for surface and box, which ask nothing of the ceiling.
 * @source DERIVED-HERE
 * @example 80 mm deep under a void of 60 mm: fails
 */
export function mountingChecks(
  model: Pick<DetectorModel, "fixing" | "depth" | "ceilingThickness">,
  ceiling: CeilingBuild,
  device: { readonly tag: string; readonly id: string },
): readonly WiringCheck[] {
  if (model.fixing === "surface" || model.fixing === "box") return [];
  const shared = {
    unit: "m",
    source: "DERIVED-HERE",
    code: "detector-does-not-fit",
    name: device.tag,
    records: [device.id],
  } as const;
  const unknown = model.fixing === undefined ? ["How it is fixed is not on record"] : [];
  const { min, max } = model.ceilingThickness ?? {};
  const thin = min !== undefined && ceiling.thickness !== undefined && ceiling.thickness < min;
  return [
    {
      ...shared,
      verdict: model.fixing === undefined ? "not-proven" : atMost(model.depth, ceiling.voidHeight),
      what: "Depth above the ceiling",
      actual: model.depth,
      limit: ceiling.voidHeight,
      assumptions: unknown,
    },
    {
      ...shared,
      verdict: model.fixing === undefined ? "not-proven" : thin ? "fail" : atMost(ceiling.thickness, max),
      what: thin ? "Thickness of the ceiling against the least that holds it" : "Thickness of the ceiling",
      actual: ceiling.thickness,
      limit: thin ? min : max,
      assumptions: unknown,
    },
  ];
}
