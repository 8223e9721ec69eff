import type { Amperes, Metres, OhmsPerMetre, Share, SquareMillimetres, Volts } from "../quantity/index.ts";
import { type ConductorMaterial, dropLimits, inService, tabulatedDrop } from "./tables/resistance.ts";
import { type Gauge, gaugeResistance } from "./tables/united-states.ts";

export type Phases = "single-phase" | "three-phase";

/** Conductor and power factor of a stretch of line. */
export interface DropConductor {
  readonly section: SquareMillimetres;
  readonly material: ConductorMaterial;
  readonly powerFactor: number;
}

/**
 * Voltage drop per ampere and metre of one conductor.
 *
 * ρ₁/S · cos φ + λ · sin φ
 *
 * @param section - S [mm²]. @param material - Copper or aluminium. @param powerFactor - cos φ.
 * @returns Drop per ampere and metre of route, one conductor. [Ω/m]
 * @source IEC-60364-5-52-DROP
 * @example 1.5 mm² copper, cos φ = 1: 0.0225 / 1.5 = 0.015 Ω/m
 */
export function dropPerAmpereMetre({ section, material, powerFactor }: DropConductor): OhmsPerMetre {
  const { resistivity, reactance } = inService.rows;
  const sine = Math.sqrt(Math.max(0, 1 - powerFactor * powerFactor));
  return (resistivity[material] / section) * powerFactor + reactance * sine;
}

/**
 * Voltage drop of a line loaded at its end.
 *
 * u = b · (ρ₁ · L/S · cos φ + λ · L · sin φ) · Ib, b = 2 for single phase, 1 for balanced three-phase
 *
 * @param line.current - Design current Ib. [A]
 * @param line.length - Length of the route one way, L; not there and back. [m]
 * @returns Drop, to neutral for three-phase. [V]
 * @source IEC-60364-5-52-DROP
 * @example 1.5 mm² copper, 30 m, 10 A, cos φ = 1: 2 · 0.0225 · 30 / 1.5 · 10 = 9 V
 */
export function voltageDrop(
  line: DropConductor & { readonly current: Amperes; readonly length: Metres; readonly phases: Phases },
): Volts {
  const there = line.phases === "single-phase" ? 2 : 1;
  return there * dropPerAmpereMetre(line) * line.length * line.current;
}

/**
 * Voltage drop by tabulated millivolts per ampere and metre: a second way to the same figure, for a check.
 *
 * @param line - Section [mm²], current [A], route length [m], phases.
 * @returns Drop [V]; undefined where the table has no such section.
 * @source BS-7671-4D
 * @example 2.5 mm², 16 A, 18 m: 0.018 · 16 · 18 = 5.184 V
 */
export function tabulatedVoltageDrop(line: {
  readonly section: SquareMillimetres;
  readonly current: Amperes;
  readonly length: Metres;
  readonly phases: Phases;
}): Volts | undefined {
  const perAmpereMetre = tabulatedDrop.rows[line.phases][line.section];
  return perAmpereMetre === undefined ? undefined : perAmpereMetre * line.current * line.length;
}

/**
 * Voltage drop of a branch circuit by direct-current resistance.
 *
 * Vd = 2 · L · I · R, √3 in place of 2 for three-phase (between lines)
 *
 * @param line - Gauge and form of the conductor, current [A], one-way length [m], phases.
 * @returns Drop [V]; undefined where the table has no such gauge.
 * @source NEC-CHAPTER-9
 * @example 14 AWG stranded, 100 ft, 10 A: 2 · 100 · 10 · 3.14 / 1000 = 6.28 V
 */
export function gaugeVoltageDrop(line: {
  readonly gauge: Gauge;
  readonly form: "solid" | "stranded";
  readonly current: Amperes;
  readonly length: Metres;
  readonly phases: Phases;
}): Volts | undefined {
  const resistance = gaugeResistance.rows[line.form][line.gauge];
  if (resistance === undefined) return undefined;
  return (line.phases === "single-phase" ? 2 : Math.sqrt(3)) * line.length * line.current * resistance;
}

/**
 * Voltage drop at the end of a row of loads on one cable.
 *
 * u = b · r · Σ I_k · l_k
 *
 * @param row.loads - Current of each load [A] and its distance from the origin along the route [m].
 * @returns Drop at the last load. [V]
 * @source IEC-60364-5-52-DROP
 * @example 10 × 0.2 A, first at 15 m, pitch 3 m, 1.5 mm²: 2 · 0.015 · 57 = 1.71 V
 */
export function rowVoltageDrop(
  row: DropConductor & {
    readonly loads: readonly { readonly current: Amperes; readonly distance: Metres }[];
    readonly phases: Phases;
  },
): Volts {
  const moment = row.loads.reduce((sum, load) => sum + load.current * load.distance, 0);
  return (row.phases === "single-phase" ? 2 : 1) * dropPerAmpereMetre(row) * moment;
}

/**
 * Longest route that keeps a limit of voltage drop with the load at its end.
 *
 * @param line - Conductor, current [A], phases. @param limit - Largest drop. [V]
 * @returns Length; infinite without current. [m]
 * @source IEC-60364-5-52-DROP
 * @example 1.5 mm², 10 A, 6.9 V, cos φ = 1: 6.9 · 1.5 / (2 · 0.0225 · 10) = 23 m
 */
export const longestForDrop = (
  line: DropConductor & { readonly current: Amperes; readonly phases: Phases },
  limit: Volts,
): Metres => limit / voltageDrop({ ...line, length: 1 });

/**
 * Limit of the voltage drop from the origin of the installation.
 *
 * @param use - Kind of network, lighting or other, and length of the wiring [m].
 * @returns Share of the voltage, supplement of long wiring included.
 * @source IEC-60364-5-52-DROP
 * @example Lighting from the public network, 150 m: 3 % + 50 · 0.005 % = 3.25 %
 */
export function dropLimit(use: {
  readonly network: "public" | "private";
  readonly load: "lighting" | "other";
  readonly length: Metres;
}): Share {
  const { supplement, ...limits } = dropLimits.rows;
  const more = Math.max(0, use.length - supplement.beyond) * supplement.perMetre;
  return limits[use.network][use.load] + Math.min(more, supplement.most);
}

/**
 * Factor on tabulated millivolts of a cable that runs cooler than its rating.
 *
 * Ct = (230 + tp − (Ca²·Cg² − Ib²/It²)·(tp − 30)) / (230 + tp)
 *
 * @param cable - Hottest temperature tp [°C], ambient factor Ca, grouping factor Cg, load Ib/It.
 * @returns Ct.
 * @source BS-7671-4D
 * @example tp = 70, Ca = Cg = 1, half load: (300 − 0.75 · 40) / 300 = 0.9
 */
export const lightLoadFactor = (cable: {
  readonly hottest: number;
  readonly ambient: number;
  readonly grouping: number;
  readonly load: Share;
}): number =>
  (230 +
    cable.hottest -
    (cable.ambient ** 2 * cable.grouping ** 2 - cable.load ** 2) * (cable.hottest - 30)) /
  (230 + cable.hottest);
