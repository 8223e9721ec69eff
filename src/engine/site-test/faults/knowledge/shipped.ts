import type { FaultKnowledge } from "../knowledge-types.ts";
import { commonness } from "./commonness.ts";
import { measurements } from "./counted-measurements.ts";
import { countedFacts, countedSymptoms } from "./counted-plans.ts";
import { talksAndWalks } from "./counted-talks-and-walks.ts";
import { descriptions } from "./descriptions.ts";

/** The knowledge that comes with the program; a firm may put its own in its place. */
export const shippedFaultKnowledge: FaultKnowledge = {
  commonness,
  symptoms: countedSymptoms,
  facts: countedFacts,
  // Marked as without effect, so that workers that rank no faults do not carry the tables.
  tests: /* @__PURE__ */ Object.assign({}, talksAndWalks, measurements),
  descriptions,
  source: { chances: "FAULT-TRIALS", commonness: "COMMON-PRACTICE" },
};
