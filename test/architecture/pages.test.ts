import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { sourcesPage } from "../../scripts/sources-page.ts";
import { root } from "./source-files.ts";

const page = (name: string): string => readFileSync(join(root, name), "utf8");

test("[PAG-1] SOURCES.md is what the register prints", () => {
  expect(page("SOURCES.md")).toBe(sourcesPage());
});

test("[PAG-2] the README names the two commands, and every picture and page it links to exists", () => {
  const readme = page("README.md");
  expect(readme).toContain("npm start");
  expect(readme).toContain("npm test");
  const links = [...readme.matchAll(/\]\((?!https?:|#)([^)#]+)/g)].map((match) => match[1]!);
  expect(links.length).toBeGreaterThan(3);
  expect(links.filter((link) => !existsSync(join(root, link)))).toEqual([]);
});
