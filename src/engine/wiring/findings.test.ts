import { expect, test } from "vitest";
import { remedyOf, sentenceOf } from "../check/index.ts";
import { wiringFindings } from "./findings.ts";
import { row } from "./wiring.fixture.ts";

test("a supply that is not covered is refused with its sentence alone", () => {
  const model = row({ supply: { ...row().supply, system: "IT" } });
  expect(wiringFindings(model).map(({ code }) => code)).toEqual(["supply-it-system"]);
});

test("a failed check becomes its own sentence, one that lacks data says what to enter", () => {
  const found = wiringFindings(row({ devices: [{ ...row().devices[0]!, rating: 1 }] }));
  const over = found.find(({ code }) => code === "design-current-over-rating")!;
  expect(sentenceOf(over)).toBe("Lighting 1: a design current of 2 A behind a protective device of 1 A.");
  const open = found.find(({ code }) => code === "wiring-not-proven")!;
  expect(remedyOf(open)).toMatch(/^Enter what is missing: .+\.$/);
  expect(open.evidence).toHaveLength(1);
});
