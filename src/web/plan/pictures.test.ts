import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "#engine";
import { fourPointMap, onPlan, type PictureMap, twoPointMap } from "#exchange";
import { bentTo } from "./pictures.ts";
import { toPixel, type View } from "./view.ts";

/** Where a style sheet's matrix3d puts a place, as the CSS Transforms module defines it. */
function styled(text: string, [x, y]: Point): readonly [number, number] {
  const m = text.slice(9, -1).split(",").map(Number);
  const at = (row: number): number => m[row]! * x + m[4 + row]! * y + m[12 + row]!;
  return [at(0) / at(3), at(1) / at(3)];
}

const view = fc.record({
  scale: fc.double({ min: 2, max: 400, noNaN: true }),
  x: fc.double({ min: -50, max: 50, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
  width: fc.integer({ min: 300, max: 2000 }),
  height: fc.integer({ min: 300, max: 2000 }),
});
const pixel = fc.tuple(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 600 }));

const slanted = fourPointMap(
  [
    [100, 80],
    [700, 120],
    [760, 560],
    [40, 500],
  ],
  [
    [0, 4],
    [6, 4],
    [6, 0],
    [0, 0],
  ],
);
const straight = twoPointMap(
  [
    [10, 10],
    [410, 10],
  ],
  { length: 8, height: 600 },
);

test.each([
  ["a scan", straight],
  ["a photograph taken at an angle", slanted],
] as const)("every pixel of %s lies on the screen where its place on the plan lies", (_, answer) => {
  if (!("map" in answer)) throw new Error(answer.code);
  const map: PictureMap = answer.map;
  fc.assert(
    fc.property(view, pixel, (to: View, at) => {
      const place = onPlan(map, at);
      fc.pre(place !== undefined);
      const { px, py } = toPixel(to, place as Point);
      const [x, y] = styled(bentTo(map, to), at);
      expect(Math.abs(x - px)).toBeLessThan(1e-6 * (1 + Math.abs(px)));
      expect(Math.abs(y - py)).toBeLessThan(1e-6 * (1 + Math.abs(py)));
    }),
    { seed: 5, numRuns: 300 },
  );
});
