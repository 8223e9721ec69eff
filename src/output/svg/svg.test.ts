import { expect, test } from "vitest";
import type { Sheet } from "../drawing/mark.ts";
import { planSheet } from "../drawing/plan-sheet.ts";
import { ferryWing, ferryWingCoverage, ferryWingTitle, ferryWingZones } from "../ferry-wing.fixture.ts";
import { svgOf } from "./svg.ts";

const sheet = (marks: Sheet["marks"]): Sheet => ({ name: "s", title: "s", width: 420, height: 297, marks });

test("The same drawing gives the same bytes, and no number is missing", () => {
  const draw = () =>
    svgOf(
      planSheet({
        site: ferryWing,
        storey: "ground",
        coverage: ferryWingCoverage,
        zones: ferryWingZones,
        title: ferryWingTitle,
      }),
    );
  expect(draw()).toBe(draw());
  expect(draw()).not.toMatch(/NaN|Infinity|undefined/);
});

test("One unit of the drawing is one millimetre of paper", () => {
  const svg = svgOf(
    sheet([{ kind: "line", from: [20, 150], to: [120, 150], pen: { width: 0.5, colour: "#000000" } }]),
  );
  expect(svg).toContain('width="420mm" height="297mm" viewBox="0 0 420 297"');
  expect(svg).toContain("M20 150L120 150");
});

test("Signs that XML reserves or forbids cannot break out of a text", () => {
  const svg = svgOf(
    sheet([
      {
        kind: "text",
        at: [1, 1],
        text: '<script>"&\u0000',
        size: 2.5,
        anchor: "start",
        weight: "regular",
        colour: "#000000",
      },
    ]),
  );
  expect(svg).toContain("&lt;script&gt;&quot;&amp;\ufffd</text>");
  expect(svg).not.toContain("<script>");
});

test("Coordinates are rounded to 1/100 mm, and there is no negative nought", () => {
  const svg = svgOf(
    sheet([{ kind: "line", from: [-0.001, 1.23456], to: [2, 3], pen: { width: 0.25, colour: "#000000" } }]),
  );
  expect(svg).toContain("M0 1.23L2 3");
});
