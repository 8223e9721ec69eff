import {
  deadPairs,
  type Handover,
  say,
  TESTER_AFTER,
  TESTER_BEFORE,
  type TestLine,
  type Words,
} from "#engine";
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
export function proveDeadBlock({ tests, site }: Handover, by: (line: TestLine) => Words): Block {
  const lines = tests.filter(isProveDead);
  return {
    heading: say`Proved dead, between all conductors`,
    columns: [
      column(say`At`, 22),
      ...parts.map((part) => column(partHeads[part] ?? part, narrow)),
      column(say`By, on`, 172 - 22 - parts.length * narrow),
    ],
    boxes: true,
    rows: lines.map((line) => {
      const { step } = line.state;
      const tag = site.detectors.find(({ id }) => id === step.about.id)?.tag ?? step.about.id;
      return [tag, ...parts.map((part) => partWord(line, part)), by(line)];
    }),
  };
}

const partHeads: Readonly<Record<string, Words>> = {
  [TESTER_BEFORE]: say`Tester`,
  [TESTER_AFTER]: say`Tester`,
};

function partWord({ state, entries }: TestLine, part: string): Words {
  if (!state.step.parts.includes(part)) return "—";
  const entry = entries.find((one) => one.part === part);
  if (!entry) return "";
  const tester = part === TESTER_BEFORE || part === TESTER_AFTER;
  if (entry.outcome === "failed") return tester ? say`! fails` : say`! live`;
  return tester ? say`works` : say`dead`;
}
