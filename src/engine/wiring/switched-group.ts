import { type Said, say, type Words } from "../check/index.ts";
import { pulseIntegral } from "./inrush.ts";
import type { Inrush, Load, WiredDetector, WiringModel } from "./model.ts";

/** Luminaires and coils that one switched line feeds, and the contacts that feed it. */
export interface SwitchedGroup {
  readonly id: string;
  readonly name: Words;
  readonly detectors: readonly WiredDetector[];
  readonly loads: readonly Load[];
  readonly contactorsFed: WiringModel["contactors"];
  readonly contactorsFeeding: WiringModel["contactors"];
}

/** The groups of a model by switched line. @param model - The wiring. @returns One for each switched line. @example A detector and its row: one group */
export function switchedGroups(model: WiringModel): readonly SwitchedGroup[] {
  const detectors = byLine(model.detectors, ({ output }) => output);
  const loads = byLine(model.loads, ({ switchedLine }) => switchedLine);
  return model.switchedLines.map(({ id, name }) => ({
    id,
    name,
    detectors: detectors.get(id) ?? [],
    loads: loads.get(id) ?? [],
    contactorsFed: model.contactors.filter(({ coil }) => coil.switchedLine === id),
    contactorsFeeding: model.contactors.filter(({ main }) => main.switchedLine === id),
  }));
}

function byLine<Part>(
  parts: readonly Part[],
  lineOf: (part: Part) => string | undefined,
): ReadonlyMap<string, readonly Part[]> {
  const lines = new Map<string, Part[]>();
  for (const part of parts) {
    const line = lineOf(part);
    if (line === undefined) continue;
    const own = lines.get(line);
    if (own) own.push(part);
    else lines.set(line, [part]);
  }
  return lines;
}

/** Drivers in a load, one for each luminaire if nobody said. @param load - With its count. @returns Whole number. @example Ten luminaires with two drivers: 20 */
export const driversIn = (load: Load): number => load.count * (load.drivers ?? 1);

/** Whether a load draws a pulse when it is switched on. @param load - Any. @returns True with an electronic driver or a ballast. @example An incandescent lamp: false */
export const pulses = (load: Load): boolean => load.kind === "led" || load.kind === "fluorescent";

/** Loads of which nobody counted the drivers: one is taken, and nothing passes by it. @param loads - Any. @returns A sentence for each. @example Not for an incandescent lamp */
export const uncounted = (loads: readonly Load[]): readonly Said[] =>
  loads
    .filter((load) => pulses(load) && load.drivers === undefined)
    .map(({ name }) => say`The number of drivers in ${name} is not on record`);

/** Inrush of several loads that close at once. */
export interface SummedInrush {
  /** Sum of all peaks: the most that can come, since a common line makes it less. [A] */
  readonly peak: number;
  /** Longest width at half the peak. [s] */
  readonly width: number;
  /** Sum of I²t of all, as if one after the other. [A²s] */
  readonly integral: number;
  /** (Σ √I²t)²: the most that pulses at the same instant can let through. [A²s] */
  readonly integralAtOnce: number;
  /** What nobody knows: loads without inrush, which are missing from the sums, and drivers that nobody counted. */
  readonly missing: readonly Said[];
}

/**
 * Inrush of loads that close at the same instant.
 *
 * @param loads - With inrush per driver.
 * @returns Sums; the names of those without data are missing from them.
 * @source DERIVED-HERE, triangle inequality of Minkowski for the Joule integral
 * @example Ten drivers of 30 A, 200 µs: 300 A, 200 µs, 1.35 A²s one by one and 13.5 A²s at once
 */
export function summedInrush(loads: readonly Load[]): SummedInrush {
  const known = loads.filter(pulses).flatMap((load) => (load.inrush ? [{ load, inrush: load.inrush }] : []));
  const integralOf = (inrush: Inrush): number => inrush.integral ?? pulseIntegral(inrush);
  const total = (of: (inrush: Inrush) => number): number =>
    known.reduce((sum, { load, inrush }) => sum + driversIn(load) * of(inrush), 0);
  return {
    peak: total(({ peak }) => peak),
    width: Math.max(0, ...known.map(({ inrush }) => inrush.width)),
    integral: total(integralOf),
    integralAtOnce: total((inrush) => Math.sqrt(integralOf(inrush))) ** 2,
    missing: [
      ...loads
        .filter((load) => load.kind !== "resistive" && !load.inrush)
        .map(({ name }) => say`Inrush of ${name} is not on record`),
      ...uncounted(loads),
    ],
  };
}

/**
 * Loads behind a protective device that close together when power returns.
 *
 * Everything unswitched, and every switched line with an output that is on during warm-up, or of which nobody knows; contactors follow the line of their coil, a manual override counts as closed, also where nobody knows whether there is one.
 *
 * @param model - The wiring. @param device - Id of the protective device.
 * @returns The loads, and what was assumed.
 * @source DERIVED-HERE
 * @example Two rooms whose detectors warm up with the light on: both rooms
 */
export function closingTogether(
  model: WiringModel,
  device: string,
): { readonly loads: readonly Load[]; readonly assumed: readonly Said[] } {
  const circuits = new Set(model.circuits.filter((one) => one.device === device).map(({ id }) => id));
  const on = new Set<string>();
  const assumed: Said[] = [];
  for (const { output, warmUpOutput, tag } of model.detectors) {
    if (output === undefined || warmUpOutput === "off") continue;
    on.add(output);
    if (warmUpOutput === undefined)
      assumed.push(say`${tag} is on during warm-up; its data sheet was not entered`);
  }
  for (const { id, name, override } of model.switchedLines) {
    if (override === "no" || on.has(id)) continue;
    on.add(id);
    if (override !== "yes") assumed.push(say`A switch may keep ${name} on; nobody said that there is none`);
  }
  // A contactor may feed the coil of the next: as many rounds as there are contactors reach the end of any chain.
  for (const _ of model.contactors)
    for (const { coil, main } of model.contactors) if (on.has(coil.switchedLine)) on.add(main.switchedLine);
  return {
    loads: model.loads.filter(
      ({ circuit, switchedLine }) =>
        circuits.has(circuit) && (switchedLine === undefined || on.has(switchedLine)),
    ),
    assumed,
  };
}
