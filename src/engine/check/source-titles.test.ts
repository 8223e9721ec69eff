import { expect, test } from "vitest";
import { type SourceId, sources } from "../source/index.ts";
import { english } from "./said.ts";
import { shortSourceTitle, sourceTitle } from "./source-titles.ts";

test("in English a source is called as the register has it, in short as far as the first comma or colon; practices and derivations can be said in other languages", () => {
  for (const [id, { kind, title }] of Object.entries(sources)) {
    const called = sourceTitle(id as SourceId);
    expect(english(called), id).toBe(title);
    expect(english(shortSourceTitle(id as SourceId)), id).toBe(title.split(/[,:]/)[0]);
    expect(typeof called, id).toBe(kind === "practice" || kind === "derivation" ? "object" : "string");
  }
});
