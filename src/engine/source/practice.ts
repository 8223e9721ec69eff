import type { Source } from "./entry.ts";

export const practiceSources = {
  "COMMON-PRACTICE": {
    kind: "practice",
    title: "Common practice of the trade, no source",
    certainty: "common-practice",
    verify: false,
  },
  "FROM-MEMORY": {
    kind: "practice",
    title: "From memory, not re-read in its source",
    certainty: "from-memory",
    verify: true,
  },
  "DERIVED-HERE": {
    kind: "derivation",
    title: "Derived from first principles; the derivation stands beside the formula",
    certainty: "derived",
    verify: false,
  },
} as const satisfies Record<string, Source>;
