import { expect, test } from "vitest";
import { smallestSection } from "./smallest-section.ts";
import { board, load, row, segment } from "./wiring.fixture.ts";

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
