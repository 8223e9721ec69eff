import { expect, test } from "vitest";
import { english } from "#engine";
import { ferryWing } from "../ferry-wing.fixture.ts";
import { csvOf } from "./csv.ts";
import { deviceSchedule } from "./device-schedule.ts";

test.each(["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"])(
  "A cell that begins like a formula is led by an apostrophe: %j",
  (cell) => {
    const line = csvOf([[cell]], english)
      .slice(1)
      .trimEnd();
    expect(line.replace(/^"/, "").startsWith("'")).toBe(true);
  },
);

test("Commas, quotes and line breaks stand in quotes, quotes doubled; lines end with CRLF", () => {
  expect(csvOf([["a,b", 'say "on"', "c\nd", "plain", 1.5]], english)).toBe(
    '\ufeff"a,b","say ""on""","c\nd",plain,1.5\r\n',
  );
});

test("A figure stays a figure, a negative one too", () => {
  expect(csvOf([["less", -12.5]], english)).toBe("\ufeffless,-12.5\r\n");
});

test("The schedule has one line for each detector, with the measures of the setting-out sheet", () => {
  const lines = deviceSchedule(ferryWing, english).trimEnd().split("\r\n");
  expect(lines.length).toBe(ferryWing.detectors.length + 1);
  expect(lines.find((line) => line.startsWith("B0.03"))).toContain("b  tile 6 (3850),a  tile 4 (2200),Ø 68");
  expect(lines.find((line) => line.startsWith("B0.05"))).toContain(",unknown,0–57° × 29–80°,");
});

test("A tag or name that a stranger chose cannot become a formula in the schedule", () => {
  const hostile = {
    ...ferryWing,
    detectors: ferryWing.detectors.map((one) => ({ ...one, tag: "=HYPERLINK(1)", group: "@x" })),
    models: ferryWing.models.map((one) => ({ ...one, title: "+1" })),
  };
  const cells = deviceSchedule(hostile, english)
    .slice(1)
    .split("\r\n")
    .slice(1, -1)
    .flatMap((line) => line.split(","));
  expect(cells.filter((cell) => /^"?[=+\-@]/.test(cell))).toEqual([]);
});
