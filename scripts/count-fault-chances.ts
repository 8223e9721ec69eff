// Counts how often each outcome comes with each cause in simulated rooms, and writes the tables that the ranking reasons with.
import { writeFileSync } from "node:fs";
import { descriptions } from "../src/engine/site-test/faults/knowledge/descriptions.ts";
import {
  type FaultCause,
  type FaultTest,
  faultCauses,
  faultTestNames,
  faultTests,
  symptoms,
} from "../src/engine/site-test/faults/names.ts";
import { factsOf, planFactNames } from "../src/engine/site-test/faults/plan-facts.ts";
import { outcomeOf } from "../src/engine/site-test/faults/trial/experiments.fixture.ts";
import { placeOf } from "../src/engine/site-test/faults/trial/plan.fixture.ts";
import { countingSeeds, faultyRooms } from "../src/engine/site-test/faults/trial/trials.fixture.ts";

/** A row that differs from the usual by no more than so many percent is not written. */
const AS_USUAL = 8;
/** A row counted in fewer rooms is not written either. */
const LEAST_ROOMS = 4;

type Counts = Record<string, Partial<Record<FaultCause, number[]>>>;

const counted: { symptoms: Counts; facts: Counts; tests: Counts } = { symptoms: {}, facts: {}, tests: {} };
const note = (counts: Counts, name: string, cause: FaultCause, outcome: number, of: number): void => {
  counts[name] ??= {};
  counts[name][cause] ??= Array.from({ length: of }, () => 0);
  counts[name][cause][outcome]! += 1;
};

let rooms = 0;
for (const { trial, cause, symptom } of faultyRooms(countingSeeds)) {
  note(counted.symptoms, "symptoms", cause, symptoms.indexOf(symptom), symptoms.length);
  const facts = factsOf(placeOf(trial.built.plan));
  for (const fact of planFactNames) note(counted.facts, fact, cause, facts.has(fact) ? 0 : 1, 2);
  for (const test of faultTestNames) {
    if (!descriptions[test].symptoms.includes(symptom)) continue;
    const outcomes: readonly string[] = faultTests[test];
    note(counted.tests, test, cause, outcomes.indexOf(outcomeOf(trial, symptom, test)), outcomes.length);
  }
  if (++rooms % 100 === 0) console.error(`${rooms} rooms`);
}

/** Counts with one more in every outcome, in percent: nothing is ever impossible. */
function percentages(counts: readonly number[]): number[] {
  const sum = counts.reduce((total, one) => total + one + 1, 0);
  return counts.map((one) => Math.max(1, Math.round((100 * (one + 1)) / sum)));
}

function table(counts: Partial<Record<FaultCause, number[]>>, of: number): string {
  const rows = faultCauses.flatMap((cause) => {
    const own = counts[cause];
    return own && own.reduce((sum, one) => sum + one, 0) >= LEAST_ROOMS
      ? [{ cause, row: percentages(own) }]
      : [];
  });
  const usual = Array.from({ length: of }, (_, i) => {
    const sorted = rows.map(({ row }) => row[i]!).toSorted((a, b) => a - b);
    return sorted[sorted.length >> 1] ?? Math.round(100 / of);
  });
  const given = rows.filter(({ row }) => row.some((one, i) => Math.abs(one - usual[i]!) > AS_USUAL));
  return `{ usual: [${usual.join(", ")}], given: {${given.map(({ cause, row }) => `"${cause}": [${row.join(", ")}]`).join(", ")}} }`;
}

const folder = new URL("../src/engine/site-test/faults/knowledge/", import.meta.url);
const how = `Counted in ${countingSeeds.rooms} simulated rooms a cause by scripts/count-fault-chances.ts, one more added to every outcome; in percent. Causes that are not named differ from the usual by no more than ${AS_USUAL} percent, or showed themselves in fewer than ${LEAST_ROOMS} rooms in which this is asked.`;
writeFileSync(
  new URL("counted-plans.ts", folder),
  `import type { ChanceTable } from "../knowledge-types.ts";
import type { PlanFact } from "../plan-facts.ts";

/** Complaints by cause, in the order of their names. ${how} @source FAULT-TRIALS */
export const countedSymptoms: ChanceTable = ${table(counted.symptoms.symptoms!, symptoms.length)};

/** Facts of the plan by cause: holds, does not. ${how} @source FAULT-TRIALS */
export const countedFacts: Readonly<Record<PlanFact, ChanceTable>> = {
${planFactNames.map((fact) => `"${fact}": ${table(counted.facts[fact]!, 2)},`).join("\n")}
};
`,
);
const half = Math.ceil(faultTestNames.length / 2);
const file = (name: string, constant: string, tests: readonly FaultTest[]): void =>
  writeFileSync(
    new URL(name, folder),
    `import type { ChanceTable } from "../knowledge-types.ts";

/** Outcomes of tests by cause, in the order of their names. ${how} @source FAULT-TRIALS */
export const ${constant} = {
${tests.map((test) => `"${test}": ${table(counted.tests[test] ?? {}, faultTests[test].length)},`).join("\n")}
} as const satisfies Readonly<Record<string, ChanceTable>>;
`,
  );
file("counted-talks-and-walks.ts", "talksAndWalks", faultTestNames.slice(0, half));
file("counted-measurements.ts", "measurements", faultTestNames.slice(half));
console.error(
  `${rooms} rooms counted; now format with: npx biome check --write src/engine/site-test/faults/knowledge`,
);
