import type { Source } from "./entry.ts";

export const daySources = {
  "DAY-PATTERN": {
    kind: "practice",
    title:
      "A usual day by use of the room: who is there when, and how long somebody may stay without a visible movement",
    certainty: "derived",
    verify: false,
    note: "Our own choice to try settings with; no measurement of any building.",
  },
  "DAY-CURVE": {
    kind: "practice",
    title: "Daylight at the detector as half a sine between two times of the day",
    certainty: "derived",
    verify: false,
    note: "Our own assumption to try a threshold with; no forecast.",
  },
  "HUNT-1979": {
    kind: "paper",
    title: "Hunt: The use of artificial lighting in relation to daylight levels and occupancy",
    edition: "Building and Environment 14 (1979)",
    certainty: "secondary",
    verify: true,
    note: "Constants of the switching curve as coded in public implementations.",
  },
  "REINHART-2003": {
    kind: "paper",
    title: "Reinhart, Voss: Monitoring manual control of electric lighting and blinds",
    edition: "Lighting Research and Technology 35 (2003)",
    certainty: "secondary",
    verify: true,
    note: "Constants of the switching curve as coded in public implementations.",
  },
} as const satisfies Record<string, Source>;
