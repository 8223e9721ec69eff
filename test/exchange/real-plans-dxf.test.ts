import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { english } from "#engine";
import { type DxfReport, type Linework, readDxf } from "#exchange";
import { realFiles } from "../real-files.ts";

const folder = realFiles("dxf");

const read = (file: string): { linework: Linework; report: DxfReport } => {
  const result = readDxf(new Uint8Array(readFileSync(`${folder}/${file}`)), { fileName: file });
  if ("problems" in result) throw new Error(`${file}: ${JSON.stringify(result.problems)}`);
  return result;
};

const countOf = (report: DxfReport, what: string): number =>
  report.read.find((each) => english(each.what) === what)?.count ?? 0;
const leftOut = (report: DxfReport, what: string): number =>
  report.leftOut.filter((each) => english(each.what) === what).reduce((sum, { count }) => sum + count, 0);
const layer = (linework: Linework, name: string) => linework.layers.find((each) => each.name === name);
const codes = (report: DxfReport): readonly string[] => report.notes.map(({ code }) => code);

/** What each drawing says it is, by its content as listed beside the files and by sizes that a person measured in it. */
describe.skipIf(!folder)("real DXF drawings", () => {
  test("all are read, with lines that are finite and have a length, and with boxes that hold them", () => {
    for (const file of readdirSync(folder!).filter((name) => name.endsWith(".dxf"))) {
      const { linework } = read(file);
      const { lines, layerOf, arcOf } = linework;
      expect([file, layerOf.length > 0]).toEqual([file, true]);
      let wrong = 0;
      for (let i = 0; i < layerOf.length; i++) {
        const [x1, y1, x2, y2] = lines.subarray(4 * i, 4 * i + 4) as unknown as [
          number,
          number,
          number,
          number,
        ];
        const sound = Number.isFinite(x1 + y1 + x2 + y2) && (x1 !== x2 || y1 !== y2);
        if (!sound || !linework.layers[layerOf[i]!] || arcOf[i]! > linework.arcs.length) wrong++;
      }
      expect([file, wrong]).toEqual([file, 0]);
      const counted = linework.layers.reduce((sum, each) => sum + each.lines, 0);
      expect([file, counted]).toEqual([file, layerOf.length]);
      expect([file, linework.parts.length]).toEqual([file, 1]);
    }
  });

  test("units agree with what doors, chairs and printed sizes in them measure", () => {
    const units: Record<string, readonly [string, string]> = {
      "architecture-school-doors-r2010.dxf": ["cm", "declared"],
      // Says inches; its doors are 927 wide.
      "door-block-wipeout-r2018.dxf": ["mm", "measured"],
      "hackerspace-danish-room-text-r2007.dxf": ["cm", "declared"],
      // Says millimetres; its doors are 24 to 36 wide.
      "house-xref-layers-text-dims-r2004.dxf": ["in", "measured"],
      "iso-office-walkable-m-r2013.dxf": ["m", "declared"],
      // Say nothing; doors 90 wide in the first, 120 in the second.
      "lab-office-furniture-polylines-r2018.dxf": ["cm", "guessed"],
      "single-classroom-large-offset-r2018.dxf": ["cm", "guessed"],
      "learning-center-mm-r2018.dxf": ["mm", "declared"],
      "lines-only-inches-r2000.dxf": ["in", "declared"],
      "pavilion-plan-m-r2013.dxf": ["m", "declared"],
      "university-arts-cm-r2018.dxf": ["cm", "declared"],
      "university-lab-floor3-roomlayers-r2007.dxf": ["cm", "declared"],
    };
    const found = Object.fromEntries(
      Object.keys(units).map((file) => {
        const { unit } = read(file).linework;
        return [file, [unit.name, unit.from]];
      }),
    );
    expect(found).toEqual(units);
  });

  test("school: 489 polylines and a circle on functional layers", () => {
    const { linework, report } = read("architecture-school-doors-r2010.dxf");
    expect(linework.layers.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["Walls", "Doors", "Meeting rooms", "Toilets", "Library", "Offices"]),
    );
    expect(linework.layers).toHaveLength(14);
    expect([report.release, countOf(report, "LWPOLYLINE"), countOf(report, "CIRCLE")]).toEqual([
      "R2010",
      489,
      1,
    ]);
    expect(report.leftOut).toEqual([]);
  });

  test("house: an outer drawing's layers, room names with codes in them, dimensions left out, hatches apart", () => {
    const { linework, report } = read("house-xref-layers-text-dims-r2004.dxf");
    expect(leftOut(report, "DIMENSION")).toBe(63);
    expect(countOf(report, "HATCH")).toBe(13);
    expect(linework.layers.some(({ name }) => /^xref.*\$0\$A-WALL$/.test(name))).toBe(true);
    const texts = linework.texts.map(({ text }) => text);
    for (const name of ["KITCHEN", "2 CAR GARAGE", "GREAT ROOM", "DINING ROOM", "ENTRY", "Pantry"])
      expect(texts).toContain(name);
    expect(texts.filter((text) => /%%|\\[A-Za-z]/.test(text))).toEqual([]);
    expect(linework.blocks).toHaveLength(10);
    expect(codes(report)).toContain("dxf-unit-doubted");
    expect(linework.unit.declared).toBe("mm");
    expect(
      linework.arcs.filter(({ radius }) => radius === 30 || radius === 36).length,
    ).toBeGreaterThanOrEqual(8);
  });

  test("hackerspace: Danish room names and printed areas, a hidden hatch layer, no box in the header", () => {
    const { linework, report } = read("hackerspace-danish-room-text-r2007.dxf");
    const texts = linework.texts.map(({ text }) => text);
    expect(texts).toEqual(
      expect.arrayContaining(["Fællesrum", "Værksted", "Køkken", "Kemilab", "60 m2", "4.5 m2"]),
    );
    expect(texts).toHaveLength(18);
    expect(countOf(report, "LINE")).toBe(80);
    expect(countOf(report, "ARC") + leftOut(report, "ARC")).toBe(15);
    expect(layer(linework, "Hatches")?.shown).toBe(false);
    expect(linework.parts[0]!.box.every((value) => Math.abs(value) < 3000)).toBe(true);
  });

  test("university: one layer a room", () => {
    const { linework } = read("university-lab-floor3-roomlayers-r2007.dxf");
    expect(linework.layers).toHaveLength(73);
    expect(layer(linework, "E15-344")?.lines).toBe(6);
    expect(linework.texts).toEqual([]);
  });

  test("classroom: coordinates far from the origin keep their last digit", () => {
    const file = "single-classroom-large-offset-r2018.dxf";
    const { linework, report } = read(file);
    expect(countOf(report, "LWPOLYLINE")).toBe(107);
    const box = linework.parts[0]!.box;
    // The extents that the file states for itself.
    expect(box).toEqual([19021.27217750315, 13118.29973676814, 19857.84954984359, 14059.21267776049]);
  });

  test("laboratory: old polylines and splines, an office layer that is off", () => {
    const { linework, report } = read("lab-office-furniture-polylines-r2018.dxf");
    expect([countOf(report, "POLYLINE"), countOf(report, "SPLINE"), countOf(report, "LWPOLYLINE")]).toEqual([
      237, 5, 8,
    ]);
    expect(linework.layers.map(({ name }) => name).sort()).toEqual([
      "Entrance",
      "Furniture",
      "Offices",
      "Walls",
    ]);
    expect(layer(linework, "Offices")?.shown).toBe(false);
  });

  test("office after a standard: lines, polylines, parameters as texts, a picture left out", () => {
    const { linework, report } = read("iso-office-walkable-m-r2013.dxf");
    expect([countOf(report, "LWPOLYLINE"), countOf(report, "LINE"), countOf(report, "MTEXT")]).toEqual([
      18, 12, 12,
    ]);
    expect([leftOut(report, "IMAGE"), leftOut(report, "VIEWPORT")]).toEqual([1, 1]);
    expect(linework.texts.map(({ text }) => text)).toContain("radius=0.2");
  });

  test("pavilion: doors as arcs of 0.8 and 1.0 m", () => {
    const { linework, report } = read("pavilion-plan-m-r2013.dxf");
    expect([countOf(report, "LINE"), countOf(report, "CIRCLE"), countOf(report, "ARC")]).toEqual([
      954, 188, 69,
    ]);
    const doors = linework.arcs.filter(({ layer: at }) => linework.layers[at]!.name === "Doors");
    expect(doors).toHaveLength(8);
    for (const { radius } of doors)
      expect(Math.min(Math.abs(radius - 0.8), Math.abs(radius - 1))).toBeLessThan(0.05);
    expect([linework.parts[0]!.box[0], linework.parts[0]!.box[3]]).toEqual([-0.84, expect.closeTo(21.91, 9)]);
  });

  test("door block: put in twice, its cover left out", () => {
    const { linework, report } = read("door-block-wipeout-r2018.dxf");
    expect(linework.blocks.map(({ name }) => name)).toEqual(["wipeout_door", "wipeout_door"]);
    expect(leftOut(report, "WIPEOUT")).toBe(2);
  });

  test("inch house: 94 loose lines on one layer", () => {
    const { linework } = read("lines-only-inches-r2000.dxf");
    expect(linework.layers).toMatchObject([{ name: "0", lines: 94 }]);
    // The extents that the file states for itself.
    expect(linework.parts[0]!.box).toEqual([-448.25, -77.375, 68.5, 216]);
  });

  test("binary drawing: three lines", () => {
    const { linework, report } = read("binary-r13.dxf");
    expect([report.binary, linework.layerOf.length]).toEqual([true, 3]);
  });

  test("the other centimetre and millimetre plans have the polylines that are listed", () => {
    expect(countOf(read("learning-center-mm-r2018.dxf").report, "LWPOLYLINE")).toBe(212);
    expect(countOf(read("university-arts-cm-r2018.dxf").report, "LWPOLYLINE")).toBe(507);
    expect(read("university-arts-cm-r2018.dxf").linework.layers).toHaveLength(12);
  });
});
