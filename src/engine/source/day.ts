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
} as const satisfies Record<string, Source>;
