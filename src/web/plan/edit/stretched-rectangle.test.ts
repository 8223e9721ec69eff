import fc from "fast-check";
import { expect, test } from "vitest";
import type { Outline, Point } from "#engine";
import { stretchedRectangle } from "./stretched-rectangle.ts";

/** Corners are kept to a millimetre. [m] */
const rounding = 2e-3;

const turned = (angle: number, [x, y]: Point): Point => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
];

test("a corner that is moved leaves a rectangle, with the corner across where it was and the moved one at the hand", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.3, max: 6, noNaN: true }),
      fc.double({ min: 0.3, max: 6, noNaN: true }),
      fc.double({ min: 0.3, max: 6, noNaN: true }),
      fc.double({ min: 0.3, max: 6, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      fc.nat(3),
      (wide, high, to, up, angle, start) => {
        const plain: Point[] = [
          [wide, high],
          [0, high],
          [0, 0],
          [wide, 0],
        ];
        const ring = [...plain.slice(start), ...plain.slice(0, start)].map((point) => turned(angle, point));
        const index = (4 - start) % 4;
        const hand = turned(angle, [to, up]);
        const after = stretchedRectangle(ring, { index, to: hand }) as Outline;
        const at = (i: number): Point => after[(index + i) % 4] as Point;
        const near = (one: Point, other: Point): void => {
          expect(Math.hypot(one[0] - other[0], one[1] - other[1])).toBeLessThan(rounding);
        };
        near(at(0), hand);
        near(at(2), [0, 0]);
        near(at(1), turned(angle, [0, up]));
        near(at(3), turned(angle, [to, 0]));
      },
    ),
    { seed: 20261127, numRuns: 100 },
  );
});

test("pulled past the corner across, a rectangle stays as narrow as may be, and what is none is left to its own corner", () => {
  const box: Outline = [
    [0, 0],
    [2, 0],
    [2, 1],
    [0, 1],
  ];
  expect(stretchedRectangle(box, { index: 2, to: [-1, 3] })).toEqual([
    [0, 0],
    [0.02, 0],
    [0.02, 3],
    [0, 3],
  ]);
  const slanted: Outline = [
    [0, 0],
    [2, 0],
    [3, 1],
    [0, 1],
  ];
  expect(stretchedRectangle(slanted, { index: 2, to: [4, 4] })).toBeUndefined();
  expect(stretchedRectangle(box.slice(0, 3), { index: 1, to: [4, 4] })).toBeUndefined();
});
