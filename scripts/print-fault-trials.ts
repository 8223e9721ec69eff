// Diagnoses the held-out rooms and prints how often the right cause is found, with the confusion matrix, into FAULT-TRIALS.md.
import { writeFileSync } from "node:fs";
import { alikeCauses } from "../src/engine/site-test/faults/alike.ts";
import { shippedFaultKnowledge } from "../src/engine/site-test/faults/knowledge/shipped.ts";
import { type FaultCause, faultCauses } from "../src/engine/site-test/faults/names.ts";
import {
  type Diagnosis,
  diagnose,
  placeOfCause,
} from "../src/engine/site-test/faults/trial/diagnose.fixture.ts";
import { faultyRooms, heldOutSeeds } from "../src/engine/site-test/faults/trial/trials.fixture.ts";

const diagnoses: Diagnosis[] = [];
for (const room of faultyRooms(heldOutSeeds)) {
  diagnoses.push(diagnose(room));
  if (diagnoses.length % 50 === 0) console.error(`${diagnoses.length} rooms`);
}

const share = (list: "before" | "after", within: number): string => {
  const hits = diagnoses.filter((one) => {
    const at = placeOfCause(one[list], one.room.cause);
    return at >= 0 && at < within;
  }).length;
  return `${hits} of ${diagnoses.length} (${((100 * hits) / diagnoses.length).toFixed(1)} %)`;
};
const mean = (of: (one: Diagnosis) => number): string =>
  (diagnoses.reduce((sum, one) => sum + of(one), 0) / diagnoses.length).toFixed(1);

const groups = alikeCauses(shippedFaultKnowledge).filter((group) => group.length > 1);
const rows = faultCauses.map((cause) => {
  const own = diagnoses.filter((one) => one.room.cause === cause);
  const named = new Map<FaultCause, number>();
  for (const one of own) {
    const [first] = one.after;
    const said = first!.includes(cause) ? cause : first![0]!;
    named.set(said, (named.get(said) ?? 0) + 1);
  }
  const right = named.get(cause) ?? 0;
  const wrong = [...named].filter(([said]) => said !== cause).map(([said, times]) => `${said} ${times}`);
  const within = own.filter((one) => placeOfCause(one.after, cause) < 3).length;
  return `| ${cause} | ${own.length} | ${right} | ${within} | ${wrong.join(", ") || "–"} |`;
});
const page = `# Faults found in rooms held out

Printed by \`npx tsx scripts/print-fault-trials.ts\`. ${heldOutSeeds.rooms} rooms for each of ${faultCauses.length} causes, from seeds that were fixed before any
number of the knowledge was set. Complaints and outcomes come from coverage and control with the fault put in; 4 % of all
outcomes are misread. The finder knows the plan and the complaint, and asks for the test that tells most for its time until it
is 95 % sure, nothing is worth asking, or twelve tests are made.

| | right cause first | among the first three |
|---|---|---|
| complaint and plan alone | ${share("before", 1)} | ${share("before", 3)} |
| after the tests it asked for | ${share("after", 1)} | ${share("after", 3)} |

Goal: first in at least 80 %, among the first three in at least 95 %. Tests made: ${mean((one) => one.tests.length)} on average, ${mean((one) => one.minutes)} minutes.

Causes that no test tells apart, which count as one: ${groups.map((group) => group.join(" = ")).join("; ") || "none"}.

What these figures are not: field statistics. The rooms, their faults and the misreadings are simulated, and the chances were
counted in rooms of the same generator.

## Who is taken for whom

| cause put in | rooms | named first | among three | otherwise named first |
|---|---|---|---|---|
${rows.join("\n")}
`;
writeFileSync(new URL("../src/engine/site-test/faults/FAULT-TRIALS.md", import.meta.url), page);
console.log(page);
