import { expect, test } from "vitest";
import { type SourceId, sources } from "../source/index.ts";
import { english } from "./said.ts";
import { sourceTitle } from "./source-titles.ts";

test("in English a source is called as the register has it; practices and derivations can be said in other languages", () => {
  for (const [id, { kind, title }] of Object.entries(sources)) {
    const called = sourceTitle(id as SourceId);
    expect(english(called), id).toBe(title);
    expect(typeof called, id).toBe(kind === "practice" || kind === "derivation" ? "object" : "string");
  }
});
