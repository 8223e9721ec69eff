import { describe, expect, test } from "vitest";
import { MOST_QUESTIONS, nextQuestion, toBring } from "./call-back.ts";
import { shippedFaultKnowledge as knowledge } from "./knowledge/shipped.ts";
import { type FaultTest, faultTests, symptoms } from "./names.ts";
import { type FaultCase, rankCauses, type TestReading } from "./rank.ts";

const asked = (found: FaultCase, answer: (test: FaultTest) => string): FaultCase => {
  const next = nextQuestion(found, knowledge);
  if (!next) return found;
  const reading = { test: next.test, outcome: answer(next.test) } as TestReading;
  return asked({ ...found, readings: [...found.readings, reading] }, answer);
};
const opens: readonly FaultTest[] = (Object.keys(faultTests) as FaultTest[]).filter(
  (test) => knowledge.descriptions[test].where === "opened",
);

describe("A call-back", () => {
  test.each(symptoms)(
    "of %s: at most five questions with the complaint, each another, none that opens a cover",
    (symptom) => {
      for (const last of [0, 1]) {
        const { readings } = asked({ symptom, facts: undefined, readings: [] }, (name) => {
          const outcomes = faultTests[name] as readonly string[];
          return outcomes[last === 0 ? 0 : outcomes.length - 1]!;
        });
        expect(readings.length + 1).toBeLessThanOrEqual(MOST_QUESTIONS);
        expect(new Set(readings.map(({ test }) => test)).size).toBe(readings.length);
        for (const { test } of readings) expect(opens).not.toContain(test);
      }
    },
  );

  test("answers move the ranking: a light that stays on only while a fan runs points at a source in view", () => {
    const found: FaultCase = { symptom: "stays-on", facts: undefined, readings: [] };
    const share = (of: FaultCase): number =>
      rankCauses(of, knowledge).find(({ cause }) => cause === "source-in-view")!.share;
    const told: FaultCase = {
      ...found,
      readings: [{ test: "ask-machines", outcome: "only-while-they-run" }],
    };
    expect(share(told)).toBeGreaterThan(2 * share(found));
  });

  test("what to bring: each thing once, nothing for what is set with a finger", () => {
    expect(
      toBring([
        { kind: "set", device: "d", setting: "offDelay", value: 600 },
        { kind: "replace", what: "driver", records: [] },
        { kind: "replace", what: "driver", records: [] },
        { kind: "mask", device: "d", source: "s" },
        { kind: "replace", what: "contact", records: [] },
      ]),
    ).toEqual(["driver", "lens-mask", "detector", "contactor"]);
    expect(toBring([{ kind: "keep-shut", opening: "o" }])).toEqual([]);
  });
});
