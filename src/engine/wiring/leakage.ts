import { say } from "../check/index.ts";
import type { Amperes, KilowattHours, Watts } from "../quantity/index.ts";
import type { CircuitCase } from "./circuit-case.ts";
import type { Load, WiredDetector, WiringModel } from "./model.ts";
import { highIntegrity, leakageShares, unknownLeakage } from "./tables/protection.ts";
import { atMost, type WiringCheck, withDoubts } from "./wiring-check.ts";

/** Hours in a year of 365 days. */
const YEAR = 8760;

/** Standing protective-conductor current of loads and detectors; 3.5 mA for a luminaire of class I that nobody declared. @param loads - With their counts. @param detectors - On the same RCD. @returns [A] @source IEC-60598-1 @example Twelve at 0.7 mA: 8.4 mA */
export const standingLeakage = (loads: readonly Load[], detectors: readonly WiredDetector[]): Amperes =>
  loads.reduce(
    (sum, load) => sum + load.count * (load.leakage ?? (load.classOne === "no" ? 0 : unknownLeakage.rows)),
    0,
  ) + detectors.reduce((sum, { leakage }) => sum + (leakage ?? 0), 0);

/** Most luminaires behind an RCD by their leakage. @param residual - IΔn. [A] @param each - Leakage of one. [A] @returns Whole number. @source LEAKAGE-SHARE @example 30 mA at 0.7 mA: 0.3 · 30 / 0.7 → 12 */
export const mostByLeakage = (residual: Amperes, each: Amperes): number =>
  // Nine thousandths divided by halves of a thousandth must count eighteen, not seventeen, in binary fractions.
  Math.floor((leakageShares.rows.standing * residual) / each + 1e-9);

/** Energy that devices draw in a year by being ready. @param standby - Power of each. [W] @returns [kWh] @source DERIVED-HERE @example Twenty of 0.5 W: 87.6 kWh */
export const standbyEnergy = (standby: readonly Watts[]): KilowattHours =>
  standby.reduce((sum, watts) => sum + (watts * YEAR) / 1000, 0);

/** What all detectors draw by being ready. */
export interface Standby {
  /** In a year, of those that declare it. */
  readonly perYear: KilowattHours;
  /** Tags of those whose data sheet does not say. */
  readonly unknown: readonly string[];
}

/** Standby of a wiring. @param detectors - All of them. @returns Energy in a year [kWh], and whose is unknown @source DERIVED-HERE @example Two of 0.5 W and one that nobody knows: 8.76 kWh, one unknown */
export const standbyOf = (detectors: readonly Pick<WiredDetector, "tag" | "standby">[]): Standby => ({
  perYear: standbyEnergy(detectors.flatMap(({ standby }) => standby ?? [])),
  unknown: detectors.filter(({ standby }) => standby === undefined).map(({ tag }) => tag),
});

/** Loads and detectors that share the RCD of a device. @param model - The wiring. @param rcd - Id of the RCD. @returns Both lists. @example A detector fed from a circuit behind it belongs to it */
export function behindRcd(
  model: WiringModel,
  rcd: string,
): { readonly loads: readonly Load[]; readonly detectors: readonly WiredDetector[] } {
  const devices = new Set(
    model.devices.flatMap((device) =>
      typeof device.rcd === "object" && device.rcd.id === rcd ? [device.id] : [],
    ),
  );
  const circuits = new Set(model.circuits.flatMap(({ id, device }) => (devices.has(device) ? [id] : [])));
  return {
    loads: model.loads.filter(({ circuit }) => circuits.has(circuit)),
    detectors: model.detectors.filter(({ line }) => line.kind === "line" && circuits.has(line.circuit)),
  };
}

/**
 * Standing leakage behind the circuit's RCD.
 *
 * Σ ≤ 0.3 · IΔn
 *
 * @param model - The wiring. @param device - Protective device of the circuit. @param loads - On the circuit.
 * @returns Check over everything behind the same RCD; without an RCD, whether the protective conductor needs high integrity.
 * @source LEAKAGE-SHARE, BS-7671-543-7
 * @example Three high-bays of 3.5 mA on 30 mA: 10.5 of 9 mA fails
 */
export function leakageCheck({ model, tree, device, loads }: CircuitCase): WiringCheck {
  const rcd = typeof device.rcd === "object" ? device.rcd : undefined;
  const behind = rcd ? behindRcd(model, rcd.id) : { loads, detectors: [] };
  const actual = standingLeakage(behind.loads, behind.detectors);
  const limit = rcd ? leakageShares.rows.standing * rcd.residual : highIntegrity.rows;
  const assumed = behind.loads.some((load) => load.leakage === undefined && load.classOne !== "no");
  const silent = behind.detectors.filter(({ leakage }) => leakage === undefined);
  const verdict = withDoubts(atMost(actual, limit), [
    ...(device.rcd === undefined ? [say`RCD unknown`] : []),
    ...silent.map(({ tag }) => say`Leakage of ${tag} unknown`),
  ]);
  return {
    // What was only assumed cannot fail for certain: the worst that the standard of luminaires allows was taken.
    verdict:
      verdict === "fail" && assumed && standingLeakage(declared(behind.loads), behind.detectors) <= limit
        ? "not-proven"
        : verdict,
    what: rcd
      ? say`Standing leakage behind the RCD`
      : say`Protective-conductor current without high integrity`,
    actual: 1000 * actual,
    limit: 1000 * limit,
    unit: "mA",
    source: rcd ? "LEAKAGE-SHARE" : "BS-7671-543-7",
    assumptions: [
      ...(assumed ? [say`3.5 mA for each luminaire whose leakage nobody declared`] : []),
      ...(silent.length > 0 ? [say`Nothing for detectors whose leakage nobody declared`] : []),
      ...(device.rcd === undefined ? [say`Nobody knows whether there is an RCD`] : []),
    ],
    missing: [
      ...(device.rcd === undefined ? [say`whether there is an RCD, and its rated residual current`] : []),
      ...(assumed ? [say`the leakage of each luminaire`] : []),
      ...(silent.length > 0 ? [say`the leakage of each detector`] : []),
    ],
    code: rcd ? "standing-leakage-too-large" : "protective-conductor-current",
    name: tree.circuit.name,
    records: [tree.circuit.id],
  };
}

const declared = (loads: readonly Load[]): readonly Load[] =>
  loads.filter(({ leakage }) => leakage !== undefined);
