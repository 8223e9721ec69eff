import type { ProblemCode, Said } from "../check/index.ts";
import type { SquareMillimetres } from "../quantity/index.ts";
import { circuitChecks } from "./circuit-checks.ts";
import type { ConductorSize, WiringModel } from "./model.ts";
import { supplyOfCircuit } from "./supply.ts";
import type { Gauge } from "./tables/united-states.ts";

/** Sections that one can buy for lighting. [mm²] */
export const sectionsForLighting: readonly SquareMillimetres[] = [1.5, 2.5, 4, 6, 10, 16];

/** Gauges of copper for lighting, thin to thick, as far as their ampacity is on record. */
const gaugesForLighting: readonly Gauge[] = [14, 12, 10];

/** Answer of the search for a section, or for a gauge where cables are sized by it. */
export interface SectionChoice {
  readonly section: SquareMillimetres | undefined;
  /** American wire gauge, on a supply of the United States or where the cable has one; then `section` is undefined. */
  readonly gauge?: Gauge;
  /** proven: every check passes · no-failure: none fails, but some are not proven · none: even the thickest fails. */
  readonly standing: "proven" | "no-failure" | "none";
  /** What still fails with the thickest, or is not proven with the section. */
  readonly open: readonly Said[];
}

/** What a thicker cable can mend. The load, the leakage and the breaking capacity are what they are. */
const mendedBySection: ReadonlySet<ProblemCode> = new Set([
  "voltage-drop-too-large",
  "cable-too-thin",
  "section-below-smallest",
  "fault-loop-too-large",
  "cable-burns-in-a-fault",
]);

/**
 * Smallest section, the same along the whole circuit, with which no check fails that a thicker cable can mend.
 *
 * @param model - The wiring. @param circuit - Id of the circuit.
 * @returns Section [mm²] or gauge; neither where none does.
 * @source IEC-60364-5-52-DROP, IEC-60364-5-52-CAPACITY, IEC-60364-4-41, NEC-310
 * @example 10 A over 30 m with 1 % used before the board: 1.5 mm² loses 3.9 % more, 4 mm² 1.5 %
 */
export function smallestSection(model: WiringModel, circuit: string): SectionChoice {
  let open: readonly Said[] = [];
  for (const size of sizesFor(model, circuit)) {
    const checks = circuitChecks(withSize(model, circuit, size), circuit).filter(({ code }) =>
      mendedBySection.has(code),
    );
    const failed = checks.filter(({ verdict }) => verdict === "fail");
    const unproven = checks.filter(({ verdict }) => verdict === "not-proven");
    if (failed.length === 0 && checks.length > 0)
      return {
        ...(size.kind === "gauge" ? { section: undefined, gauge: size.gauge } : { section: size.section }),
        standing: unproven.length === 0 ? "proven" : "no-failure",
        open: unproven.map(({ what }) => what),
      };
    open = failed.map(({ what }) => what);
  }
  return { section: undefined, standing: "none", open };
}

/** Sizes by thickness, in the way in which the circuit's cables are sized. */
function sizesFor(model: WiringModel, circuit: string): readonly ConductorSize[] {
  const laid = model.segments.find((segment) => segment.circuit === circuit)?.size;
  if (laid?.kind !== "gauge" && supplyOfCircuit(model, circuit).region !== "US")
    return sectionsForLighting.map((section) => ({ kind: "metric", section }));
  const form = laid?.kind === "gauge" ? laid.form : "stranded";
  return gaugesForLighting.map((gauge) => ({ kind: "gauge", gauge, form }));
}

const withSize = (model: WiringModel, circuit: string, size: ConductorSize): WiringModel => ({
  ...model,
  segments: model.segments.map((segment) => (segment.circuit === circuit ? { ...segment, size } : segment)),
});
