import { expect, test } from "vitest";
import { english, handoverOf, type Words } from "#engine";
import { wiredInstallation, wiredPlan, wiredSite } from "../wiring/wired-wing.fixture.ts";
import { scheduleSheets } from "./schedule-workbook.ts";

const handover = handoverOf(wiredSite, {
  choices: {},
  found: wiredInstallation,
  entries: [],
  readings: () => [],
  notes: [],
});
const lid = { text: "Lid missing", room: "Corridor", owner: "R. Okafor", due: "2026-04-01", closed: "" };
const sheets = scheduleSheets(handover, { plan: wiredPlan, owed: [lid] });
const sheet = (name: string) => sheets.find((one) => english(one.name) === name)!;

test("Every row of the workbook has no more cells than its head, and every schedule is there", () => {
  expect(sheets.map(({ name }) => english(name))).toEqual([
    "Rooms",
    "Devices",
    "Settings",
    "Checks",
    "Terminals",
    "Cables",
    "Boxes",
    "Fitting",
    "Open points",
  ]);
  for (const { name, head, rows } of sheets)
    for (const row of rows) expect(row.length, english(name)).toBeLessThanOrEqual(head.length);
});

test("Open points are what people wrote down, then every finding", () => {
  const [first, ...found] = sheet("Open points").rows;
  expect(first!.map((cell) => english(cell as Words))).toEqual([
    "written down",
    "Corridor",
    "Lid missing",
    "",
    "R. Okafor",
    "2026-04-01",
    "",
  ]);
  expect(found.map(([, , what]) => english(what as Words))).toEqual(
    handover.findings.map(({ message }) => message),
  );
});

test("Places and heights of devices are figures that a spreadsheet reckons with", () => {
  const { head, rows } = sheet("Devices");
  expect(rows).toHaveLength(wiredSite.detectors.length);
  for (const title of ["Height m", "Turn °", "x m", "y m"]) {
    const at = head.findIndex((one) => english(one.title) === title);
    expect(rows.map((row) => typeof row[at])).toEqual(rows.map(() => "number"));
  }
});
