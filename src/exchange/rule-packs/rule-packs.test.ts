import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { evaluateRules, sentenceOf } from "#engine";
import { printedRulePackSchema } from "./print-schema.ts";
import { readRulePack } from "./read-rule-pack.ts";

const own = {
  format: "roomwake-rules",
  version: 1,
  code: "ours",
  title: "Rules of the house",
  jurisdiction: "This firm",
  edition: "3",
  rules: [
    {
      code: "short",
      clause: "1",
      title: "Short in corridors",
      when: { spaces: ["corridor"] },
      limit: { measure: "off-delay", most: 120 },
    },
  ],
};
const problems = (text: string): string[] => {
  const result = readRulePack(text);
  return "problems" in result ? result.problems.map(sentenceOf) : [];
};

test("a firm's own pack is read and evaluated", () => {
  const result = readRulePack(JSON.stringify(own));
  if (!("pack" in result)) throw new Error("not read");
  const facts = {
    room: "r",
    title: "Corridor",
    spaces: ["corridor"] as const,
    measures: { "off-delay": 300 },
  } as const;
  expect(evaluateRules([result.pack], facts)[0]).toMatchObject({
    check: { verdict: "fail", actual: 300, limit: 120, source: "OWN-RULES" },
  });
});

test("each fault says where it is and what is wrong", () => {
  expect(problems("{")[0]).toMatch(/^The rule pack is no JSON: /);
  expect(problems(JSON.stringify({ ...own, rules: [] }))[0]).toMatch(/^The rule pack is wrong at rules: /);
  const negative = { ...own.rules[0], limit: { measure: "off-delay", most: -1 } };
  expect(problems(JSON.stringify({ ...own, rules: [negative] }))[0]).toMatch(/rules\[1\]\.limit/);
  expect(problems(JSON.stringify({ ...own, colour: "red" }))[0]).toMatch(/colour/);
  expect(problems("7")[0]).toMatch(/at the top/);
  expect(readRulePack(JSON.stringify({ ...own, rules: [own.rules[0], own.rules[0]] }))).toEqual({
    problems: [{ code: "rule-pack-code-twice", values: { code: "short" } }],
  });
});

test("whatever is fed to it, it reads or refuses in a sentence", () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
      const found = problems(text);
      expect(found.length).toBeGreaterThan(0);
      for (const sentence of found) expect(sentence).not.toMatch(/\{\w+\}|undefined/);
    }),
    { seed: 20260430, numRuns: 400 },
  );
});

test("the printed schema is what the reader reads by", () => {
  expect(readFileSync(new URL("../../../docs/rule-pack.schema.json", import.meta.url), "utf8")).toBe(
    printedRulePackSchema(),
  );
});
