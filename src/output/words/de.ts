import installation from "./de/installation.json" with { type: "json" };
import pages from "./de/pages.json" with { type: "json" };
import problems from "./de/problems.json" with { type: "json" };
import rooms from "./de/rooms.json" with { type: "json" };
import sheets from "./de/sheets.json" with { type: "json" };
import tests from "./de/tests.json" with { type: "json" };
import wiring from "./de/wiring.json" with { type: "json" };
import type { PaperWords } from "./paper-words.ts";

export const german: PaperWords = {
  sentences: { ...installation, ...pages, ...rooms, ...sheets, ...tests, ...wiring },
  decimal: ",",
  days: "$3.$2.$1",
  nouns: "large",
  problems,
};
