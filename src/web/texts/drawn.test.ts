import { parse } from "@formatjs/icu-messageformat-parser";
import { expect, test } from "vitest";
import { t } from "./drawn.ts";
import sentences from "./en/drawn.json" with { type: "json" };
import { t as formatted } from "./texts.ts";

test("what is written into the plan is letters and {names} alone", () => {
  const [letters, name] = [0, 1];
  const others = Object.entries(sentences).filter(([, text]) =>
    parse(text).some(({ type }) => type !== letters && type !== name),
  );
  expect(others).toEqual([]);
});

test("the plan says the same as the formatter of whole messages", () => {
  const values = { metres: "2.50 m", area: "12.4 m²", count: "3" };
  for (const key of Object.keys(sentences) as (keyof typeof sentences)[])
    expect(t(key, values)).toBe(formatted(key, values));
});
