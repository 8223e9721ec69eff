import { expect, test } from "vitest";
import { type BoxContent, boxFill, cubicInches } from "./box-fill.ts";

const content: BoxContent = { gauge: 14, conductors: 4, grounding: 2, clamps: "inside", devices: 1 };
const inches = (more: Partial<BoxContent> = {}): number => cubicInches(boxFill({ ...content, ...more })!);

test("device box with two cables 14/2, one device, clamps [V]: 8 · 2.00 = 16.0 in³", () => {
  expect(inches()).toBeCloseTo(16, 9);
});

test("octagon box of 15.5 in³ [V]: seven conductors of 14 AWG or six of 12 AWG, and no more", () => {
  const bare = { grounding: 0, clamps: "none", devices: 0 } as const;
  const fits = (gauge: 14 | 12, conductors: number): boolean =>
    inches({ ...bare, gauge, conductors }) <= 15.5;
  expect([fits(14, 7), fits(14, 8), fits(12, 6), fits(12, 7)]).toEqual([true, false, true, false]);
});

test("four grounding conductors count as one, each beyond a quarter more [M]", () => {
  expect(inches({ grounding: 4 })).toBeCloseTo(16, 9);
  expect(inches({ grounding: 6 })).toBeCloseTo(17, 9);
  expect(inches({ grounding: 0 })).toBeCloseTo(14, 9);
});
