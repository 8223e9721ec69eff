import { expect, test } from "vitest";
import { preferencesIn } from "./preferences.ts";

test("preferences that were kept come back", () => {
  const kept = { units: "imperial", theme: "dark", contrast: "more", language: "de" } as const;
  expect(preferencesIn(JSON.stringify(kept))).toEqual(kept);
});

test.each([null, "", "{", "null", "7", '{"units":"furlongs","theme":3,"language":"xx"}'])(
  "%s counts as not chosen",
  (stored) => {
    expect(preferencesIn(stored)).toEqual({
      units: "metric",
      theme: "system",
      contrast: "normal",
      language: "browser",
    });
  },
);
