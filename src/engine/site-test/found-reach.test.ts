import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawsFrom } from "../day/chance.ts";
import { foundReach, logNormal, type ReachObservation, studentScore } from "./index.ts";

function normalDraw(roll: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - roll())) * Math.cos(2 * Math.PI * roll());
}

const observation = (given: Partial<ReachObservation>): ReachObservation => ({
  device: "d1",
  kind: "towards",
  outcome: "seen",
  distance: 3,
  declared: 4,
  ...given,
});

interface Simulation {
  readonly seed: number;
  readonly tests: number;
  readonly stations: readonly [least: number, most: number];
  /** Share of walks from outside whose distance is noted. */
  readonly noted: number;
}

/** Share of simulated walk tests whose interval holds the true reach. */
function covered({ seed, tests, stations, noted }: Simulation): number {
  const roll = drawsFrom(seed);
  let held = 0;
  for (let k = 0; k < tests; k++) {
    const truth = 0.3 + 1.0 * roll();
    const spread = 0.05 + 0.2 * roll();
    const count = stations[0] + Math.floor(roll() * (stations[1] - stations[0] + 1));
    const readings = Array.from({ length: count }, (): ReachObservation => {
      const threshold = Math.max(0, truth + spread * normalDraw(roll));
      const place = 1.6 * roll();
      // A walk from outside: the distance at which it is first seen; one that begins inside is seen at once.
      if (roll() < noted) {
        const start = 0.9 + 0.7 * roll();
        return threshold < start
          ? observation({ outcome: "first-seen", distance: threshold * 4 })
          : observation({ outcome: "seen", distance: start * 4 });
      }
      return observation({ outcome: threshold >= place ? "seen" : "not-seen", distance: place * 4 });
    });
    const [found] = foundReach(readings);
    if (found && found.interval[0] <= truth && truth <= found.interval[1]) held++;
  }
  return held / tests;
}

describe("normal distribution", () => {
  // Tabled values of Φ, five digits: Abramowitz and Stegun, table 26.1.
  test.each([
    [0, 0.5],
    [1, 0.84134],
    [1.96, 0.975],
    [-1.96, 0.025],
    [-3, 0.00135],
  ])("Φ(%d) = %d", (z, share) => {
    expect(Math.exp(logNormal(z))).toBeCloseTo(share, 5);
  });

  test("far out its logarithm follows −z²/2 − ln(z√2π) and never underflows", () => {
    for (const z of [10, 20, 40]) {
      const leading = -0.5 * z * z - Math.log(z * Math.sqrt(2 * Math.PI));
      expect(Math.abs(logNormal(-z) - leading)).toBeLessThan(2 / z ** 2);
    }
  });

  // Tabled t at 97.5 %.
  test.each([
    [4, 2.776],
    [7, 2.365],
    [10, 2.228],
    [30, 2.042],
  ])("Student's score for %d degrees of freedom is %d", (freedom, score) => {
    expect(Math.abs(studentScore(freedom) / score - 1)).toBeLessThan(0.01);
  });
});

describe("found reach", () => {
  test("[FR-1] ten walks first seen about 3 m where 4 m are declared: factor 0.75, with their mean", () => {
    const distances = [2.8, 2.9, 2.95, 3, 3, 3, 3.05, 3.1, 3.1, 3.1];
    const [found] = foundReach(distances.map((distance) => observation({ outcome: "first-seen", distance })));
    expect(found?.factor).toBeCloseTo(0.75, 2);
    expect(found?.interval[0]).toBeLessThan(0.75);
    expect(found?.interval[1]).toBeGreaterThan(0.75);
    expect(found?.enough).toBe(true);
  });

  test("[FR-1] seen up to 3 m, not from 3.4 m on: between the two", () => {
    const readings = [
      ...[1, 1.5, 2, 2.5, 3].map((distance) => observation({ distance })),
      ...[3.4, 3.8, 4.2, 4.6].map((distance) => observation({ distance, outcome: "not-seen" })),
    ];
    const [found] = foundReach(readings);
    expect(found?.factor).toBeGreaterThan(0.75);
    expect(found?.factor).toBeLessThan(0.85);
  });

  test("[FR-1] seen everywhere bounds the reach from below only, and no number is made up", () => {
    const [found] = foundReach(
      [1, 2, 3, 3.2, 3.4, 3.4, 3.4, 3.4].map((distance) => observation({ distance })),
    );
    expect(found?.factor).toBeUndefined();
    expect(found?.interval[1]).toBe(1.5);
    expect(found?.interval[0]).toBeGreaterThan(0.5);
  });

  test("[FR-1] never seen bounds it from above only", () => {
    const [found] = foundReach(
      [1, 1.5, 2, 2, 2, 2.5, 3, 3].map((distance) => observation({ distance, outcome: "not-seen" })),
    );
    expect(found?.factor).toBeUndefined();
    expect(found?.interval[0]).toBe(0);
    expect(found?.interval[1]).toBeLessThan(0.6);
  });

  test.each([
    { seed: 551, tests: 1000, stations: [8, 14], noted: 0.5 },
    { seed: 552, tests: 300, stations: [8, 8], noted: 0 },
    { seed: 553, tests: 300, stations: [8, 10], noted: 1 },
    { seed: 557, tests: 300, stations: [8, 14], noted: 0.2 },
  ] as const)(
    "[FR-2] of $tests simulated walk tests with $stations readings, share noted $noted, at least 93 % hold the truth",
    (simulation) => {
      const share = covered(simulation);
      expect(share).toBeGreaterThanOrEqual(0.93);
    },
  );

  test("[FR-2] the interval is worth something: with 14 noted walks it is narrower than a third of the declared reach", () => {
    const roll = drawsFrom(554);
    const widths = Array.from({ length: 40 }, () => {
      const readings = Array.from({ length: 14 }, () =>
        observation({ outcome: "first-seen", distance: 4 * (0.8 + 0.1 * normalDraw(roll)) }),
      );
      const [found] = foundReach(readings);
      return (found?.interval[1] ?? 9) - (found?.interval[0] ?? 0);
    });
    expect(widths.reduce((sum, width) => sum + width, 0) / widths.length).toBeLessThan(1 / 3);
  });

  test("[FR-3] fewer than 8 readings are not enough, and say so", () => {
    const seven = Array.from({ length: 7 }, () => observation({ outcome: "first-seen", distance: 3 }));
    expect(foundReach(seven)[0]?.enough).toBe(false);
    expect(foundReach([...seven, observation({ distance: 2 })])[0]?.enough).toBe(true);
  });

  test("[FR-3] fewer readings give a wider interval", () => {
    const widthOf = (count: number): number => {
      const roll = drawsFrom(555);
      const [found] = foundReach(
        Array.from({ length: count }, () =>
          observation({ outcome: "first-seen", distance: 4 * (0.8 + 0.1 * normalDraw(roll)) }),
        ),
      );
      return (found?.interval[1] ?? 0) - (found?.interval[0] ?? 0);
    };
    expect(widthOf(3)).toBeGreaterThan(widthOf(12));
    expect(widthOf(12)).toBeGreaterThan(widthOf(60));
  });

  test("[FR-4] the order of readings changes nothing", () => {
    const outcome = fc.constantFrom("seen", "not-seen", "first-seen");
    const reading = fc
      .tuple(outcome, fc.integer({ min: 5, max: 60 }))
      .map(([one, decimetres]) =>
        observation({ outcome: one as ReachObservation["outcome"], distance: decimetres / 10 }),
      );
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 12 }), (readings) => {
        expect(foundReach(readings.toReversed())).toEqual(foundReach(readings));
      }),
      { seed: 556, numRuns: 20 },
    );
  });

  test("devices and kinds are kept apart, readings without a declared reach are passed over", () => {
    const found = foundReach([
      observation({}),
      observation({ kind: "seated" }),
      observation({ device: "d2" }),
      observation({ device: "d3", declared: 0 }),
    ]);
    expect(found.map(({ device, kind }) => `${device} ${kind}`)).toEqual([
      "d1 seated",
      "d1 towards",
      "d2 towards",
    ]);
  });
});
