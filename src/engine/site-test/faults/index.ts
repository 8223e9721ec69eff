export { alikeCauses } from "./alike.ts";
export { MOST_QUESTIONS, nextQuestion, type ToBring, toBring } from "./call-back.ts";
export { causeDescriptions, symptomDescriptions } from "./cause-descriptions.ts";
export { correctionsOf, type FaultCorrection } from "./correction.ts";
export type { FaultPlace } from "./fault-place.ts";
export { shippedFaultKnowledge } from "./knowledge/shipped.ts";
export type { ChanceTable, FaultKnowledge, Percentages, TestDescription } from "./knowledge-types.ts";
export {
  type FaultCause,
  type FaultTest,
  faultCauses,
  faultTestNames,
  faultTests,
  type Symptom,
  symptoms,
  type TestOutcome,
} from "./names.ts";
export { expectedBits, type NextTest, nextTests } from "./next-tests.ts";
export { factsOf, type PlanFact, planFactNames, planFacts } from "./plan-facts.ts";
export {
  chancesOf,
  type FaultArgument,
  type FaultCase,
  type RankedCause,
  rankCauses,
  type TestReading,
} from "./rank.ts";
