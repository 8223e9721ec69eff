import type { Source } from "./entry.ts";

export const geometrySources = {
  CLIPPER2: {
    kind: "data",
    title: "clipper2-ts, polygon booleans and offsets on integers",
    edition: "2.0.1",
    certainty: "read",
    verify: false,
    note: "Used with whole multiples of 10 µm measured from whole metres near the plan.",
  },
  "SHEWCHUK-1997": {
    kind: "paper",
    title: "Adaptive precision floating-point arithmetic and fast robust geometric predicates",
    edition: "Discrete & Computational Geometry 18, 1997",
    certainty: "from-memory",
    verify: false,
    note: "Through the library robust-predicates.",
  },
  "ANDREW-1979": {
    kind: "paper",
    title: "Another efficient algorithm for convex hulls in two dimensions",
    edition: "Information Processing Letters 9, 1979",
    certainty: "from-memory",
    verify: false,
  },
  "GARCIA-2007": {
    kind: "paper",
    title: "Poles of inaccessibility: a calculation algorithm for the remotest places on earth",
    edition: "Scottish Geographical Journal 123, 2007",
    certainty: "from-memory",
    verify: false,
  },
  "DIJKSTRA-1959": {
    kind: "paper",
    title: "A note on two problems in connexion with graphs",
    edition: "Numerische Mathematik 1, 1959",
    certainty: "from-memory",
    verify: false,
  },
  "LOZANO-PEREZ-WESLEY-1979": {
    kind: "paper",
    title: "An algorithm for planning collision-free paths among polyhedral obstacles",
    edition: "Communications of the ACM 22, 1979",
    certainty: "from-memory",
    verify: false,
    note: "Shortest ways bend only at corners of the grown obstacles: the visibility graph.",
  },
} as const satisfies Record<string, Source>;
