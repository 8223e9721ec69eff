import { deadPairs, type Handover, TESTER_AFTER, TESTER_BEFORE, type TestLine } from "#engine";
import { column } from "../wiring/schedules.ts";
import type { Block } from "./upright-pages.ts";

/** Every pair that is looked at anywhere: a detector with a switched line has all of them. */
const pairs = deadPairs({ hasOutput: true });
const parts = [TESTER_BEFORE, ...pairs, TESTER_AFTER] as const;
const narrow = 15.5;

/** Steps that the matrix shows, one line for each detector. */
export const isProveDead = ({ state }: TestLine): boolean => state.step.name === "prove-dead";

/**
 * Proving dead as a matrix: each detector against each pair of its conductors, between a tester that is proved before and after.
 * What nobody entered is an empty box, to be filled in by hand; a pair that a detector does not have is struck.
 */
export function proveDeadBlock({ tests, site }: Handover, by: (line: TestLine) => string): Block {
  const lines = tests.filter(isProveDead);
  return {
    heading: "Proved dead, between all conductors",
    columns: [
      column("At", 22),
      ...parts.map((part) => column(partHeads[part] ?? part, narrow)),
      column("By, on", 172 - 22 - parts.length * narrow),
    ],
    boxes: true,
    rows: lines.map((line) => {
      const { step } = line.state;
      const tag = site.detectors.find(({ id }) => id === step.about.id)?.tag ?? step.about.id;
      return [tag, ...parts.map((part) => partWord(line, part)), by(line)];
    }),
  };
}

const partHeads: Readonly<Record<string, string>> = {
  [TESTER_BEFORE]: "Tester",
  [TESTER_AFTER]: "Tester",
};

function partWord({ state, entries }: TestLine, part: string): string {
  if (!state.step.parts.includes(part)) return "—";
  const entry = entries.find((one) => one.part === part);
  if (!entry) return "";
  const tester = part === TESTER_BEFORE || part === TESTER_AFTER;
  if (entry.outcome === "failed") return tester ? "! fails" : "! live";
  return tester ? "works" : "dead";
}
