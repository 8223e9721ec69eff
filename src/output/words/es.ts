import installation from "./es/installation.json" with { type: "json" };
import pages from "./es/pages.json" with { type: "json" };
import problems from "./es/problems.json" with { type: "json" };
import rooms from "./es/rooms.json" with { type: "json" };
import sheets from "./es/sheets.json" with { type: "json" };
import tests from "./es/tests.json" with { type: "json" };
import wiring from "./es/wiring.json" with { type: "json" };
import type { PaperWords } from "./paper-words.ts";

export const spanish: PaperWords = {
  sentences: { ...installation, ...pages, ...rooms, ...sheets, ...tests, ...wiring },
  decimal: ",",
  days: "$3/$2/$1",
  nouns: "small",
  problems,
};
