import { boxVolumes, type Gauge } from "./tables/united-states.ts";

/** What is in a box, all of one gauge. */
export interface BoxContent {
  readonly gauge: Gauge;
  /** Insulated conductors that end in the box or go through it. */
  readonly conductors: number;
  /** Equipment grounding conductors. */
  readonly grounding: number;
  /** Whether clamps are inside. */
  readonly clamps: "inside" | "none";
  /** Devices on a yoke. */
  readonly devices: number;
}

/** Cubic metres in a cubic inch. */
const CUBIC_INCH = 0.0254 ** 3;

/**
 * Volume that a box needs.
 *
 * V = V_1 · (n + g + c + 2 d); g: 1 for up to four grounding conductors, a quarter more for each beyond; c: 1 for all clamps inside; each device on its yoke counts twice
 *
 * @param content - Gauge, conductors, grounding conductors, clamps, devices.
 * @returns Volume [m³]; undefined where the table has no such gauge.
 * @source NEC-314-16
 * @example Two cables of 14 AWG with two conductors each, one device, clamps: 8 · 2.00 in³ = 16.0 in³
 */
export function boxFill(content: BoxContent): number | undefined {
  const { gauge, conductors, grounding, clamps, devices } = content;
  const each = boxVolumes.rows[gauge];
  if (each === undefined) return undefined;
  const earths = grounding === 0 ? 0 : 1 + Math.max(0, grounding - 4) / 4;
  return each * (conductors + earths + (clamps === "inside" ? 1 : 0) + 2 * devices);
}

/** A volume in the unit that stands on boxes. @param volume - [m³] @returns [in³] @source NEC-314-16 @example 0.000262 m³: 16.0 */
export const cubicInches = (volume: number): number => volume / CUBIC_INCH;
