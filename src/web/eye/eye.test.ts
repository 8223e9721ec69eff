import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { maskContains, type Outline } from "#engine";
import { directionOf, type Eye, maskBetween, offDisc, onDisc } from "./direction.ts";
import { floorEdge, wallDistance } from "./surroundings.ts";

const eye: Eye = { at: [2, 2], height: 2.5, turn: 0 };
const square: Outline = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
];

describe("the detector's own eye", () => {
  test("1.5 m away and 1.5 m below the lens is 45° off straight down", () => {
    const { azimuth, offNadir } = directionOf(eye, [3.5, 2], 1);
    expect(offNadir).toBeCloseTo(Math.PI / 4, 9);
    expect(azimuth).toBeCloseTo(0, 9);
  });

  test("straight down is the centre of the disc, the height of the lens its rim", () => {
    expect(onDisc(eye, directionOf(eye, eye.at, 0))).toEqual([0, -0]);
    const [x, y] = onDisc(eye, directionOf(eye, [2, 5], 2.5));
    expect(x).toBeCloseTo(0, 9);
    expect(y).toBeCloseTo(-1, 9);
  });

  test("turning the detector turns the azimuth and leaves the picture as the plan lies", () => {
    const turned = { ...eye, turn: 1 };
    expect(directionOf(turned, [3, 3], 0).azimuth).toBeCloseTo(
      directionOf(eye, [3, 3], 0).azimuth - 1 + 2 * Math.PI,
      9,
    );
    const [x, y] = onDisc(eye, directionOf(eye, [3, 3], 0));
    const [turnedX, turnedY] = onDisc(turned, directionOf(turned, [3, 3], 0));
    expect(turnedX).toBeCloseTo(x, 9);
    expect(turnedY).toBeCloseTo(y, 9);
  });

  test("the floor of a square room ends where its walls stand", () => {
    const edge = floorEdge(eye, { outline: square, holes: [] });
    expect(edge[0]!.offNadir).toBeCloseTo(Math.atan2(2, 2.5), 9);
    expect(edge[90]!.offNadir).toBeCloseTo(Math.atan2(Math.hypot(2, 2), 2.5), 9);
  });

  test("of two walls in one direction the nearer counts", () => {
    expect(
      wallDistance(
        [
          square,
          [
            [3, 1],
            [3.5, 1],
            [3.5, 3],
            [3, 3],
          ],
        ],
        [2, 2],
        0,
      ),
    ).toBeCloseTo(1, 9);
  });

  test("disc to direction and back is the same place", () => {
    const figure = fc.double({ min: -0.7, max: 0.7, noNaN: true });
    fc.assert(
      fc.property(figure, figure, fc.double({ min: -7, max: 7, noNaN: true }), (x, y, turn) => {
        const [backX, backY] = onDisc({ turn }, offDisc({ turn }, [x, y]));
        expect(backX).toBeCloseTo(x, 9);
        expect(backY).toBeCloseTo(y, 9);
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  test("a dragged mask covers both ends and the way between them, whichever way it was dragged", () => {
    const angle = fc.double({ min: 0, max: 2 * Math.PI - 1e-6, noNaN: true });
    const span = fc.double({ min: -2.8, max: 2.8, noNaN: true });
    const band = fc.double({ min: 0.01, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(angle, span, band, band, (start, way, one, other) => {
        const mask = maskBetween(
          { azimuth: start, offNadir: one },
          { azimuth: start + way, offNadir: other },
        );
        const middle = { azimuth: start + way / 2, offNadir: (one + other) / 2 };
        expect(maskContains(mask, middle)).toBe(true);
        const behind = { azimuth: start + way / 2 + Math.PI, offNadir: (one + other) / 2 };
        expect(maskContains(mask, behind)).toBe(false);
      }),
      { seed: 12, numRuns: 300 },
    );
  });
});
