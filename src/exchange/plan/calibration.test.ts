import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "#engine";
import { fourPointMap, onPlan, twoPointMap } from "./calibration.ts";

type Four = readonly [Point, Point, Point, Point];

/** Places are given to a tenth of a millimetre; the equations keep about ten digits. [m] */
const rounding = 1e-7;

const mapOf = (...of: Parameters<typeof fourPointMap>) => {
  const result = fourPointMap(...of);
  if ("code" in result) throw new Error(result.code);
  return result.map;
};
const near = (found: Point | undefined, wanted: Point) => {
  expect(Math.hypot(found![0] - wanted[0], found![1] - wanted[1])).toBeLessThan(rounding);
};
const room: Four = [
  [0, 0],
  [5, 0],
  [5, 4],
  [0, 4],
];
/** Four corners near those of a picture, each moved on its own, so that no three lie in a line. */
const corners = fc.array(fc.double({ min: 0, max: 900, noNaN: true }), { minLength: 8, maxLength: 8 }).map(
  (off): Four => [
    [off[0]!, 3000 - off[1]!],
    [4000 - off[2]!, 3000 - off[3]!],
    [4000 - off[4]!, off[5]!],
    [off[6]!, off[7]!],
  ],
);

test("two places and their distance give the size of a pixel, with y turned up", () => {
  const result = twoPointMap(
    [
      [100, 50],
      [300, 50],
    ],
    { length: 5, height: 400 },
  );
  if ("code" in result) throw new Error(result.code);
  expect(result.metres).toBe(0.025);
  near(onPlan(result.map, [0, 400]), [0, 0]);
  near(onPlan(result.map, [100, 0]), [2.5, 10]);
});

test.each([
  [0, 5],
  [200, 0],
  [200, -1],
  [200, Number.NaN],
])("two places %f px apart that are said to be %f m apart are refused", (pixels, length) => {
  const places: readonly [Point, Point] = [
    [10, 10],
    [10 + pixels, 10],
  ];
  expect(twoPointMap(places, { length, height: 100 })).toEqual({
    code: "plan-calibration-short",
    values: {},
  });
});

test("each of the four places lies exactly where it was said to lie", () => {
  fc.assert(
    fc.property(corners, (places) => {
      const map = mapOf(places, room);
      for (const [i, place] of places.entries()) near(onPlan(map, place), room[i]!);
    }),
    { seed: 13, numRuns: 500 },
  );
});

test("a straight line in the picture is a straight line on the plan", () => {
  fc.assert(
    fc.property(corners, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (places, t) => {
      const map = mapOf(places, room);
      const [a, , c] = places;
      const middle: Point = [a[0] + (c[0] - a[0]) * t, a[1] + (c[1] - a[1]) * t];
      const [x, y] = onPlan(map, middle)!;
      // The diagonal of the picture's corners is the diagonal of the room: y = 4/5 x.
      expect(Math.abs(y - 0.8 * x)).toBeLessThan(rounding);
    }),
    { seed: 14, numRuns: 500 },
  );
});

test("there and back again is the same place", () => {
  fc.assert(
    fc.property(
      corners,
      fc.double({ min: 0.5, max: 4.5, noNaN: true }),
      fc.double({ min: 0.5, max: 3.5, noNaN: true }),
      (places, x, y) => {
        const back = mapOf(room, places);
        const there = mapOf(places, room);
        near(onPlan(there, onPlan(back, [x, y])!), [x, y]);
      },
    ),
    { seed: 15, numRuns: 500 },
  );
});

test("where the four places are seen from the front, the map is the same size everywhere", () => {
  const map = mapOf(
    [
      [100, 500],
      [600, 500],
      [600, 100],
      [100, 100],
    ],
    room,
  );
  near(onPlan(map, [350, 300]), [2.5, 2]);
  near(onPlan(map, [1100, 600]), [10, -1]);
});

test("the middle of a room seen at an angle is where its diagonals cross", () => {
  const trapezium: Four = [
    [0, 300],
    [400, 300],
    [300, 100],
    [100, 100],
  ];
  // The diagonals (0,300)–(300,100) and (400,300)–(100,100) cross at x = 200, y = 300 − 200·2/3.
  near(onPlan(mapOf(trapezium, room), [200, 300 - 400 / 3]), [2.5, 2]);
});

test("beyond the horizon there is no place", () => {
  const map = mapOf(
    [
      [0, 300],
      [400, 300],
      [300, 100],
      [100, 100],
    ],
    room,
  );
  // The sides meet at (200, -100): the horizon is the line y = -100.
  expect(onPlan(map, [200, -150])).toBeUndefined();
});

test("three places in a line, a place given twice, a crossing order and a bay are refused", () => {
  const refused = { code: "plan-calibration-in-line", values: {} };
  const with2 = (place: Point): Four => [[0, 300], [200, 300], place, [0, 100]];
  expect(fourPointMap(with2([400, 300]), room)).toEqual(refused);
  expect(fourPointMap(with2([200, 300]), room)).toEqual(refused);
  expect(
    fourPointMap(
      [
        [0, 0],
        [400, 300],
        [400, 0],
        [0, 300],
      ],
      room,
    ),
  ).toEqual(refused);
  expect(fourPointMap(with2([50, 250]), room)).toEqual(refused);
  expect(fourPointMap(with2([200, Number.NaN]), room)).toEqual(refused);
  expect(
    fourPointMap(with2([200, 100]), [
      [0, 0],
      [1, 0],
      [2, 0],
      [0, 4],
    ]),
  ).toEqual(refused);
});
