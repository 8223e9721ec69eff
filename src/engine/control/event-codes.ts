import type { Seconds } from "../quantity/index.ts";
import type { ControlState } from "./states.ts";

/** What an occupancy instance says: bit 0 movement, 1 occupied, 2 repeat, 3 the sensor sees movement (set) or presence. */
export interface OccupancyEvent {
  readonly sensor: "movement" | "presence";
  readonly occupied: boolean;
  readonly movement: boolean;
  readonly repeat: boolean;
}

/**
 * Event information of an occupancy sensor on an addressed bus.
 *
 * @param event - What is reported
 * @returns Bits 3 … 0; the bits above are zero
 * @source IEC-62386-303
 * @example A movement sensor, occupied and moving: 8 + 2 + 1 = 11
 */
export const occupancyEventCode = (event: OccupancyEvent): number =>
  (event.movement ? 1 : 0) +
  (event.occupied ? 2 : 0) +
  (event.repeat ? 4 : 0) +
  (event.sensor === "movement" ? 8 : 0);

/**
 * Input value of an occupancy sensor in a state: 0x00 vacant, 0xAA occupied without movement, 0xFF occupied with movement.
 *
 * @param state - State of the controller
 * @returns One byte
 * @source IEC-62386-303
 */
export function occupancyInputValue(state: ControlState): number {
  if (state === "occupied") return 0xff;
  const occupied = state === "delay" || state === "armed" || state === "held" || state === "manual-off";
  return occupied ? 0xaa : 0x00;
}

const timers = {
  deadtime: { step: 0.05, zero: 0, highest: 255 },
  hold: { step: 10, zero: 1, highest: 254 },
  report: { step: 1, zero: 1, highest: 255 },
} as const;

/**
 * Time that a raw timer value stands for.
 *
 * @param timer - Dead time, hold time or report time
 * @param raw - Value on the bus
 * @returns [s]; undefined where the value is out of range
 * @source IEC-62386-303
 * @example Hold 90: 15 min
 */
export function busTimer(timer: "deadtime" | "hold" | "report", raw: number): Seconds | undefined {
  const { step, zero, highest } = timers[timer];
  if (!Number.isInteger(raw) || raw < 0 || raw > highest) return undefined;
  return raw === 0 ? zero : raw * step;
}
