import { expect, test } from "vitest";
import { smallestSection } from "./smallest-section.ts";
import { board, breaker, load, row, segment } from "./wiring.fixture.ts";

const one = (length: number) =>
  row({ segments: [segment("board", "e", length)], loads: [load("e", { power: 2300 })] });

test("10 A over 30 m needs 4 mm²: 1.5 and 2.5 mm² lose more than the 2 % that are left", () => {
  // 2 · 0.0225 · 30 / S · 10 = 9, 5.4, 3.375 V of 4.6 V; but 10 A of a 10 A device passes.
  expect(smallestSection(one(30), "circuit")).toEqual({ section: 4, standing: "proven", open: [] });
});
test("a short one does with 1.5 mm², a very long one with none", () => {
  expect(smallestSection(one(5), "circuit").section).toBe(1.5);
  expect(smallestSection(one(500), "circuit")).toMatchObject({ section: undefined, standing: "none" });
});
test("without board data nothing fails, but it is not called proven", () => {
  const { loopImpedance, faultCurrent, ...bare } = board;
  const choice = smallestSection({ ...one(5), boards: [bare] }, "circuit");
  expect(choice).toMatchObject({ section: 1.5, standing: "no-failure" });
  expect(choice.open.length).toBeGreaterThan(0);
});
test("where cables are sized by gauge a gauge is searched, and no square millimetres are offered", () => {
  const american = (power: number) => {
    const wiring = one(10);
    return {
      ...wiring,
      supply: { ...wiring.supply, region: "US", voltage: 120, frequency: 60 } as const,
      devices: [{ ...breaker, rating: power > 1500 ? 20 : 15 }],
      loads: [load("e", { power })],
    };
  };
  // 14 AWG is for 15 A at most, 12 AWG for 20 A.
  expect(smallestSection(american(1200), "circuit")).toMatchObject({ section: undefined, gauge: 14 });
  expect(smallestSection(american(1800), "circuit")).toMatchObject({ section: undefined, gauge: 12 });
  const laid = one(10);
  const gauged = laid.segments.map(
    (own) => ({ ...own, size: { kind: "gauge", gauge: 12, form: "solid" } }) as const,
  );
  expect(smallestSection({ ...laid, segments: gauged }, "circuit")).toMatchObject({
    section: undefined,
    gauge: 14,
  });
});
