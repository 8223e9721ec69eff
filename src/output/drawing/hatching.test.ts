import { expect, test } from "vitest";
import { dotsInside, hatchStrokes } from "./hatching.ts";
import type { PaperRing } from "./mark.ts";

const square: PaperRing = [
  [10, 10],
  [50, 10],
  [50, 50],
  [10, 50],
];
const hole: PaperRing = [
  [20, 20],
  [20, 40],
  [40, 40],
  [40, 20],
];
const pen = { width: 0.18, colour: "#000000" } as const;
const lengthOfAll = (strokes: ReturnType<typeof hatchStrokes>): number =>
  strokes.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);

test.each([0, 30, 45, 90, 137])("Length of the strokes × spacing is the area, at %s°", (angle) => {
  const strokes = hatchStrokes([square, hole], { kind: "hatch", angle, spacing: 0.5, crossed: false, pen });
  // A sum over lines 0.5 mm apart: off by at most a line's worth at either end of square and hole.
  expect(Math.abs(lengthOfAll(strokes) * 0.5 - 1200)).toBeLessThan(60);
});

test("A crossed hatch has the strokes of both directions", () => {
  const fill = { kind: "hatch", angle: 45, spacing: 1, pen } as const;
  const crossed = hatchStrokes([square], { ...fill, crossed: true });
  const once = hatchStrokes([square], { ...fill, crossed: false });
  const across = hatchStrokes([square], { ...fill, angle: 135, crossed: false });
  expect(crossed.length).toBe(once.length + across.length);
});

test("A stroke at 30° rises to the right as one sees it", () => {
  const [stroke] = hatchStrokes([square], { kind: "hatch", angle: 30, spacing: 10, crossed: false, pen });
  const [a, b] = stroke!;
  expect(Math.atan2(-(b[1] - a[1]), b[0] - a[0])).toBeCloseTo(Math.PI / 6, 9);
});

test("No stroke and no dot lies in a hole", () => {
  const inHole = ([x, y]: readonly [number, number]): boolean =>
    x > 20.01 && x < 39.99 && y > 20.01 && y < 39.99;
  const strokes = hatchStrokes([square, hole], { kind: "hatch", angle: 45, spacing: 1, crossed: true, pen });
  expect(strokes.filter(([a, b]) => inHole([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]))).toEqual([]);
  const dots = dotsInside([square, hole], 1.5);
  expect(dots.filter(inHole)).toEqual([]);
  // One dot stands for spacing² × √3 / 2.
  expect(Math.abs(dots.length * 1.5 * 1.5 * (Math.sqrt(3) / 2) - 1200)).toBeLessThan(80);
});
