import { expect, test } from "vitest";
import type { PlacementResult } from "#engine";
import { measuredAgainst, measuredShort } from "./measured-against.ts";

const devices = ["b1", "b2", "b3"].map((id) => ({
  id,
  tag: id,
  room: "r",
  controls: ["r"],
  group: "",
  model: "m",
  at: [0, 0] as const,
  height: 2.5,
  turn: 0,
  masks: [],
  pinned: false,
}));

const result = (found: Partial<PlacementResult>): PlacementResult => ({
  room: "r",
  best: {
    devices,
    cost: 6,
    gaps: [],
    darkWalks: [],
    traits: { worstDarkWalk: 0, spillArea: 0, leastMargin: 0, alignment: 0 },
  },
  alternatives: [],
  bound: 3.2,
  boundHolds: "candidates",
  fewest: false,
  cancelled: false,
  seconds: 1,
  problems: [],
  ...found,
});

test("models of one cost: the bound is a count, rounded up, and never claims more than it knows", () => {
  const text = measuredAgainst(result({}), [{ cost: 2 }, { cost: 2 }]);
  expect(text).toContain("At least 2");
  expect(text).toContain("found 3");
  expect(text).not.toMatch(/fewest/i);
});

test("bound and cost meet: fewest possible, and for what it holds", () => {
  expect(measuredAgainst(result({ fewest: true }), [{ cost: 2 }])).toMatch(
    /^Fewest possible \(calculated\).*candidate/,
  );
  expect(measuredAgainst(result({ fewest: true, boundHolds: "any-position" }), [{ cost: 2 }])).toMatch(
    /any position/,
  );
});

test("models of different cost: only cost is claimed", () => {
  const models = [{ cost: 2 }, { cost: 3 }];
  expect(measuredAgainst(result({}), models)).toMatch(/^Cost at least 3.2, found 6/);
  expect(measuredAgainst(result({ fewest: true }), models)).toMatch(/^Lowest cost possible \(calculated\)/);
});

test("a run that had no time to calculate a bound says so instead of printing a bound of nothing", () => {
  const text = measuredAgainst(result({ bound: 0 }), [{ cost: 2 }]);
  expect(text).toMatch(/not calculated/);
  expect(text).not.toMatch(/\d/);
});

test("nothing found, nothing claimed", () => {
  expect(measuredAgainst(result({ best: undefined }), [{ cost: 1 }])).toBe("");
});

test("in a list, a bound on cost never passes for a bound on the count", () => {
  expect(measuredShort(result({}), [{ cost: 2 }])).toBe("at least 2");
  expect(measuredShort(result({}), [{ cost: 2 }, { cost: 3 }])).not.toMatch(/\d/);
  expect(measuredShort(result({ bound: 0 }), [{ cost: 2 }])).not.toMatch(/\d/);
  expect(measuredShort(result({ fewest: true }), [{ cost: 2 }, { cost: 3 }])).toBe("lowest cost");
});
