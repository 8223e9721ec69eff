import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Linework, type PlanResult, readPdf, readSvg } from "#exchange";
import { realFiles } from "../real-files.ts";
import { type Line, linesIn, withoutPartner } from "./same-lines.ts";

const folder = realFiles("plan");

const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(`${folder}/${name}`));
const read = (result: PlanResult): Linework => {
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  return result.linework;
};
const pdf = async (name: string) => read(await readPdf(bytesOf(name), { fileName: name }));
const svg = async (name: string) => read(await readSvg(bytesOf(name), { fileName: name }));

/** The SVG was made from the PDF at 90 dots an inch: 1.25 units a point. */
const unitsPerPoint = 90 / 72;

/** Both round their coordinates, and the SVG to three digits of a nested place. [pt] */
const rounding = 0.05;

/** Pens that drew straight lines alone: the files differ in size, and so do the lines that a curve becomes. */
const straight = /#00ff00|#4c0072|#98e600/;

/** Layers by the colour of their pens: widths are printed with other digits. */
const byColour = (linework: Linework, colour: string): number =>
  linework.layers.reduce((sum, layer) => sum + (layer.colour === colour ? layer.lines : 0), 0);

describe.skipIf(!folder)("plans that nobody here wrote", () => {
  test("the same floor as PDF and as SVG has the same lines, pen by pen", async () => {
    const [one, other] = [await pdf("university-floor1.pdf"), await svg("university-floor1.svg")];
    // Hatching was removed in the SVG, so the pens that hatched are not compared.
    for (const colour of ["#00ff00", "#4c0072", "#98e600"])
      expect(byColour(one, colour), colour).toBe(byColour(other, colour));
    const [black, blackToo] = [byColour(one, "#000000"), byColour(other, "#000000")];
    expect(black).toBeGreaterThan(6000);
    expect(Math.abs(black - blackToo)).toBeLessThan(5);
    const wanted = linesIn(one, straight);
    const found = linesIn(other, straight).map(
      (line) => line.map((value) => value / unitsPerPoint) as unknown as Line,
    );
    expect(wanted.length).toBeGreaterThan(8500);
    expect(withoutPartner(found, wanted, rounding)).toEqual([]);
    expect(withoutPartner(wanted, found, rounding)).toEqual([]);
  });

  test("its extents agree after scaling", async () => {
    const [one, other] = [await pdf("university-floor1.pdf"), await svg("university-floor1.svg")];
    for (const [i, value] of one.parts[0]!.box.entries())
      expect(Math.abs(other.parts[0]!.box[i]! / unitsPerPoint - value)).toBeLessThan(rounding);
  });

  test("room numbers come out as texts, at the same places", async () => {
    const [one, other] = [await pdf("university-floor1.pdf"), await svg("university-floor1.svg")];
    const numbers = (linework: Linework) => linework.texts.filter(({ text }) => /^1\d{3}[A-G]?$/.test(text));
    expect(numbers(one).length).toBeGreaterThan(85);
    const places = new Map(numbers(other).map(({ text, at }) => [text, at]));
    for (const { text, at } of numbers(one)) {
      const same = places.get(text);
      expect(same, text).toBeDefined();
      expect(
        Math.hypot(same![0] / unitsPerPoint - at[0], same![1] / unitsPerPoint - at[1]),
        text,
      ).toBeLessThan(1);
    }
  });

  test("the basement has its numbers and its lines", async () => {
    const linework = await pdf("university-floorB.pdf");
    expect(linework.texts.filter(({ text }) => /^B\d{3}[A-G]?$/.test(text)).length).toBeGreaterThan(25);
    expect(linework.layerOf.length).toBeGreaterThan(4000);
  });

  test("the pavilion has lines and no text, since its letters were drawn as lines", async () => {
    const linework = await pdf("pavilion-plan.pdf");
    expect(linework.texts).toEqual([]);
    expect(linework.layerOf.length).toBeGreaterThan(4000);
    expect(linework.unit.from).toBe("guessed");
  });

  test("no scale is made up where none is stated", async () => {
    for (const linework of [await pdf("university-floor1.pdf"), await svg("university-floor1.svg")])
      expect(linework.unit.declared).toBeUndefined();
  });

  test("the floor's doors, drawn as chains of short lines, tell its scale to a fifth", async () => {
    // What a person measures on a known door: 0.1016 m a point, 0.08128 m a pixel of the drawing.
    for (const [linework, metres] of [
      [await pdf("university-floor1.pdf"), 0.1016],
      [await svg("university-floor1.svg"), 0.08128],
    ] as const) {
      expect(linework.unit.from).toBe("measured");
      expect(Math.abs(linework.unit.metres / metres - 1)).toBeLessThan(0.2);
    }
  });
});
