import type { CatalogueEntry } from "./entry.ts";

/** What codes say of a room, and what can be wrong with a firm's own pack. */
export const ruleProblems = {
  "rule-not-met": {
    severity: "must",
    message: "Room {room} breaks a rule: {title} ({clause}).",
    remedy: "Change the setting or the grouping, or switch the pack off where it is not law.",
  },
  "rule-not-proven": {
    severity: "note",
    message: "In room {room} a rule is not proven: {title} ({clause}). Not known: {missing}.",
    remedy: "Enter what is not known.",
  },
  "rule-facts-missing": {
    severity: "note",
    message: "{missing} is not on record for {rooms}. Rules that cannot be judged there: {count}.",
    remedy:
      "Enter it once for each of them: kinds of space and the power of the plant under Set, the rest at the room.",
  },
  "rule-pack-not-json": {
    severity: "must",
    message: "The rule pack is no JSON: {reason}.",
    remedy: "Open it in a text editor and mend that place.",
  },
  "rule-pack-unknown": {
    severity: "must",
    message: "{word} is neither a pack of rules nor a file that can be read.",
    remedy: "Name a file, or one of {codes}.",
  },
  "rule-pack-wrong": {
    severity: "must",
    message: "The rule pack is wrong at {where}: {reason}.",
    remedy: "Compare it with docs/rule-pack.schema.json.",
  },
  "rule-pack-taken": {
    severity: "must",
    message: "There is a pack of rules with the code {code} already.",
    remedy: "Give your own pack a code of its own.",
  },
  "rule-pack-code-twice": {
    severity: "must",
    message: "The rule pack has two rules with the code {code}.",
    remedy: "Give every rule a code of its own.",
  },
} as const satisfies Record<string, CatalogueEntry>;
