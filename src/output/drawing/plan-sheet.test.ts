import { expect, test } from "vitest";
import { english } from "#engine";
import { ferryWing, ferryWingCoverage, ferryWingTitle, ferryWingZones } from "../ferry-wing.fixture.ts";
import { lookOf } from "./ink.ts";
import { boxOf } from "./lettering.ts";
import type { Mark, Sheet, TextMark } from "./mark.ts";
import { type PlanSheetInput, planSheet } from "./plan-sheet.ts";
import { plannedWords } from "./title-block.ts";

const input: PlanSheetInput = {
  site: ferryWing,
  storey: "ground",
  coverage: ferryWingCoverage,
  zones: ferryWingZones,
  title: ferryWingTitle,
};
const flat = (marks: readonly Mark[]): readonly Mark[] =>
  marks.flatMap((mark) => (mark.kind === "clip" ? flat(mark.marks) : [mark]));
const textsOf = (sheet: Sheet): readonly TextMark[] =>
  flat(sheet.marks).filter((mark): mark is TextMark => mark.kind === "text");
const wordsOf = (sheet: Sheet): readonly string[] => textsOf(sheet).map((mark) => mark.text);

test("The sheet is A3 landscape at the largest scale that holds the storey", () => {
  const sheet = planSheet(input);
  expect([sheet.width, sheet.height, sheet.scale]).toEqual([420, 297, 50]);
  const wide = {
    ...ferryWing,
    rooms: ferryWing.rooms.map((room) => ({
      ...room,
      outline: room.outline.map(([x, y]) => [x * 3, y] as const),
    })),
  };
  expect(planSheet({ ...input, site: wide }).scale).toBe(200);
  expect(planSheet({ ...input, paper: "A4" }).scale).toBe(100);
});

test("A metre of wall is 20 mm at 1 : 50", () => {
  const corridor = flat(planSheet(input).marks).find(
    (mark) =>
      mark.kind === "area" &&
      mark.pen?.width === 0.5 &&
      mark.fills.length === 0 &&
      mark.rings[0]!.length === 4,
  ) as Extract<Mark, { kind: "area" }>;
  const xs = corridor.rings[0]!.map((point) => point[0]);
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(16 * 20, 9);
});

test("The scale bar is 100 mm long and says how many metres that is", () => {
  const sheet = planSheet(input);
  const fields = flat(sheet.marks).filter(
    (mark) =>
      mark.kind === "area" &&
      mark.rings[0]!.length === 4 &&
      mark.rings[0]![2]![1] - mark.rings[0]![0]![1] === 2,
  ) as readonly Extract<Mark, { kind: "area" }>[];
  const xs = fields.flatMap((field) => field.rings[0]!.map((point) => point[0]));
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(100, 9);
  expect(wordsOf(sheet)).toContain("5 m");
});

test("The legend explains what is on the sheet and nothing else", () => {
  const full = wordsOf(planSheet(input));
  expect(full).toContain("gap: nobody seen");
  expect(full).toContain("detector that hears");
  const bare = wordsOf(
    planSheet({
      ...input,
      coverage: [],
      zones: [],
      site: { ...ferryWing, detectors: [], interference: [], floorPieces: [] },
    }),
  );
  for (const word of [
    "gap: nobody seen",
    "detector, notch: turn",
    "heard",
    "flight, arrow is up",
    "in sight: will trigger",
  ])
    expect(bare).not.toContain(word);
  expect(bare).toContain("obstacle, top in m");
});

test("Title block, planning margins and the word that nothing was tested stand on every plan", () => {
  const words = wordsOf(planSheet(input));
  for (const word of [english(plannedWords), "1 of 2", "1 : 50 (A3)", "J. Marlow", "2026-03-02"])
    expect(words).toContain(word);
  expect(words.join(" ")).toContain("seated 20 %, towards 15 %, across 15 %");
  // "proven" is for the screen of the one who plans, not for papers that go to site.
  expect(words.join(" ")).not.toMatch(/proven/i);
});

test("Gaps carry their area and cause, sources their kind, walks their metres", () => {
  const words = wordsOf(planSheet(input)).join(" ");
  expect(words).toContain("4.2 m², hidden behind Rack");
  expect(words).toContain("heater");
  expect(words).toContain("1.9 m dark");
});

test("No lettering leaves the sheet or lies on other lettering", () => {
  const sheet = planSheet(input);
  const boxes = textsOf(sheet).map((mark) => ({ text: mark.text, ...boxOf({ ...mark, halo: 0 }) }));
  const outside = boxes.filter(
    (box) => box.left < 10 || box.right > 410.01 || box.top < 10 || box.bottom > 287.01,
  );
  expect(outside).toEqual([]);
  const meeting = boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      // Lines of one label stand close: a descender may come down to the next line.
      .filter(
        (b) =>
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.1 &&
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5,
      )
      .map((b) => [a.text, b.text]),
  );
  expect(meeting).toEqual([]);
});

test("The copy in black and white has the same lettering, in ink and greys only", () => {
  const copy = planSheet({ ...input, variant: "black-and-white" });
  const grey = flat(copy.marks);
  expect(textsOf(copy).map((mark) => [mark.text, ...mark.at])).toEqual(
    textsOf(planSheet(input)).map((mark) => [mark.text, ...mark.at]),
  );
  const colours = new Set(JSON.stringify(grey).match(/#[0-9A-F]{6}/g));
  const hueOf = (colour: string): number => {
    const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
    return Math.max(r!, g!, b!) - Math.min(r!, g!, b!);
  };
  expect([...colours].filter((one) => hueOf(one) > 24)).toEqual([]);
});

test("Every kind of zone, gap and spill has a pattern or edge of its own without colour", () => {
  const looks = (["seated", "towards", "across", "sound", "gap", "spill"] as const).map((kind) =>
    // The wave of "sound" is in its path; its plain edge is what is left of it here.
    JSON.stringify(lookOf(kind, "black-and-white")),
  );
  expect(new Set(looks).size).toBe(6);
});

test("Walls are drawn no thinner than 0.5 mm, and nothing but the four widths of the sheet is used", () => {
  const widths = new Set(
    flat(planSheet(input).marks).flatMap((mark) =>
      "pen" in mark && mark.pen && mark.pen.colour !== "#FFFFFF" ? [mark.pen.width] : [],
    ),
  );
  expect([...widths].sort()).toEqual([0.18, 0.25, 0.35, 0.5]);
});

test("An empty storey still gives a sheet", () => {
  const sheet = planSheet({ ...input, storey: "nowhere" });
  expect(wordsOf(sheet)).toContain(english(plannedWords));
});

test("Snapshot: lettering and number of marks of the plan of the fixture", () => {
  const sheet = planSheet(input);
  const kinds: Record<string, number> = {};
  for (const mark of flat(sheet.marks)) kinds[mark.kind] = (kinds[mark.kind] ?? 0) + 1;
  const round = (value: number): number => Math.round(value * 100) / 100;
  expect({
    kinds,
    texts: textsOf(sheet).map((mark) => `${round(mark.at[0])} ${round(mark.at[1])} ${mark.text}`),
  }).toMatchSnapshot();
});
