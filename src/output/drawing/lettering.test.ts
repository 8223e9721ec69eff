import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import PDFDocument from "pdfkit";
import { expect, test } from "vitest";
import { capitalHeight, regularWidths, semiboldWidths, unitsPerEm } from "./inter-widths.ts";
import { boxOf, broken, emOf, fitted, lengthOf } from "./lettering.ts";

const { resolve } = createRequire(import.meta.url);

test.each([
  ["400Regular/Inter_400Regular", regularWidths],
  ["600SemiBold/Inter_600SemiBold", semiboldWidths],
] as const)("The widths in the table are those of the font file %s", (file, widths) => {
  const doc = new PDFDocument({ autoFirstPage: false });
  doc.font(readFileSync(resolve(`@expo-google-fonts/inter/${file}.ttf`))).fontSize(unitsPerEm);
  const measured = (letter: string): number => Math.round(doc.widthOfString(letter, { features: ["tnum"] }));
  widths.basic.forEach((width, i) => {
    expect([i, measured(String.fromCodePoint(32 + i))]).toEqual([i, width]);
  });
  widths.latin.forEach((width, i) => {
    // U+00AD, the soft hyphen, is there to be invisible.
    if (i !== 13) expect([i, measured(String.fromCodePoint(160 + i))]).toEqual([i, width]);
  });
  for (const [letter, width] of Object.entries(widths.rest))
    expect([letter, measured(letter)]).toEqual([letter, width]);
});

test("Figures are tabular: all ten have one width", () => {
  expect(new Set([..."0123456789"].map((figure) => lengthOf(figure, 2.5))).size).toBe(1);
});

test("Lettering of 5 mm has capitals of 5 mm", () => {
  expect((emOf(5) * capitalHeight) / unitsPerEm).toBeCloseTo(5, 12);
});

test("A text that is too long is shortened until it fits, and one that fits is left alone", () => {
  expect(fitted("Plan", 100, { size: 2.5 })).toBe("Plan");
  const short = fitted("Saltmarsh Ferry Terminal", 30, { size: 2.5 });
  expect(short.endsWith("…")).toBe(true);
  expect(lengthOf(short, 2.5)).toBeLessThanOrEqual(30);
});

test("A broken sentence keeps all its words, and every line fits", () => {
  const sentence = "hidden behind the door between Stair and Corridor";
  const lines = broken(sentence, 40, 2.5);
  expect(lines.join(" ")).toBe(sentence);
  for (const line of lines) expect(lengthOf(line, 2.5)).toBeLessThanOrEqual(40);
});

test("The box of a text turned by 90° is as high as the text is long", () => {
  const mark = {
    kind: "text",
    at: [0, 0],
    text: "1 250",
    size: 2.5,
    anchor: "start",
    weight: "regular",
    colour: "",
  } as const;
  const level = boxOf(mark);
  const upright = boxOf({ ...mark, turn: 90 });
  expect(upright.bottom - upright.top).toBeCloseTo(level.right - level.left, 9);
  // Read from the right: the text runs up from its anchor.
  expect(upright.top).toBeCloseTo(-(level.right - level.left), 9);
});
