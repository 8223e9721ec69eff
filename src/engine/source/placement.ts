import type { Source } from "./entry.ts";

export const placementSources = {
  "GAO-2015": {
    kind: "paper",
    title:
      "Gao, Weise, Li: An efficient local search heuristic with row weighting for the unicost set covering problem",
    edition: "European Journal of Operational Research 246 (2015)",
    certainty: "from-memory",
    verify: true,
  },
  "TOZONI-2016": {
    kind: "paper",
    title:
      "Tozoni, de Rezende, de Souza: Algorithm 966, a practical iterative algorithm for the art gallery problem",
    edition: "ACM Transactions on Mathematical Software 43 (2016)",
    certainty: "from-memory",
    verify: true,
    note: "Taken from it: finitely many witnesses bound the continuous problem from below.",
  },
  "OR-LIBRARY": {
    kind: "data",
    title: "Beasley: OR-Library, set covering test problems",
    certainty: "from-memory",
    verify: true,
    note: "Instances and optima are kept apart from the project.",
  },
  "FULKERSON-1974": {
    kind: "paper",
    title:
      "Fulkerson, Nemhauser, Trotter: Two computationally difficult set covering problems that arise in computing the 1-width of incidence matrices of Steiner triple systems",
    edition: "Mathematical Programming Study 2 (1974)",
    certainty: "from-memory",
    verify: true,
  },
} as const satisfies Record<string, Source>;
