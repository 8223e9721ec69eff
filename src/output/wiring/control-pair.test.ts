import { expect, test } from "vitest";
import { english, wiringOfSite } from "#engine";
import { crossedTexts } from "../drawing/crossings.fixture.ts";
import type { TextMark } from "../drawing/mark.ts";
import { ferryWingTitle } from "../ferry-wing.fixture.ts";
import { needsOf } from "../materials/needs.ts";
import { cableSchedule, terminalSchedule } from "./schedules.ts";
import { wiredInstallation, wiredSite } from "./wired-wing.fixture.ts";
import { wiringDrawings } from "./wiring-documents.ts";
import { wiringPlan } from "./wiring-plan.ts";

const built = wiringOfSite(wiredSite, wiredInstallation);
const plain = wiringPlan(wiredSite, wiredInstallation, built);
const dimmed = wiringPlan(wiredSite, wiredInstallation, built, { paired: new Set(["b1", "b2"]) });

test("A level takes two conductors more wherever the switched line goes, and none on the way from the board", () => {
  const [before, now] = [plain.groups[0]!.cables, dimmed.groups[0]!.cables];
  expect(now.map(({ from, to, length }) => [from, to, length])).toEqual(
    before.map(({ from, to, length }) => [from, to, length]),
  );
  let behind = 0;
  for (const [i, { conductors }] of before.entries()) {
    const more = conductors.includes("switched") ? 2 : 0;
    behind += more / 2;
    expect(now[i]!.conductors.length).toBe(conductors.length + more);
  }
  expect(behind).toBeGreaterThan(3);
  // The office switches and has none.
  expect(dimmed.groups[1]!.cables).toEqual(plain.groups[1]!.cables);
  const { rows: said, columns } = cableSchedule(dimmed);
  const rows = said.map((row) => row.map(english));
  const at = (head: string) => columns.findIndex((column) => english(column.head) === head);
  const switched = rows.find((row) => row[at("Conductors")]!.startsWith("L′"))!;
  expect(switched[at("Cores")]).toBe("5");
  expect(switched[at("Conductors")]).toBe(
    "L′ brown, N blue, PE green-yellow, control + black, control − grey",
  );
  const items = needsOf(wiredSite, dimmed).materials.map(({ item }) => item);
  expect(items).toContain("cable 5 × 1.5 mm²");
});

test("Both conductors stand at the terminals and on the sheet; a data sheet without such a terminal is told", () => {
  const rows = terminalSchedule(dimmed)
    .rows.map((row) => row.map(english))
    .filter(([device]) => device === "B0.01");
  expect(rows.filter(([, , conductor]) => conductor!.startsWith("control")).length).toBe(2);
  expect(rows.find(([, , conductor]) => conductor === "control +")![4]).toBe("E1–E5, B0.02");
  for (const variant of ["colour", "black-and-white"] as const) {
    const [sheet] = wiringDrawings({
      site: wiredSite,
      plan: dimmed,
      variant,
      title: (name) => ({ ...ferryWingTitle, sheet: name }),
    });
    const { marks } = sheet!(1, 1);
    expect(crossedTexts(marks)).toEqual([]);
    const texts = marks.filter((mark): mark is TextMark => mark.kind === "text").map(({ text }) => text);
    expect(texts).toContain("control +  brown, black or grey");
    expect(texts).toContain("control −  brown, black or grey");
    expect(texts.join(" ")).toContain(
      "the data sheet lists no such terminal: B0.01 control +, B0.01 control −,",
    );
  }
});
