import { expect, test } from "vitest";
import { planningDefaults } from "#engine";
import { numberAt, planningGroups, planningNumbers, usualNumber, withNumber } from "./planning-numbers.ts";

const all = planningGroups.flatMap((group) => planningNumbers[group]);

/** Paths of every figure in the planning numbers. */
const paths = Object.entries(planningDefaults).flatMap(([outer, value]) =>
  typeof value === "number" ? [outer] : Object.keys(value).map((inner) => `${outer} ${inner}`),
);

test("every planning number that is used can be edited, and each stands once", () => {
  expect(all.map(({ path }) => path.join(" ")).sort()).toEqual([...paths].sort());
});

test("the program's own numbers lie within what may be entered", () => {
  for (const { path, least, most } of all) {
    expect(usualNumber(path), path.join(" ")).toBeGreaterThanOrEqual(least);
    expect(usualNumber(path), path.join(" ")).toBeLessThanOrEqual(most);
  }
});

test("a change touches that number alone, and setting it back gives the numbers as they were", () => {
  for (const { path } of all) {
    const changed = withNumber(planningDefaults, path, 0.123);
    expect(numberAt(changed, path)).toBe(0.123);
    expect(withNumber(changed, path, usualNumber(path))).toEqual(planningDefaults);
  }
});
