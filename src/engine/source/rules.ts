import type { Source } from "./entry.ts";

export const ruleSources = {
  "IECC-2021": {
    kind: "standard",
    title: "International Energy Conservation Code, commercial provisions, lighting controls",
    edition: "2021",
    clause: "C405.2.1",
    certainty: "read",
    verify: false,
    note: "In force only where adopted, often amended.",
  },
  "ASHRAE-90-1": {
    kind: "standard",
    title: "ASHRAE 90.1, Energy standard for buildings: automatic full off",
    edition: "2016, 2019",
    clause: "9.4.1.1(h)",
    certainty: "secondary",
    verify: true,
    note: "As coded in a public set of verification rules. Which spaces need it (table 9.6.1) was not seen and is not used.",
  },
  "TITLE-24": {
    kind: "standard",
    title: "California Code of Regulations, Title 24, part 6",
    edition: "2022",
    clause: "130.1(c)",
    certainty: "secondary",
    verify: true,
    note: "Zone sizes and warehouse aisles as seen; its time-out is from memory and not used.",
  },
  "EPBD-2024": {
    kind: "standard",
    title: "Directive (EU) 2024/1275 on the energy performance of buildings",
    edition: "2024",
    clause: "Article 13(12)",
    certainty: "from-memory",
    verify: true,
    note: "Powers and dates also seen in one summary; the official text was not reached.",
  },
  "OWN-RULES": {
    kind: "practice",
    title: "A firm's own rule pack",
    certainty: "common-practice",
    verify: true,
    note: "Entered by the firm that uses it.",
  },
} as const satisfies Record<string, Source>;
