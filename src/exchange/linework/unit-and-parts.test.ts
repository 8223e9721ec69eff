import { describe, expect, test } from "vitest";
import { english } from "#engine";
import type { LineArc, LineText, Linework } from "./linework.ts";
import { partsOf } from "./parts.ts";
import { proposeDrawingUnit } from "./unit-proposal.ts";

type Lines = readonly (readonly [number, number, number, number])[];

const rectangle = (x: number, y: number, width: number, depth: number): Lines => [
  [x, y, x + width, y],
  [x + width, y, x + width, y + depth],
  [x + width, y + depth, x, y + depth],
  [x, y + depth, x, y],
];

/** A house of 14 × 9 m with one inner wall, doors of 0.9 m with leaf and arc, letters of 0.2 m, in a unit. */
const house = (metres: number, { doors = 3, letters = 4, leaves = true } = {}) => {
  const lines: [number, number, number, number][] = [];
  const arcs: LineArc[] = [];
  for (const line of [...rectangle(0, 0, 14, 9), ...rectangle(5, 0, 0.2, 9)]) lines.push([...line]);
  for (let i = 0; i < doors; i++) {
    arcs.push({ centre: [1 + 2 * i, 3], radius: 0.9, from: 0, to: Math.PI / 2, layer: 0 });
    if (leaves) lines.push([1 + 2 * i, 3, 1 + 2 * i, 3.9]);
  }
  const texts: LineText[] = Array.from({ length: letters }, (_, i) => ({
    text: "Room",
    at: [i, 1],
    height: 0.2,
    turn: 0,
    layer: 0,
  }));
  return {
    lines: Float64Array.from(lines.flat(), (v) => v / metres),
    arcs: arcs.map((arc) => ({
      ...arc,
      centre: [arc.centre[0] / metres, arc.centre[1] / metres] as const,
      radius: arc.radius / metres,
    })),
    texts: texts.map((text) => ({ ...text, height: text.height / metres })),
  };
};

const units = [
  ["mm", 0.001],
  ["cm", 0.01],
  ["m", 1],
  ["in", 0.0254],
  ["ft", 0.3048],
  ["dm", 0.1],
] as const;

describe("the unit of a drawing", () => {
  test.each(units)("is kept where the file says %s and it is so", (name, metres) => {
    const proposal = proposeDrawingUnit({ ...house(metres), declared: { name, metres } });
    expect(proposal).toMatchObject({ name, metres, declared: name, from: "declared" });
    expect(english(proposal.reason)).toMatch(
      /3 door swings are 0\.90 m wide and the drawing is 14 m long\.$/,
    );
  });

  test.each(units)(
    "is found by the doors where the file says nothing and it is drawn in %s",
    (name, metres) => {
      const proposal = proposeDrawingUnit(house(metres));
      expect(proposal).toMatchObject({ name, metres, from: "measured" });
      expect(proposal).not.toHaveProperty("declared");
    },
  );

  test("is not the declared one where the drawing would be too small for a building", () => {
    const proposal = proposeDrawingUnit({ ...house(0.0254), declared: { name: "mm", metres: 0.001 } });
    expect(proposal).toMatchObject({ name: "in", declared: "mm", from: "measured" });
    expect(english(proposal.reason)).toBe(
      "The file says millimetres, but the drawing would be 0.55 m long; in inches 3 door swings are 0.90 m wide and the drawing is 14 m long.",
    );
  });

  test("is not the declared one where doors with their leaves say otherwise, even if the size would do", () => {
    const proposal = proposeDrawingUnit({ ...house(0.3048), declared: { name: "m", metres: 1 } });
    expect(proposal).toMatchObject({ name: "ft", declared: "m", from: "measured" });
    expect(english(proposal.reason)).toMatch(
      /^The file says metres, but its doors would not be as wide as doors are;/,
    );
  });

  test("is the declared one where only quarter circles without a leaf say otherwise", () => {
    const proposal = proposeDrawingUnit({
      ...house(0.3048, { leaves: false }),
      declared: { name: "m", metres: 1 },
    });
    expect(proposal).toMatchObject({ name: "m", from: "declared" });
  });

  test("is not the declared one where letters would be as high as houses", () => {
    const drawing = { ...house(0.001, { doors: 0 }), declared: { name: "cm", metres: 0.01 } };
    const proposal = proposeDrawingUnit({
      ...drawing,
      texts: drawing.texts.map((text) => ({ ...text, height: 300 })),
    });
    expect(proposal).toMatchObject({ name: "mm", declared: "cm", from: "measured" });
    expect(english(proposal.reason)).toMatch(/its letters would not be as high as letters are/);
  });

  test("is found in no time where thousands of swings lie on one another, among lines of next to no length", () => {
    const { lines, arcs, texts } = house(1);
    const copies = Array.from({ length: 10_000 }, () => arcs).flat();
    const specks = Array.from({ length: 10_000 }, () => [1, 3, 1, 3 + 1e-15, 5e-200, 0, 0, 0]).flat();
    const crowded = { lines: Float64Array.from([...lines, ...specks]), arcs: copies, texts };
    expect(proposeDrawingUnit(crowded)).toMatchObject({ name: "m", from: "measured" });
  });

  test("is a guess that says so where nothing but the size is there", () => {
    const proposal = proposeDrawingUnit(house(0.01, { doors: 0, letters: 0 }));
    expect(proposal).toMatchObject({ name: "cm", from: "guessed" });
    expect(english(proposal.reason)).toBe(
      "The file says no unit; in centimetres it is 14 m long, but neither doors nor texts confirm it.",
    );
  });

  test("does not change when the drawing is far away, or has a speck far away", () => {
    const { lines, arcs, texts } = house(0.001);
    const far = lines.map((v) => v + 5e6);
    const moved = arcs.map((arc) => ({
      ...arc,
      centre: [arc.centre[0] + 5e6, arc.centre[1] + 5e6] as const,
    }));
    expect(proposeDrawingUnit({ lines: far, arcs: moved, texts })).toEqual(
      proposeDrawingUnit({ lines, arcs, texts }),
    );
    const many = Float64Array.from(Array.from({ length: 50 }, () => [...lines]).flat());
    const speck = Float64Array.from([...many, 1e9, 1e9, 1e9 + 1, 1e9]);
    expect(proposeDrawingUnit({ lines: speck, arcs, texts })).toMatchObject({ name: "mm", from: "measured" });
  });
});

describe("parts of a drawing", () => {
  const metre = { metres: 1, name: "m", from: "measured", reason: "drawn" } as const;
  const drawn = (
    lines: Lines,
    texts: readonly LineText[] = [],
  ): Pick<Linework, "lines" | "layerOf" | "layers" | "texts"> => ({
    lines: Float64Array.from(lines.flat()),
    layerOf: new Uint16Array(lines.length),
    layers: [{ name: "0", lines: lines.length, shown: true }],
    texts,
  });
  /** A storey of 12 × 8 m with four rooms. */
  const storey = (x: number, y: number): Lines => [
    ...rectangle(x, y, 12, 8),
    ...rectangle(x, y, 6, 4),
    ...rectangle(x + 6, y + 4, 6, 4),
    ...rectangle(x + 1, y + 1, 1, 1),
  ];
  const title = (text: string, x: number, y: number, height = 0.6): LineText => ({
    text,
    at: [x, y],
    height,
    turn: 0,
    layer: 0,
  });

  test("one storey is one part, with what stands in its court", () => {
    const court = [...rectangle(0, 0, 40, 30), ...rectangle(5, 5, 30, 20), ...rectangle(18, 13, 4, 4)];
    expect(partsOf(drawn(court), metre)).toEqual([{ name: "Whole drawing", box: [0, 0, 40, 30] }]);
  });

  test("storeys side by side are parts, from left to right and then downwards, called by their titles", () => {
    const lines = [...storey(0, 20), ...storey(20, 20), ...storey(0, 0)];
    const texts = [
      title("Ground floor", 2, 18.5),
      title("First floor", 22, 18.5),
      title("Scale 1:100", 2, 18, 0.2),
      title("Kitchen", 1, 22, 0.2),
      title("Hall", 21, 22, 0.2),
      title("Store", 1, 2, 0.2),
    ];
    expect(partsOf(drawn(lines, texts), metre)).toEqual([
      { name: "Ground floor", box: [0, 20, 12, 28] },
      { name: "First floor", box: [20, 20, 32, 28] },
      { name: "Part 3", box: [0, 0, 12, 8] },
    ]);
  });

  test("a frame round everything and a north arrow do not count", () => {
    const many = (x: number): Lines => Array.from({ length: 6 }, () => storey(x, 0)).flat();
    const lines = [...many(0), ...many(20), ...rectangle(-5, -5, 45, 20), ...rectangle(36, -3, 0.5, 0.5)];
    expect(partsOf(drawn(lines), metre).map(({ box }) => box)).toEqual([
      [0, 0, 12, 8],
      [20, 0, 32, 8],
    ]);
  });

  test("two houses a lane of two metres apart are one part", () => {
    expect(partsOf(drawn([...storey(0, 0), ...storey(14, 0)]), metre)).toHaveLength(1);
  });
});
