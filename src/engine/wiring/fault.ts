import type {
  AmpereSquareSeconds,
  Amperes,
  Metres,
  Ohms,
  OhmsPerMetre,
  Seconds,
  SquareMillimetres,
  Volts,
} from "../quantity/index.ts";
import type { EarthingSystem } from "./model.ts";
import { type BreakerType, disconnectionTimes, touchVoltage, tripBands } from "./tables/protection.ts";
import { inService, resistanceAt20, warmFactor } from "./tables/resistance.ts";

/**
 * Longest disconnection time.
 *
 * @param circuit - Earthing system, voltage to earth U0 [V], final or distribution.
 * @returns Time [s]; undefined where the table is silent: IT, unknown systems, 50 V and less.
 * @source IEC-60364-4-41
 * @example TN, 230 V, final: 0.4 s; exactly 120 V belongs to the row below: 0.8 s
 */
export function disconnectionTime(circuit: {
  readonly system: EarthingSystem;
  readonly voltage: Volts;
  readonly circuit: "final" | "distribution";
}): Seconds | undefined {
  if (circuit.system === "IT" || circuit.system === "unknown") return undefined;
  const column = circuit.system === "TT" ? "TT" : "TN";
  if (circuit.circuit === "distribution") return disconnectionTimes.rows.distribution[column];
  return disconnectionTimes.rows.final.find(
    ({ above, upTo }) => circuit.voltage > above && circuit.voltage <= upTo,
  )?.[column];
}

/** Current at which a breaker surely trips at once: the upper end of its band. @param type B, C, D @param rating [A] @returns [A] @source IEC-60898-1 @example B16: 80 A */
export const sureTrip = (type: BreakerType, rating: Amperes): Amperes => tripBands.rows[type].most * rating;

/**
 * Largest impedance of the fault loop.
 *
 * Zs · Ia ≤ c · U0
 *
 * @param loop - Voltage U0 [V], breaker and rating [A], voltage factor c (0.95 in the UK, 1 by the plain formula).
 * @returns Zs. [Ω]
 * @source IEC-60364-4-41, BS-7671-LOOP
 * @example B10, c = 0.95: 0.95 · 230 / 50 = 4.37 Ω
 */
export const largestLoopImpedance = (loop: {
  readonly voltage: Volts;
  readonly type: BreakerType;
  readonly rating: Amperes;
  readonly voltageFactor: number;
}): Ohms => (loop.voltageFactor * loop.voltage) / sureTrip(loop.type, loop.rating);

/**
 * Largest reading of the fault loop measured with cold conductors.
 *
 * @param loop - As for the largest impedance. @param rule - "four-fifths" of Zs with its voltage factor, or "two-thirds" of the plain U0/Ia.
 * @returns Limit of the reading. [Ω]
 * @source BS-7671-LOOP, IEC-60364-6-LOOP
 * @example B10: 0.8 · 4.37 = 3.496 Ω; two thirds of 4.6 = 3.067 Ω
 */
export const largestLoopReading = (
  loop: Parameters<typeof largestLoopImpedance>[0],
  rule: "four-fifths" | "two-thirds",
): Ohms =>
  rule === "four-fifths"
    ? 0.8 * largestLoopImpedance(loop)
    : (2 / 3) * largestLoopImpedance({ ...loop, voltageFactor: 1 });

/**
 * Resistance of line and protective conductor together at 20 °C.
 *
 * @param section - Line conductor, solid copper. [mm²] @param protective - Protective conductor. [mm²]
 * @returns R1 + R2 per metre of route [Ω/m]; undefined outside the table.
 * @source IEC-60228
 * @example 1.5 with 1.5 mm²: 2 · 12.1 = 24.2 mΩ/m; 1.5 with 1.0 mm² is 30.2
 */
export function loopResistance(
  section: SquareMillimetres,
  protective: SquareMillimetres,
): OhmsPerMetre | undefined {
  const line = resistanceAt20.rows.copper.solid[section];
  const earth = resistanceAt20.rows.copper.solid[protective];
  return line === undefined || earth === undefined ? undefined : line + earth;
}

/**
 * Longest circuit by its loop.
 *
 * L = (Zs,max − Ze) / ((R1 + R2) · 1.20)
 *
 * @param loop - Largest Zs and Ze [Ω], R1 + R2 at 20 °C [Ω/m].
 * @returns Length; 0 where the board alone is over the limit. [m]
 * @source FROM-MEMORY, warm conductors
 * @example C10, Ze 0.35, 1.5 with 1.5 mm²: (2.185 − 0.35) / 0.02904 = 63.19 m
 */
export const longestByLoop = (loop: {
  readonly largest: Ohms;
  readonly external: Ohms;
  readonly perMetre: OhmsPerMetre;
}): Metres => Math.max(0, (loop.largest - loop.external) / (loop.perMetre * warmFactor.rows));

/**
 * Longest circuit by the conventional method, for want of board data.
 *
 * Lmax = 0.8 · U0 · S / (ρ · (1 + m) · Im), m = S/Spe
 *
 * @param circuit - Voltage [V], sections of line and protective conductor [mm²], breaker, rating [A].
 * @returns Length. [m]
 * @source CONVENTIONAL-LENGTH
 * @example 1.5 with 1.5 mm², B10: 0.8 · 230 · 1.5 / (0.0225 · 2 · 50) = 122.67 m
 */
export const conventionalLength = (circuit: {
  readonly voltage: Volts;
  readonly section: SquareMillimetres;
  readonly protective: SquareMillimetres;
  readonly type: BreakerType;
  readonly rating: Amperes;
}): Metres =>
  (0.8 * circuit.voltage * circuit.section) /
  (inService.rows.resistivity.copper *
    (1 + circuit.section / circuit.protective) *
    sureTrip(circuit.type, circuit.rating));

/**
 * Largest earth resistance behind an RCD in a TT installation.
 *
 * RA · IΔn ≤ 50 V
 *
 * @param residual - Rated residual current IΔn. [A]
 * @returns RA. [Ω]
 * @source IEC-60364-4-41
 * @example 30 mA: 50 / 0.03 = 1666.7 Ω
 */
export const largestEarthResistance = (residual: Amperes): Ohms => touchVoltage.rows.most / residual;

/**
 * Smallest section that survives a fault, no heat lost.
 *
 * S ≥ √(I²t) / k
 *
 * @param fault - Joule integral [A²s] and k [A·√s/mm²].
 * @returns Section. [mm²]
 * @source IEC-60364-4-43
 * @validFor t ≤ 5 s; below 0.1 s with a current-limiting device pass its let-through, not I² · t
 * @example 1 kA for 0.1 s, k = 115: √100000 / 115 = 2.7498 mm²
 */
export const adiabaticSection = (fault: {
  readonly integral: AmpereSquareSeconds;
  readonly k: number;
}): SquareMillimetres => Math.sqrt(fault.integral) / fault.k;

/** What a conductor withstands, (k·S)². @param section S [mm²] @param k [A·√s/mm²] @returns [A²s] @source IEC-60364-4-43 @example 1.5 mm², 115: 29756 A²s */
export const withstand = (section: SquareMillimetres, k: number): AmpereSquareSeconds => (k * section) ** 2;
