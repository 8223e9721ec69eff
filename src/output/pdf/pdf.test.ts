import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { inflateSync } from "node:zlib";
import { expect, test } from "vitest";
import type { Sheet } from "../drawing/mark.ts";
import { planSheet } from "../drawing/plan-sheet.ts";
import { ferryWing, ferryWingCoverage, ferryWingTitle, ferryWingZones } from "../ferry-wing.fixture.ts";
import { pdfOf } from "./pdf.ts";

const { resolve } = createRequire(import.meta.url);
const font = (file: string): Uint8Array => readFileSync(resolve(`@expo-google-fonts/inter/${file}.ttf`));
const details = {
  fonts: { regular: font("400Regular/Inter_400Regular"), semibold: font("600SemiBold/Inter_600SemiBold") },
  title: "Plan",
  author: "",
  language: "en",
  created: new Date(Date.UTC(2026, 2, 2)),
};

/** The drawing instructions of all pages. */
function contentOf(pdf: Uint8Array): string {
  const bytes = Buffer.from(pdf);
  const parts: string[] = [];
  for (let at = bytes.indexOf("stream\n"); at >= 0; at = bytes.indexOf("stream\n", at + 1)) {
    if (bytes.subarray(at - 3, at).toString("latin1") === "end") continue;
    const end = bytes.indexOf("endstream", at);
    try {
      parts.push(inflateSync(bytes.subarray(at + 7, end)).toString("latin1"));
    } catch {
      // Not a compressed stream.
    }
  }
  return parts.join("\n");
}

test("A document says in which language it is read out", async () => {
  const empty: Sheet = { name: "empty", title: "empty", width: 210, height: 297, marks: [] };
  for (const language of ["en", "de", "fr", "es"]) {
    const pdf = Buffer.from(await pdfOf([empty], { ...details, language })).toString("latin1");
    expect([...pdf.matchAll(/\/Lang \((\w+)\)/g)].map(([, tag]) => tag)).toEqual([language]);
  }
});

test("A bar of 100 mm measures 100 mm on the page", async () => {
  const bar: Sheet = {
    name: "bar",
    title: "bar",
    width: 420,
    height: 297,
    marks: [{ kind: "line", from: [20, 150], to: [120, 150], pen: { width: 0.5, colour: "#000000" } }],
  };
  const pdf = await pdfOf([bar], details);
  const content = contentOf(pdf);
  const scale = Number(/([\d.]+) 0 0 ([\d.]+) 0 0 cm/.exec(content.replace("1 0 0 -1", ""))![1]);
  expect(content).toContain("20 150 m");
  expect(content).toContain("120 150 l");
  // 1 pt is 25.4 / 72 mm.
  expect((100 * scale * 25.4) / 72).toBeCloseTo(100, 3);
  const box = /MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(Buffer.from(pdf).toString("latin1"))!;
  expect((Number(box[1]) * 25.4) / 72).toBeCloseTo(420, 2);
  expect((Number(box[2]) * 25.4) / 72).toBeCloseTo(297, 2);
});

test("The same sheets and date give the same bytes; another date does not", async () => {
  const sheet = planSheet({
    site: ferryWing,
    storey: "ground",
    coverage: ferryWingCoverage,
    zones: ferryWingZones,
    title: ferryWingTitle,
  });
  const first = await pdfOf([sheet], details);
  expect(Buffer.compare(first, await pdfOf([sheet], details))).toBe(0);
  expect(Buffer.compare(first, await pdfOf([sheet], { ...details, created: new Date(0) }))).not.toBe(0);
});

test("No pen is changed between a path and its stroke, which PDF forbids", async () => {
  const sheet = planSheet({
    site: ferryWing,
    storey: "ground",
    coverage: ferryWingCoverage,
    zones: ferryWingZones,
    title: ferryWingTitle,
  });
  const lines = contentOf(await pdfOf([sheet], details)).split("\n");
  let open = false;
  const broken: string[] = [];
  for (const line of lines) {
    if (/ (m|l|c|re)$/.test(line)) open = true;
    else if (/^(S|f|f\*|B|B\*|n|W|W\*|W n|h|s)$/.test(line)) open = line === "h" ? open : false;
    else if (open && / (w|d|RG|SCN|CS|cm|J)$|^[qQ]$/.test(line)) broken.push(line);
  }
  expect(lines.length).toBeGreaterThan(500);
  expect(broken).toEqual([]);
});
