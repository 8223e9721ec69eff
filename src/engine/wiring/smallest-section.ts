import type { ProblemCode } from "../check/index.ts";
import type { SquareMillimetres } from "../quantity/index.ts";
import { circuitChecks } from "./circuit-checks.ts";
import type { WiringModel } from "./model.ts";

/** Sections that one can buy for lighting. [mm²] */
export const sectionsForLighting: readonly SquareMillimetres[] = [1.5, 2.5, 4, 6, 10, 16];

/** Answer of the search for a section. */
export interface SectionChoice {
  readonly section: SquareMillimetres | undefined;
  /** proven: every check passes · no-failure: none fails, but some are not proven · none: even the thickest fails. */
  readonly standing: "proven" | "no-failure" | "none";
  /** What still fails with the thickest, or is not proven with the section. */
  readonly open: readonly string[];
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
 * @returns Section [mm²]; undefined where none does.
 * @source IEC-60364-5-52-DROP, IEC-60364-5-52-CAPACITY, IEC-60364-4-41
 * @example 10 A over 30 m with 1 % used before the board: 1.5 mm² loses 3.9 % more, 4 mm² 1.5 %
 */
export function smallestSection(model: WiringModel, circuit: string): SectionChoice {
  let open: readonly string[] = [];
  for (const section of sectionsForLighting) {
    const checks = circuitChecks(withSection(model, circuit, section), circuit).filter(({ code }) =>
      mendedBySection.has(code),
    );
    const failed = checks.filter(({ verdict }) => verdict === "fail");
    const unproven = checks.filter(({ verdict }) => verdict === "not-proven");
    if (failed.length === 0 && checks.length > 0)
      return {
        section,
        standing: unproven.length === 0 ? "proven" : "no-failure",
        open: unproven.map(({ what }) => what),
      };
    open = failed.map(({ what }) => what);
  }
  return { section: undefined, standing: "none", open };
}

const withSection = (model: WiringModel, circuit: string, section: SquareMillimetres): WiringModel => ({
  ...model,
  segments: model.segments.map((segment) =>
    segment.circuit === circuit ? { ...segment, size: { kind: "metric", section } } : segment,
  ),
});
