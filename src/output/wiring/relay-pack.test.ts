import { expect, test } from "vitest";
import { english, type FoundInstallation, wiringOfSite } from "#engine";
import { crossedTexts } from "../drawing/crossings.fixture.ts";
import type { TextMark } from "../drawing/mark.ts";
import { ferryWingTitle } from "../ferry-wing.fixture.ts";
import { cableSchedule, terminalSchedule } from "./schedules.ts";
import { wiredInstallation, wiredSite } from "./wired-wing.fixture.ts";
import { wiringDrawings } from "./wiring-documents.ts";
import { wiringPlan } from "./wiring-plan.ts";

const site = {
  ...wiredSite,
  detectors: wiredSite.detectors.filter(({ id }) => id === "b1" || id === "b2"),
  switches: [],
  models: wiredSite.models.map((one) => ({
    ...one,
    supply: "low-voltage" as const,
    terminals: ["line-in", "neutral", "switched-line"] as const,
  })),
};
const [board] = wiredInstallation.boards;
const [first] = wiredInstallation.circuits;
const found: FoundInstallation = {
  boards: [board!],
  circuits: [
    {
      ...first!,
      contactors: [
        {
          id: "p1",
          name: "Corridor",
          kind: "relay-pack",
          detectors: ["b1", "b2"],
          supplies: 0.15,
          suppressor: "unknown",
          labelled: "unknown",
          isolatesAllPoles: "unknown",
        },
      ],
    },
  ],
};
const plan = wiringPlan(site, found, wiringOfSite(site, found));

test("Low-voltage detectors are drawn at their relay pack, without a line, neutral or protective conductor of the mains", () => {
  for (const variant of ["colour", "black-and-white"] as const) {
    const sheets = wiringDrawings({
      site,
      plan,
      variant,
      title: (sheet) => ({ ...ferryWingTitle, sheet }),
    }).map((sheet, i, all) => sheet(i + 1, all.length));
    expect(sheets.length).toBe(2);
    for (const { name, marks } of sheets) expect([name, crossedTexts(marks)]).toEqual([name, []]);
    const [low, mains] = sheets.map(({ marks }) =>
      marks.filter((mark): mark is TextMark => mark.kind === "text").map(({ text }) => text),
    );
    expect(low).toEqual(
      expect.arrayContaining(["Q1  Corridor", "gives 150 mA", "supply +  see data sheet", "signal", "B0.01"]),
    );
    for (const text of low!) expect(text).not.toMatch(/^(L1|N|PE) {2}/);
    expect(mains).toEqual(expect.arrayContaining(["L1  brown", "1", "2", "E1–E5"]));
  }
});

test("Schedules name the pack's terminals, and its cables as low voltage with three cores", () => {
  const rows = terminalSchedule(plan).rows.map((row) => row.map(english));
  expect(rows.filter(([device]) => device === "B0.01").map((row) => row.slice(1, 5))).toEqual([
    ["+", "supply +", "see data sheet", "Q1"],
    ["−", "supply −", "see data sheet", "Q1"],
    ["signal", "signal", "see data sheet", "Q1"],
  ]);
  expect(rows.filter(([device]) => device === "Q1").map(([, terminal]) => terminal)).toEqual([
    "+",
    "−",
    "signal",
    "1",
    "2",
  ]);
  const cables = cableSchedule(plan)
    .rows.map((row) => row.map(english))
    .filter(([, , , circuit]) => circuit === "low voltage");
  expect(cables.map(([, from, to, , cores]) => [from, to, cores])).toEqual([
    ["Q1", "B0.01", "3"],
    ["B0.01", "B0.02", "3"],
  ]);
});
