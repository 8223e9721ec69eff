import installation from "./fr/installation.json" with { type: "json" };
import pages from "./fr/pages.json" with { type: "json" };
import problems from "./fr/problems.json" with { type: "json" };
import rooms from "./fr/rooms.json" with { type: "json" };
import sheets from "./fr/sheets.json" with { type: "json" };
import tests from "./fr/tests.json" with { type: "json" };
import wiring from "./fr/wiring.json" with { type: "json" };
import type { PaperWords } from "./paper-words.ts";

export const french: PaperWords = {
  sentences: { ...installation, ...pages, ...rooms, ...sheets, ...tests, ...wiring },
  decimal: ",",
  beforeSigns: "\u00a0",
  days: "$3/$2/$1",
  nouns: "small",
  problems,
};
