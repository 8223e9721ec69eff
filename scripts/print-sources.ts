// Prints SOURCES.md from the register of sources; a test holds the committed page against it.
import { writeFileSync } from "node:fs";
import { sourcesPage } from "./sources-page.ts";

writeFileSync(new URL("../SOURCES.md", import.meta.url), sourcesPage());
