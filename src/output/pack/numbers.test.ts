import { describe, expect, test } from "vitest";
import { english, handoverOf, readingRows } from "#engine";
import { roomPages } from "../handover/room-pages.ts";
import { testPages } from "../handover/test-pages.ts";
import type { UnnumberedSheet } from "../setting-out/setting-out-sheets.ts";
import { wiredInstallation, wiredPlan, wiredSite } from "../wiring/wired-wing.fixture.ts";
import { scheduleSheets } from "./schedule-workbook.ts";

const handover = handoverOf(wiredSite, {
  choices: {},
  found: wiredInstallation,
  entries: [],
  readings: () => [],
  notes: [],
});
const title = {
  ...{
    job: "Ferry wing",
    client: "",
    site: "",
    date: "",
    revision: "",
    drawnBy: "",
    checkedBy: "",
    speak: english,
  },
  ...{ storey: "", sheet: "" },
};

/** Lines of tables as they stand on paper: the words at one height, from left to right. */
function linesOf(sheets: readonly UnnumberedSheet[]): readonly (readonly string[])[] {
  return sheets.flatMap((sheet, i) => {
    const lines = new Map<string, { readonly x: number; readonly text: string }[]>();
    for (const mark of sheet(i + 1, sheets.length).marks) {
      if (mark.kind !== "text") continue;
      const key = mark.at[1].toFixed(3);
      lines.set(key, [...(lines.get(key) ?? []), { x: mark.at[0], text: mark.text }]);
    }
    return [...lines.values()].map((line) => line.toSorted((a, b) => a.x - b.x).map(({ text }) => text));
  });
}

/** A printed figure is the value, rounded to the digits that are printed and no further. */
function expectFigure(printed: string | undefined, value: number, unit: string): void {
  const [, figure, decimals = "", after] = /^(-?\d+(?:\.(\d+))?)\s*(.*)$/.exec(printed ?? "") ?? [];
  expect([printed, after]).toEqual([printed, unit]);
  expect(Math.abs(Number(figure) - value), `${printed} for ${value}`).toBeLessThanOrEqual(
    0.5 * 10 ** -Math.max(decimals.length, 0) + 1e-9,
  );
}

/** A cell holds the value to a thousandth of its unit. */
function expectThousandth(cell: unknown, value: number): void {
  expect(typeof cell).toBe("number");
  expect(Math.abs(Number(cell) - value), `${cell} for ${value}`).toBeLessThanOrEqual(0.0005 + 1e-9);
}

describe("Numbers on paper are the engine's", () => {
  test("on the page of each room: what is asked, what is seen, and every check", () => {
    let figures = 0;
    for (const room of handover.rooms) {
      const lines = linesOf(roomPages({ handover, room, title, variant: "colour" }));
      const line = (head: string) => lines.find(([first]) => first === head);
      const { demanded, covered, demand, darkWalks, checks } = room.coverage;
      for (const [head, kind, unit] of [
        ["Walking anywhere", "walk", "m²"],
        ["Staying at a place", "hold", "m²"],
        ["Coming in, by door", "catch", ""],
      ] as const) {
        const [, asked, seen, share] = line(head) ?? [];
        if (!demand.asked[kind]) {
          expect(asked).toBe("not asked here");
          continue;
        }
        expectFigure(asked, demanded[kind], unit);
        expectFigure(seen, covered[kind], unit);
        if (demanded[kind] > 0) expectFigure(share, (100 * covered[kind]) / demanded[kind], "%");
        figures += 2;
      }
      if (darkWalks.length > 0 && darkWalks.every(({ lit }) => lit))
        expectFigure(
          line("Longest walk in the dark")?.[1],
          Math.max(...darkWalks.map(({ metres }) => metres)),
          "m",
        );
      for (const check of checks) {
        if (check.actual === undefined || !Number.isFinite(check.actual)) continue;
        // A long name goes on in the line below; its figures stand beside its beginning.
        const own = lines.find(
          ([first, found]) =>
            first !== undefined &&
            first.length > 12 &&
            english(check.what).startsWith(first) &&
            found !== undefined,
        );
        expect(own, english(check.what)).toBeDefined();
      }
      const printed = lines.filter(([first = ""]) =>
        checks.some(({ what }) => first.length > 12 && english(what).startsWith(first)),
      );
      expect(printed.length).toBeGreaterThanOrEqual(checks.length);
      for (const [i, { actual, limit, unit, verdict }] of checks.entries()) {
        const [, found, most, word] = printed[i] ?? [];
        if (actual !== undefined && Number.isFinite(actual)) expectFigure(found, actual, unit);
        if (limit !== undefined && actual !== undefined && Number.isFinite(actual))
          expectFigure(most, limit, unit);
        if (actual !== undefined)
          expect(word).toContain({ pass: "passed", fail: "failed", "not-proven": "not proven" }[verdict]);
      }
    }
    expect(figures).toBeGreaterThan(10);
  });

  test("in the workbook: rooms and checks to a thousandth", () => {
    const sheets = scheduleSheets(handover, { plan: wiredPlan, owed: [] });
    const { head, rows } = sheets.find(({ name }) => english(name) === "Rooms")!;
    const cell = (row: number, name: string) =>
      rows[row]![head.findIndex((one) => english(one.title) === name)];
    for (const [i, { area, coverage }] of handover.rooms.entries()) {
      expectThousandth(cell(i, "Area m²"), area);
      if (coverage.demand.asked.walk) {
        expectThousandth(cell(i, "Walk asked m²"), coverage.demanded.walk);
        expectThousandth(cell(i, "Walk seen m²"), coverage.covered.walk);
      }
    }
    const checks = sheets.find(({ name }) => english(name) === "Checks")!.rows;
    const ours = handover.rooms.flatMap(({ coverage }) => coverage.checks);
    expect(checks).toHaveLength(ours.length);
    for (const [i, { what, actual, limit }] of ours.entries()) {
      expect(checks[i]![1]).toBe(what);
      if (actual !== undefined && Number.isFinite(actual)) expectThousandth(checks[i]![2], actual);
      if (limit !== undefined && Number.isFinite(limit)) expectThousandth(checks[i]![3], limit);
    }
  });

  test("on the test pages: every limit that a reading is held against", () => {
    const lines = linesOf(testPages({ handover, title, by: new Map() }));
    const printed = lines.map((line) => line.join(" | "));
    let limits = 0;
    for (const { state } of handover.tests) {
      const { result } = state.step;
      if (result.kind !== "reading") continue;
      const { unit } = readingRows[result.reading];
      for (const [sign, limit] of [
        ["≥", result.limit?.least],
        ["≤", result.limit?.most],
      ] as const) {
        if (limit === undefined || !Number.isFinite(limit)) continue;
        const shown = printed.flatMap((line) => {
          const [, figure] = new RegExp(`${sign} (-?[\\d.]+)[^|]* ${unit}(?: \\||$)`).exec(line) ?? [];
          return figure === undefined ? [] : [Number(figure)];
        });
        expect(shown.some((value) => Math.abs(value - limit) <= 0.005 * Math.max(1, Math.abs(limit)))).toBe(
          true,
        );
        limits += 1;
      }
    }
    expect(limits).toBeGreaterThan(3);
  });
});
