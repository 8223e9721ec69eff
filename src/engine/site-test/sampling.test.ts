import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  obstacleLike,
  roomLike,
  roundModel,
  siteLike,
} from "../../../test/engine/records.ts";
import { sources } from "../source/index.ts";
import { combinationsOf, furtherTests, samplePlan, sampleSize, samplingRules } from "./index.ts";

const ids = (count: number): string[] => Array.from({ length: count }, (_, i) => `d${i + 1}`);
const rules = ["iecc", "title-24"] as const;

describe("sampling", () => {
  // Check values of the published code: IECC C408.3.1.
  test("[SA-1] IECC: of 48 alike 5 are tested", () => {
    expect(sampleSize("iecc", { inAll: 48, alike: 48 })).toBe(5);
  });

  test("[SA-1] IECC: of 5 tested 2 failed are 40 %, so the remaining 43 are tested; 1 failed is 20 % and asks for none", () => {
    expect(furtherTests("iecc", { alike: 48, tested: 5, failed: 2 })).toBe(43);
    expect(furtherTests("iecc", { alike: 48, tested: 5, failed: 1 })).toBe(0);
  });

  test("[SA-1] IECC: 3 of 10 are exactly 30 % and ask for all", () => {
    expect(furtherTests("iecc", { alike: 100, tested: 10, failed: 3 })).toBe(90);
    expect(furtherTests("iecc", { alike: 100, tested: 10, failed: 2 })).toBe(0);
  });

  // Check value of Title 24 NA7.6.2, careful reading.
  test("[SA-1] Title 24: of 23 alike 4 are tested", () => {
    expect(sampleSize("title-24", { inAll: 23, alike: 23 })).toBe(4);
    const { groups } = samplePlan("title-24", [{ name: "round, store", devices: ids(23) }]);
    expect(groups.map((group) => group.devices.length)).toEqual([7, 7, 7, 2]);
    expect(groups.flatMap((group) => group.tested)).toEqual(["d1", "d8", "d15", "d22"]);
  });

  test("[SA-1] Title 24: when the tested one of a group fails, the rest of the group is tested", () => {
    expect(furtherTests("title-24", { alike: 7, tested: 1, failed: 1 })).toBe(6);
    expect(furtherTests("title-24", { alike: 7, tested: 1, failed: 0 })).toBe(0);
  });

  test.each(rules)("[SA-1] %s: a job of up to 7 devices is tested whole", (rule) => {
    for (let count = 1; count <= 7; count++) {
      const { groups } = samplePlan(rule, [{ name: "a", devices: ids(count) }]);
      expect(groups.flatMap((group) => group.tested)).toHaveLength(count);
    }
    expect(sampleSize(rule, { inAll: 8, alike: 8 })).toBeLessThan(8);
  });

  test.each(rules)(
    "[SA-1] %s: every combination is tested, with its size in the plan, and more devices never mean fewer tests",
    (rule) => {
      fc.assert(
        fc.property(fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 5 }), (counts) => {
          const inAll = counts.reduce((sum, count) => sum + count, 0);
          const { groups } = samplePlan(
            rule,
            counts.map((count, i) => ({ name: `${i}`, devices: ids(count).map((id) => `${i}-${id}`) })),
          );
          for (const [i, alike] of counts.entries()) {
            const own = groups.filter((group) => group.combination === `${i}`);
            const tested = own.flatMap((group) => group.tested).length;
            expect(own.flatMap((group) => group.devices)).toHaveLength(alike);
            expect(tested).toBe(sampleSize(rule, { inAll, alike }));
            expect(tested).toBeGreaterThanOrEqual(Math.max(1, alike / 10 - 1e-9));
            expect(sampleSize(rule, { inAll: inAll + 8, alike: alike + 1 })).toBeGreaterThanOrEqual(
              inAll > 7 ? tested : 1,
            );
          }
        }),
        { seed: 531, numRuns: 60 },
      );
    },
  );

  test("[SA-2] what is from memory says so", () => {
    expect(sources[samplingRules.iecc.source].verify).toBe(false);
    expect(sources[samplingRules["title-24"].source].verify).toBe(true);
  });
});

describe("combinations", () => {
  const rooms = [1, 2, 3].map((i) =>
    roomLike({ id: `office-${i}`, outline: box(10 * i, 0, 5, 4), use: "sitting" }),
  );
  const detectors = [3, 1, 2].map((i) =>
    detectorLike({ id: `d${i}`, tag: `B${i}`, room: `office-${i}`, at: [10 * i + 2, 2] }),
  );
  const site = siteLike({ rooms, detectors, models: [roundModel()] });

  test("equal rooms with equal detectors are one combination, in the order of their tags", () => {
    const [only, ...rest] = combinationsOf(site);
    expect(rest).toEqual([]);
    expect(only?.devices).toEqual(["d1", "d2", "d3"]);
  });

  test("[SA-1] a rack, a larger floor, another use, another height or another model makes another combination", () => {
    const others = [
      { ...site, obstacles: [obstacleLike({ id: "rack", room: "office-1", footprint: box(11, 1, 1, 1) })] },
      { ...site, rooms: [roomLike({ ...rooms[0]!, outline: box(10, 0, 8, 4) }), ...rooms.slice(1)] },
      { ...site, rooms: [{ ...rooms[0]!, use: "moving" as const }, ...rooms.slice(1)] },
      { ...site, detectors: [{ ...detectors[0]!, height: 3.2 }, ...detectors.slice(1)] },
      {
        ...site,
        models: [...site.models, roundModel({ id: "other", title: "Other" })],
        detectors: [{ ...detectors[0]!, model: "other" }, ...detectors.slice(1)],
      },
    ];
    for (const other of others)
      expect(
        combinationsOf(other)
          .map((one) => one.devices.length)
          .toSorted(),
      ).toEqual([1, 2]);
  });

  test("two detectors without room and without a tag are two, not a sample of each other", () => {
    const lost = ["d8", "d9"].map((id) => detectorLike({ id, tag: "", room: "gone", at: [0, 0] }));
    const found = combinationsOf({ ...site, detectors: lost });
    expect(found.map(({ devices }) => devices)).toEqual([["d8"], ["d9"]]);
  });

  test("a detector whose room is gone stands alone and is tested", () => {
    const lost = { ...site, detectors: [...detectors, detectorLike({ id: "d9", room: "gone", at: [0, 0] })] };
    expect(combinationsOf(lost).flatMap((one) => one.devices)).toHaveLength(4);
    expect(combinationsOf(lost).some((one) => one.devices.length === 1 && one.devices[0] === "d9")).toBe(
      true,
    );
  });
});
