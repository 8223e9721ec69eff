import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { roomCoverage } from "../../coverage/index.ts";
import {
  alikeCauses,
  chancesOf,
  correctionsOf,
  expectedBits,
  type FaultCase,
  type FaultKnowledge,
  factsOf,
  faultCauses,
  faultTestNames,
  faultTests,
  nextTests,
  planFactNames,
  rankCauses,
  shippedFaultKnowledge,
  symptoms,
  type TestReading,
} from "./index.ts";
import { diagnose, placeOfCause } from "./trial/diagnose.fixture.ts";
import { drawsOf } from "./trial/draws.fixture.ts";
import { placeOf, randomPlan } from "./trial/plan.fixture.ts";
import { faultyRoom, faultyRooms, heldOutSeeds } from "./trial/trials.fixture.ts";

const known = shippedFaultKnowledge;

test("[FLT-4] in rooms held out the right cause is named first in at least 80 %, among the first three in at least 95 %", () => {
  // One room a cause; FAULT-TRIALS.md holds all of them and who is taken for whom.
  const places = [...faultyRooms({ ...heldOutSeeds, rooms: 1 })].map((room) => {
    const { after } = diagnose(room);
    return placeOfCause(after, room.cause);
  });
  expect(places.length).toBe(faultCauses.length);
  expect(places.filter((place) => place === 0).length / places.length).toBeGreaterThanOrEqual(0.8);
  expect(places.filter((place) => place < 3).length / places.length).toBeGreaterThanOrEqual(0.95);
});

describe("[FLT-5] ranking", () => {
  const readings: fc.Arbitrary<readonly TestReading[]> = fc
    .uniqueArray(fc.constantFrom(...faultTestNames), { maxLength: 6 })
    .chain((tests) =>
      fc.tuple(
        ...tests.map((name) =>
          fc.constantFrom(...faultTests[name]).map((outcome) => ({ test: name, outcome }) as TestReading),
        ),
      ),
    );
  const cases: fc.Arbitrary<FaultCase> = fc.record({
    symptom: fc.constantFrom(...symptoms),
    facts: fc.option(
      fc.subarray([...planFactNames]).map((facts) => new Set(facts)),
      { nil: undefined },
    ),
    readings,
  });

  test("gives every cause a share, and the shares sum to 1", () => {
    fc.assert(
      fc.property(cases, (found) => {
        const ranked = rankCauses(found, known);
        expect(ranked.map(({ cause }) => cause).toSorted()).toEqual([...faultCauses].toSorted());
        expect(ranked.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
        for (const [i, one] of ranked.entries())
          if (i > 0) expect(one.share).toBeLessThanOrEqual(ranked[i - 1]!.share);
      }),
      { seed: 20_264, numRuns: 60 },
    );
  });
  test("does not depend on the order of the tests", () => {
    fc.assert(
      fc.property(cases, (found) => {
        const [one, other] = [found, { ...found, readings: found.readings.toReversed() }].map((each) =>
          rankCauses(each, known),
        );
        for (const { cause, share } of one!)
          expect(other!.find((each) => each.cause === cause)!.share).toBeCloseTo(share, 9);
      }),
      { seed: 20_265, numRuns: 60 },
    );
  });
  test("an outcome raises exactly the causes that explain it better than all causes together do", () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(...faultTestNames), (found, name) => {
        fc.pre(!found.readings.some((reading) => reading.test === name));
        const before = rankCauses(found, known);
        const chance = (cause: (typeof faultCauses)[number]) => chancesOf(known.tests[name], cause)[0]!;
        const together = before.reduce((sum, { cause, share }) => sum + share * chance(cause), 0);
        const reading = { test: name, outcome: faultTests[name][0] } as TestReading;
        const after = rankCauses({ ...found, readings: [...found.readings, reading] }, known);
        for (const { cause, share } of before)
          expect(after.find((one) => one.cause === cause)!.share).toBeCloseTo(
            (share * chance(cause)) / together,
            9,
          );
      }),
      { seed: 20_266, numRuns: 60 },
    );
  });
  test("says what speaks for a cause and what against it", () => {
    const [first] = rankCauses(
      {
        symptom: "stays-on",
        facts: new Set(["source-in-view"]),
        readings: [
          { test: "ask-machines", outcome: "only-while-they-run" },
          { test: "silence-microphone", outcome: "goes-on" },
        ],
      },
      known,
    );
    expect(first!.cause).toBe("source-in-view");
    expect(first!.for.map(({ about }) => about)).toContainEqual({
      kind: "fact",
      fact: "source-in-view",
      holds: true,
    });
    const noise = rankCauses(
      {
        symptom: "stays-on",
        facts: undefined,
        readings: [{ test: "silence-microphone", outcome: "goes-on" }],
      },
      known,
    ).find(({ cause }) => cause === "noise-heard")!;
    expect(noise.against[0]!.about).toEqual({
      kind: "test",
      reading: { test: "silence-microphone", outcome: "goes-on" },
    });
  });
  test("an outcome that a test does not have is refused", () => {
    const wrong = { test: "ask-hours", outcome: "lit" } as unknown as TestReading;
    expect(() => rankCauses({ symptom: "stays-on", facts: undefined, readings: [wrong] }, known)).toThrow(
      "ask-hours has no outcome lit",
    );
  });
});

describe("[FLT-6] the next test", () => {
  const two = (share: number) => [
    { cause: "delay-too-long" as const, share },
    { cause: "contact-welded" as const, share: 1 - share },
  ];
  test("one that parts two equal causes for certain is worth 1 bit, one that says the same of both nothing", () => {
    expect(expectedBits(two(0.5), (cause) => (cause === "delay-too-long" ? [1, 0] : [0, 1]))).toBeCloseTo(
      1,
      12,
    );
    expect(expectedBits(two(0.5), () => [0.3, 0.7])).toBeCloseTo(0, 12);
  });
  test("is worth no more than is unknown", () => {
    const unknown = -0.2 * Math.log2(0.2) - 0.8 * Math.log2(0.8);
    expect(expectedBits(two(0.2), (cause) => (cause === "delay-too-long" ? [1, 0] : [0, 1]))).toBeCloseTo(
      unknown,
      12,
    );
  });
  test("is never one that was made, nor one that says nothing of the complaint", () => {
    for (const symptom of symptoms) {
      const made: TestReading = { test: "ask-hours", outcome: "after-dark-too" };
      const next = nextTests({ symptom, facts: undefined, readings: [made] }, known).map((one) => one.test);
      expect(next).not.toContain("ask-hours");
      for (const name of next) expect(known.descriptions[name].symptoms).toContain(symptom);
      expect(next.length).toBeGreaterThan(0);
    }
  });
  test("a welded contact is told from a switch beside it by unplugging the output", () => {
    const next = nextTests(
      {
        symptom: "stays-on",
        facts: undefined,
        readings: [
          { test: "cover-lenses", outcome: "stays-lit" },
          { test: "measure-open-output", outcome: "live" },
          { test: "cover-neighbours", outcome: "goes-on" },
        ],
      },
      known,
    );
    expect(next.slice(0, 3).map((one) => one.test)).toContain("unplug-output");
  });
});

describe("[FLT-7] the knowledge", () => {
  test("has a positive chance for every outcome of every test, symptom and fact with every cause", () => {
    const tables = [
      { table: known.symptoms, of: symptoms.length },
      ...planFactNames.map((fact) => ({ table: known.facts[fact], of: 2 })),
      ...faultTestNames.map((name) => ({ table: known.tests[name], of: faultTests[name].length })),
    ];
    for (const { table, of } of tables)
      for (const cause of faultCauses) {
        const chances = chancesOf(table, cause);
        expect(chances.length).toBe(of);
        expect(Math.min(...chances)).toBeGreaterThan(0);
        expect(chances.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
      }
  });
  test("tells every two causes apart by some test", () => {
    expect(alikeCauses(known).filter((group) => group.length > 1)).toEqual([]);
  });
  test("without the tests of the glowing lamps these causes count as one", () => {
    const blunt: FaultKnowledge = {
      ...known,
      tests: {
        ...known.tests,
        "look-for-suppressor": { usual: [1, 1, 1], given: {} },
        "take-out-glow-lamp": { usual: [1, 1, 1], given: {} },
        "unplug-output": { usual: [1, 1, 1], given: {} },
        "press-button": { usual: [1, 1, 1], given: {} },
      },
    };
    const group = alikeCauses(blunt).find((one) => one.includes("suppressor-leaks"));
    expect(group).toContain("long-cores-couple");
  });
  test("can be edited: what a firm meets often comes first", () => {
    const found: FaultCase = { symptom: "glows-when-off", facts: undefined, readings: [] };
    const own: FaultKnowledge = { ...known, commonness: { ...known.commonness, "long-cores-couple": 50 } };
    expect(rankCauses(found, own)[0]!.cause).toBe("long-cores-couple");
    expect(rankCauses(found, known)[0]!.cause).not.toBe("long-cores-couple");
  });
});

test("[FLT-8] every cause ends in a correction, with the plan's own values where it has them", () => {
  const { trial } = faultyRoom("delay-too-long", 2);
  const place = placeOf(trial.built.plan);
  const coverage = roomCoverage(place.site, place.room);
  for (const cause of faultCauses) {
    expect(correctionsOf(cause, place, coverage).length, cause).toBeGreaterThan(0);
  }
  const planned = place.settings.d1!.offDelay;
  expect(correctionsOf("delay-too-long", place, coverage)[0]).toEqual({
    kind: "set",
    device: "d1",
    setting: "offDelay",
    value: planned,
  });
  const seen = { ...coverage, interference: [{ source: "heater", device: "d1", distance: 2 }] };
  expect(correctionsOf("source-in-view", place, seen)[0]).toEqual({
    kind: "mask",
    device: "d1",
    source: "heater",
  });
});

test("[FLT-9] facts of a plan are read from its geometry, settings and wiring", () => {
  const facts = (cause: Parameters<typeof faultyRoom>[0], wanted: string): boolean =>
    [1, 2, 3, 4, 5, 6].some((seed) => {
      const found: ReadonlySet<string> = factsOf(placeOf(faultyRoom(cause, seed).trial.built.plan));
      return found.has(wanted);
    });
  expect(facts("source-in-view", "source-in-view")).toBe(true);
  expect(facts("contact-welded", "inrush-beyond-contact")).toBe(true);
  expect(facts("switch-in-parallel", "switch-beside-contact")).toBe(true);
  expect(facts("neutral-borrowed", "neutral-shared")).toBe(true);
  expect(facts("output-joined-with-another", "switched-from-elsewhere")).toBe(true);
  const plain = factsOf(placeOf(randomPlan(drawsOf(77, "plan"))));
  expect(plain.has("switched-from-elsewhere")).toBe(false);
});
