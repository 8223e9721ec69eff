import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { english, settingsOfSite } from "#engine";
import { ferryWing } from "../ferry-wing.fixture.ts";
import { labelGrids } from "./label-grids.ts";
import { labelSheets } from "./label-sheets.ts";
import { labelText, readLabelText } from "./label-text.ts";
import { qrOf } from "./qr.ts";
import { readQr } from "./read-qr.fixture.ts";

describe("The text of a label", () => {
  test("is read back whatever stands in ids and tag", () => {
    const part = fc.string({ unit: "grapheme", minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(part, part, part, part, (job, device, room, tag) => {
        const text = { job, device, room, tag };
        expect(readLabelText(labelText(text))).toEqual(text);
      }),
      { seed: 20261126, numRuns: 200 },
    );
  });

  test("has the documented form, and other texts are none", () => {
    const text = labelText({ job: "j", device: "d/1", room: "hall", tag: "B1.04" });
    expect(text).toBe("roomwake:device/j/d%2F1/hall/B1.04");
    for (const other of [
      "https://example.org",
      "roomwake:device/j/d",
      "roomwake:device/j//r/t",
      "roomwake:device/%/d/r/t",
    ])
      expect(readLabelText(other)).toBeUndefined();
  });
});

describe("The code of a label", () => {
  test("says its text in every version from 1 to 10, with every block whole", () => {
    const sizes = new Set<number>();
    for (let length = 1; length <= 213; length += 7) {
      const text = Array.from({ length }, (_, i) => String.fromCharCode(33 + ((i * 7 + length) % 90))).join(
        "",
      );
      const code = qrOf(text)!;
      sizes.add(code.length);
      expect(readQr(code)).toEqual({ text, blocks: "whole" });
    }
    expect([...sizes]).toEqual(Array.from({ length: 10 }, (_, i) => 21 + 4 * i));
  });

  test("holds letters beyond ASCII, and is refused where the text is too long", () => {
    expect(readQr(qrOf("Büro 𝄞")!).text).toBe("Büro 𝄞");
    expect(qrOf("x".repeat(213))).toBeDefined();
    expect(qrOf("x".repeat(214))).toBeUndefined();
  });
});

describe("Sheets of labels", () => {
  test("lie within the sheet in every grid, label beside label without overlap", () => {
    for (const grid of Object.values(labelGrids)) {
      expect(grid.left).toBeGreaterThanOrEqual(0);
      expect(grid.top).toBeGreaterThanOrEqual(0);
      expect(grid.left + (grid.columns - 1) * grid.acrossPitch + grid.width).toBeLessThanOrEqual(210.001);
      expect(grid.top + (grid.rows - 1) * grid.downPitch + grid.height).toBeLessThanOrEqual(297.001);
      expect(grid.acrossPitch).toBeGreaterThanOrEqual(grid.width);
      expect(grid.downPitch).toBeGreaterThanOrEqual(grid.height);
    }
  });

  test("name every detector with its tag and room", () => {
    const input = {
      site: ferryWing,
      devices: settingsOfSite(ferryWing).devices,
      job: "Ferry wing",
      identity: "5b1f7c1e-2f5a-4c4e-9c39-0d7a3c2f9b11",
    };
    for (const grid of Object.keys(labelGrids) as (keyof typeof labelGrids)[]) {
      const sheets = labelSheets({ ...input, grid, speak: english }).map((sheet) => sheet(1, 1));
      const texts = sheets.flatMap(({ marks }) =>
        marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])),
      );
      for (const { tag } of ferryWing.detectors) expect(texts).toContain(tag);
      const codes = sheets.flatMap(({ marks }) => marks.filter(({ kind }) => kind === "area"));
      expect(codes).toHaveLength(ferryWing.detectors.length);
    }
  });
});
