import type { CatalogueEntry } from "./entry.ts";

/** What can be wrong with a plan as it was drawn or read. */
export const siteProblems = {
  "detector-outside-room": {
    severity: "must",
    message: "Detector {tag} lies outside room {room}.",
    remedy: "Drag it back inside, or assign it to the room it stands in.",
  },
} as const satisfies Record<string, CatalogueEntry>;
