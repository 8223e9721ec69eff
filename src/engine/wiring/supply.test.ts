import { expect, test } from "vitest";
import { supplyProblems } from "./supply.ts";
import { row } from "./wiring.fixture.ts";

const { supply } = row();

test("230 V and 50 Hz in TN and TT, 120 V and 277 V at 60 Hz are covered", () => {
  expect(supplyProblems(supply)).toEqual([]);
  expect(supplyProblems({ ...supply, system: "TT" })).toEqual([]);
  for (const voltage of [120, 277])
    expect(supplyProblems({ ...supply, region: "US", voltage, frequency: 60 })).toEqual([]);
});

test("IT systems, a supply without neutral, and any other voltage are refused with a sentence", () => {
  const codes = (more: object) => supplyProblems({ ...supply, ...more }).map(({ code }) => code);
  expect(codes({ system: "IT" })).toEqual(["supply-it-system"]);
  expect(codes({ neutral: "no" })).toEqual(["supply-without-neutral"]);
  expect(codes({ voltage: 127 })).toEqual(["supply-not-known"]);
});
