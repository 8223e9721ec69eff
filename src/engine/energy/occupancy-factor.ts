import type { Share } from "../quantity/index.ts";

/** How light follows presence, as the standard tells the kinds apart. */
export type OccupancyControl =
  | "manual"
  | "manual-and-sweep"
  | "auto-on-dimmed"
  | "auto-on-auto-off"
  | "manual-on-dimmed"
  | "manual-on-auto-off";

/**
 * Factor F_OC of each kind of control.
 *
 * @source EN-15193
 */
export const occupancyControlFactors: Readonly<Record<OccupancyControl, number>> = {
  manual: 1,
  "manual-and-sweep": 0.95,
  "auto-on-dimmed": 0.95,
  "auto-on-auto-off": 0.9,
  "manual-on-dimmed": 0.9,
  "manual-on-auto-off": 0.8,
};

/** Switched areas above this get no credit for detection. [m²] @source EN-15193 */
const LARGEST_AREA = 30;

/**
 * F_OC of a kind of control; 1 where one detector switches more than 30 m².
 *
 * @param control - Kind of control
 * @param switchedArea - Area that is switched together [m²]
 * @returns F_OC
 * @source EN-15193
 */
export const occupancyControlFactor = (control: OccupancyControl, switchedArea: number): number =>
  switchedArea > LARGEST_AREA ? 1 : occupancyControlFactors[control];

/**
 * Occupancy dependency factor F_O.
 *
 * F_A < 0.2: 1 − (1 − F_OC) F_A/0.2;  0.2 ≤ F_A < 0.9: F_OC + 0.2 − F_A;  F_A ≥ 0.9: (7 − 10 F_OC)(F_A − 1)
 *
 * @param absence - Share of the time without anybody, F_A, 0 … 1
 * @param factor - F_OC
 * @returns F_O
 * @source EN-15193
 * @example F_A 0.4, F_OC 0.9: 0.9 + 0.2 − 0.4 = 0.7
 */
export function occupancyFactor(absence: Share, factor: number): number {
  if (!(absence >= 0 && absence <= 1))
    throw new RangeError(`The share of absence must lie within 0 … 1: ${absence}`);
  if (absence < 0.2) return 1 - ((1 - factor) * absence) / 0.2;
  if (absence < 0.9) return factor + 0.2 - absence;
  return (7 - 10 * factor) * (absence - 1);
}
