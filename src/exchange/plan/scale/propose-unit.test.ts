import { expect, test } from "vitest";
import { english, say } from "#engine";
import { rawPdf } from "../../../../test/exchange/written-pdf.ts";
import { readPdf } from "../pdf/read-pdf.ts";
import { statedScales } from "./stated-scale.ts";

/** Metres of paper in a point. */
const point = 0.0254 / 72;

const font = {
  resources: "/Font << /F 5 0 R >>",
  objects: ["<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>"],
};
const unitOf = async (content: string, page = "") => {
  const result = await readPdf(rawPdf(content, { ...font, page }), { fileName: "plan.pdf" });
  if ("problems" in result) throw new Error(JSON.stringify(result.problems));
  return result.linework.unit;
};
const text = (words: string, x: number, y: number, size = 10) =>
  `BT /F ${size} Tf ${x} ${y} Td (${words}) Tj ET `;
/** A quarter circle with its leaf. */
const door = (x: number, y: number, r: number) => {
  const k = 0.5522847 * r;
  return `${x + r} ${y} m ${x + r} ${y + k} ${x + k} ${y + r} ${x} ${y + r} c S ${x} ${y} m ${x} ${y + r} l S `;
};
const outline = "20 20 550 350 re S ";
/** A bar with ticks at 0, 1, 2 and 5 times a length, its numbers centred on them. */
const bar = (perMetre: number, unit = " m") => {
  const ticks = [0, 1, 2, 5].map((value) => {
    const x = 100 + value * perMetre;
    const words = `${value}${value === 5 ? unit : ""}`;
    return `${x} 50 m ${x} 56 l S ${text(words, x - 2.78, 60)}`;
  });
  return `${ticks.join("")}100 50 m ${100 + 5 * perMetre} 50 l S `;
};

const said = (...words: string[]) =>
  statedScales(words.map((each) => ({ text: each, at: [0, 0] as const, height: 1, turn: 0, layer: 0 }))).map(
    ({ scale }) => scale,
  );

test.each([
  ["1 : 100", 100],
  ["1:50", 50],
  ["M 1:100", 100],
  ["Maßstab 1:200", 200],
  ["Scale 1/100", 100],
  ["SCALE: 1:20", 20],
  ["Échelle 1/50", 50],
  ["Scale 1 : 1'250", 1250],
  ['Scale: 1/8" = 1\'-0"', 96],
  ['1/4" = 1\'-0"', 48],
  ["1\" = 20'", 240],
])("“%s” states 1 : %i", (words, scale) => {
  expect(said(words)).toEqual([scale]);
});

test.each([
  "1/2",
  "Sheet 1/100",
  "Slope 1:12",
  "Ramp 1:20",
  "11:50",
  "1:50:30",
  "Room 1.100",
  "Mortar 1:3",
  "21.1/100",
])("“%s” states no scale", (words) => {
  expect(said(words)).toEqual([]);
});

test("of several scales the one said most often comes first, and one with the word before one without", () => {
  expect(said("1:50", "1:100", "1:100")).toEqual([100, 50]);
  expect(said("Details 1:50", "Scale 1:200")).toEqual([200, 50]);
});

test("a stated scale is taken, with its words", async () => {
  const unit = await unitOf(outline + text("Scale 1:100", 400, 30));
  expect(unit).toMatchObject({
    name: say`${say`points`} at 1 : ${100}`,
    from: "declared",
    declared: "Scale 1:100",
  });
  expect(unit.metres).toBeCloseTo(point * 100, 9);
});

test("a scale bar is measured between its outer ticks", async () => {
  const unit = await unitOf(outline + bar(30));
  expect(unit).toMatchObject({ from: "measured" });
  expect(unit.metres).toBeCloseTo(1 / 30, 6);
  expect(english(unit.reason)).toContain("0 1 2 5 m");
});

test("a scale bar in feet is measured in feet, and one without a unit is none", async () => {
  expect((await unitOf(outline + bar(30, " ft"))).metres).toBeCloseTo(0.3048 / 30, 6);
  expect((await unitOf(outline + bar(30, ""))).from).toBe("guessed");
});

test("numbers in a row with no line beside them are no scale bar", async () => {
  const row = [0, 1, 2, 5].map((value) => text(`${value}${value === 5 ? " m" : ""}`, 100 + 30 * value, 200));
  expect((await unitOf(outline + row.join(""))).from).toBe("guessed");
});

test("a bar that agrees confirms what is stated, one that does not wins over it", async () => {
  const perMetre = 1 / (point * 100);
  const agreeing = await unitOf(outline + bar(perMetre) + text("M 1:100", 400, 30));
  expect(agreeing).toMatchObject({ from: "declared", name: say`${say`points`} at 1 : ${100}` });
  expect(english(agreeing.reason)).toContain("agrees");
  const resized = await unitOf(outline + bar(perMetre * 0.7) + text("M 1:100", 400, 30));
  expect(resized).toMatchObject({
    from: "measured",
    declared: "M 1:100",
    name: say`${say`points`} at 1 : ${143}`,
  });
  expect(resized.metres).toBeCloseTo((point * 100) / 0.7, 5);
});

test("a scale that holds on another size of sheet is brought to this one", async () => {
  // An A1 plan on this sheet of 600 pt, 0.2117 m.
  const unit = await unitOf(outline + text("Scale 1:100 @ A1", 400, 30));
  expect(unit.metres).toBeCloseTo((point * 100 * 0.841) / (600 * point), 6);
  expect(english(unit.reason)).toContain("A1");
});

test("without either, door swings tell the usual scale that gives them a door's width", async () => {
  const radius = 0.9 / (point * 100);
  const unit = await unitOf(outline + [60, 160, 260, 360].map((x) => door(x, 100, radius)).join(""));
  expect(unit).toMatchObject({ from: "measured", name: say`${say`points`} at 1 : ${100}` });
  expect(english(unit.reason)).toContain("4 door swings");
});

test("door swings drawn as chains of short lines, unevenly, tell it as well", async () => {
  const chained = (x: number, y: number, r: number): string => {
    const angles = [0, 12, 19, 33, 47, 52, 68, 81, 90].map((degrees) => (degrees * Math.PI) / 180);
    const at = (angle: number): string =>
      `${(x + r * Math.cos(angle)).toFixed(2)} ${(y + r * Math.sin(angle)).toFixed(2)}`;
    const chords = angles.slice(1).map((angle, i) => `${at(angles[i]!)} m ${at(angle)} l S `);
    return `${chords.join("")}${x} ${y} m ${x} ${y + r} l S `;
  };
  const radius = 0.9 / (point * 250);
  const unit = await unitOf(outline + [60, 160, 260, 360].map((x) => chained(x, 100, radius)).join(""));
  expect(unit).toMatchObject({ from: "measured", name: say`${say`points`} at 1 : ${250}` });
  expect(english(unit.reason)).toContain("4 door swings");
});

test("door swings confirm a stated scale, or speak against it", async () => {
  const doors = (scale: number) => [60, 160, 260].map((x) => door(x, 100, 0.9 / (point * scale))).join("");
  const agreeing = await unitOf(outline + doors(100) + text("M 1:100", 400, 30));
  expect(english(agreeing.reason)).toContain("door swings of 0.90 m agree");
  const against = await unitOf(outline + doors(200) + text("M 1:50", 400, 30));
  expect(against).toMatchObject({
    from: "measured",
    name: say`${say`points`} at 1 : ${200}`,
    declared: "M 1:50",
  });
});

test("small rounded corners are no doors: the building would be longer than buildings are", async () => {
  const unit = await unitOf(outline + [60, 160, 260, 360].map((x) => door(x, 100, 0.5)).join(""));
  expect(unit.from).toBe("guessed");
});

test("with nothing to go by the guess says that it is one", async () => {
  expect(await unitOf(outline)).toMatchObject({ from: "guessed", name: say`${say`points`} at 1 : ${100}` });
});
