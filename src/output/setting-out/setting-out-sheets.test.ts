import { expect, test } from "vitest";
import { english } from "#engine";
import { lengthOf } from "../drawing/lettering.ts";
import type { Mark, TextMark } from "../drawing/mark.ts";
import { plannedWords } from "../drawing/title-block.ts";
import { ferryWing, ferryWingTitle } from "../ferry-wing.fixture.ts";
import { svgOf } from "../svg/svg.ts";
import type { AsbestosKnown } from "./asbestos-band.ts";
import { deviceColumns, deviceRows } from "./device-rows.ts";
import { settingOutSheets } from "./setting-out-sheets.ts";

const sheetsOf = (site: typeof ferryWing, asbestos: AsbestosKnown = { asbestosRegister: "none" }) => {
  const unnumbered = settingOutSheets({
    site,
    storey: "ground",
    title: { ...ferryWingTitle, sheet: "Setting out" },
    asbestos,
  });
  return unnumbered.map((sheet, i) => sheet(i + 1, unnumbered.length));
};

const textsOf = (marks: readonly Mark[]): readonly TextMark[] =>
  marks.flatMap((mark) => (mark.kind === "text" ? [mark] : mark.kind === "clip" ? textsOf(mark.marks) : []));

test("Every detector is drawn once and has one line in a table, with the same measures in both", () => {
  const texts = sheetsOf(ferryWing).flatMap((sheet) => textsOf(sheet.marks).map((mark) => mark.text));
  for (const detector of ferryWing.detectors)
    expect(texts.filter((text) => text === detector.tag).length).toBe(2);
  expect(texts).toContain("tile 6 · 3\u00a0850");
  expect(texts).toContain("b  tile 6 (3\u00a0850)");
  expect(texts.filter((text) => text === "2\u00a0500").length).toBeGreaterThanOrEqual(1);
  expect(texts).toContain("c  2\u00a0500");
});

test("Sheets say their scale and page, and that nothing was tested yet", () => {
  const sheets = sheetsOf(ferryWing);
  sheets.forEach((sheet, i) => {
    const texts = textsOf(sheet.marks).map((mark) => mark.text);
    expect(texts).toContain(english(plannedWords));
    expect(texts).toContain(`${i + 1} of ${sheets.length}`);
    expect(texts).toContain(`1 : ${sheet.scale} (A3)`);
  });
});

test("A cut-out that the data sheet does not give is unknown, never a number", () => {
  const texts = sheetsOf(ferryWing).flatMap((sheet) => textsOf(sheet.marks).map((mark) => mark.text));
  expect(texts.filter((text) => text === "Ø 68").length).toBe(4);
  expect(texts).toContain("unknown*");
});

test("What is too long for its column goes on below it, and no figure is cut short", () => {
  const detector = {
    ...ferryWing.detectors[0]!,
    masks: [
      { from: Math.PI, to: 2 * Math.PI, inner: Math.PI / 4, outer: Math.PI / 2 },
      { from: 0, to: 1, inner: 0, outer: 1 },
    ],
  };
  const far = { kind: "tiles", wall: 0, foot: [0, 0], distance: 119.7, tiles: 199, cutTile: 0 } as const;
  const rows = deviceRows(detector, {
    site: ferryWing,
    measures: [far, far],
    letters: new Map([[0, "bb"]]),
    speak: english,
  });
  const column = (i: number): string =>
    rows
      .map((row) => row[i])
      .filter(Boolean)
      .join(" ");
  expect(column(2)).toBe("bb  tile 199 (119\u00a0700)");
  expect(column(7)).toBe("180–360° × 45–90° 0–57° × 0–57°");
  for (const row of rows)
    for (const [i, cell] of row.entries())
      expect(lengthOf(cell, 2.5)).toBeLessThanOrEqual(deviceColumns(english)[i]!.width - 3);
});

test("Forty detectors in one room get a table of their own, and none of them is lost", () => {
  const many = {
    ...ferryWing,
    detectors: Array.from({ length: 40 }, (_, i) => ({
      ...ferryWing.detectors[0]!,
      id: `m${i}`,
      tag: `B9.${String(i).padStart(2, "0")}`,
      at: [0.4 + 0.39 * i, 0.5 + (i % 3) * 0.5] as const,
    })),
  };
  const sheets = sheetsOf(many);
  expect(sheets.length).toBe(2);
  const rows = textsOf(sheets[1]!.marks).map((mark) => mark.text);
  for (const detector of many.detectors) expect(rows).toContain(detector.tag);
});

test("Until the asbestos register was answered none or seen, every setting-out sheet warns of it, in ink on white", () => {
  const warnings = (asbestos: AsbestosKnown) =>
    sheetsOf(ferryWing, asbestos).map((sheet) =>
      textsOf(sheet.marks).filter(({ text }) => text.startsWith("! Asbestos")),
    );
  for (const asbestos of [{}, { asbestosRegister: "not-seen" }] as const) {
    const perSheet = warnings(asbestos);
    expect(perSheet.length).toBeGreaterThan(0);
    for (const found of perSheet) {
      expect(found.length).toBe(1);
      expect(found[0]!.text).toContain("Do not drill until it was seen");
      expect(lengthOf(found[0]!.text, found[0]!.size, found[0]!.weight)).toBeLessThan(390 - 8);
    }
  }
  for (const asbestosRegister of ["none", "seen"] as const)
    expect(warnings({ asbestosRegister }).flat()).toEqual([]);
});

test("What was remarked of asbestos stands on the sheets even when the register was seen, however long it is", () => {
  const remark = "Ceiling boards of the plant room hold it.";
  const [first] = sheetsOf(ferryWing, { asbestosRegister: "seen", asbestosRemark: remark });
  expect(textsOf(first!.marks).map(({ text }) => text)).toContain(`! Asbestos register seen: ${remark}`);
  const long = sheetsOf(ferryWing, { asbestosRegister: "seen", asbestosRemark: `${remark} `.repeat(40) });
  for (const sheet of long)
    for (const mark of textsOf(sheet.marks).filter(({ weight, at }) => weight === "semibold" && at[1] < 40))
      expect(lengthOf(mark.text, mark.size, mark.weight)).toBeLessThan(390 - 8);
});

test("The warning takes its own place: no drawing and no table runs under it", () => {
  for (const sheet of sheetsOf(ferryWing, {})) {
    const below = sheet.marks.flatMap((mark) => (mark.kind === "clip" ? [mark.within.top] : []));
    expect(below.length).toBeGreaterThan(0);
    for (const top of below) expect(top).toBeGreaterThanOrEqual(10 + 8);
  }
});

test("A room that fits no sheet at 1 : 50 is drawn at the next scale that holds it", () => {
  const long = {
    ...ferryWing,
    rooms: ferryWing.rooms.map((room) =>
      room.id === "corridor"
        ? {
            ...room,
            outline: [
              [0, 0],
              [30, 0],
              [30, 2],
              [0, 2],
            ] as const,
          }
        : room,
    ),
  };
  const scales = sheetsOf(long).map((sheet) => sheet.scale);
  expect(scales).toContain(50);
  expect(scales).toContain(100);
});

test("A storey without detectors has no setting-out sheet, and the same site gives the same bytes", () => {
  expect(sheetsOf({ ...ferryWing, detectors: [] })).toEqual([]);
  expect(sheetsOf(ferryWing).map(svgOf)).toEqual(sheetsOf(ferryWing).map(svgOf));
});
