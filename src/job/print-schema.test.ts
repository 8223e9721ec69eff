import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { printedFiles } from "./print-schema.ts";

test.each(Object.entries(printedFiles))(
  "%s is what the code prints (npx tsx src/job/print-schema.ts)",
  (path, text) => {
    expect(readFileSync(new URL(`../../${path}`, import.meta.url), "utf8")).toBe(text());
  },
);
