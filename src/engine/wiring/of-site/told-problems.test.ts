import { expect, test } from "vitest";
import { english, type Problem, say, type Words } from "../../check/index.ts";
import { installation, site } from "./of-site.fixture.ts";
import { wiringOfSite } from "./of-site.ts";
import { toldProblems } from "./told-problems.ts";

const nameOf = (...names: readonly Words[]): string => {
  const problems = names.map(
    (name): Problem => ({ code: "breaker-trips-on-inrush", values: { name, what: "the same" } }),
  );
  const told = toldProblems(wiringOfSite(site(), installation()), problems);
  expect(told).toHaveLength(1);
  return english(told[0]!.values.name!);
};

test("a board that ends several names is said once, whether somebody gave the names or the program made them up", () => {
  expect(nameOf("Lighting 1 (Main)", "Lighting 2 (Main)")).toBe("Lighting 1 and Lighting 2 (Main)");
  expect(nameOf(say`The RCD of ${"Lighting 1 (Main)"}`, say`The RCD of ${"Lighting 2 (Main)"}`)).toBe(
    "The RCD of Lighting 1 and The RCD of Lighting 2 (Main)",
  );
  expect(nameOf(say`the line behind ${"K1 (Main)"}`, "Lighting 2 (Sub-board)")).toBe(
    "the line behind K1 (Main) and Lighting 2 (Sub-board)",
  );
});

test("the same name is counted, and of many only the first are named", () => {
  expect(nameOf(say`luminaire in ${"Store"}`, say`luminaire in ${"Store"}`)).toBe("luminaire in Store (2)");
  expect(nameOf("1", "2", "3", "4", "5", "6", "7")).toBe("1, 2, 3, 4, 5 and 2 more");
});
