import type { Source } from "./entry.ts";

export const faultSources = {
  "FAULT-TRIALS": {
    kind: "data",
    title: "Outcomes of tests counted in simulated rooms with one fault put in",
    certainty: "derived",
    verify: true,
    note: "Rooms, complaints and outcomes come from coverage and control as built; how often a fault stands in the plan already, how often a result is misread, and the leaks, surges and trips themselves are choices of the trial, not field statistics.",
  },
  "BAYES-1763": {
    kind: "paper",
    title: "An essay towards solving a problem in the doctrine of chances",
    edition: "Philosophical Transactions 53, 1763",
    certainty: "from-memory",
    verify: false,
    note: "Observations are taken as independent once the cause is given.",
  },
  "SHANNON-1948": {
    kind: "paper",
    title: "A mathematical theory of communication",
    edition: "Bell System Technical Journal 27, 1948",
    certainty: "from-memory",
    verify: false,
    note: "Information that an observation is expected to give.",
  },
} as const satisfies Record<string, Source>;
