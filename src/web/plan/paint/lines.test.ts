import fc from "fast-check";
import { expect, test } from "vitest";
import { type LineBrush, strokeLines } from "./lines.ts";

/** A brush that keeps what it drew, line by line. */
function recorder(): {
  readonly brush: LineBrush;
  readonly drawn: number[][];
  readonly strokes: () => number;
} {
  const drawn: number[][] = [];
  let at: [number, number] = [0, 0];
  let strokes = 0;
  return {
    drawn,
    strokes: () => strokes,
    brush: {
      beginPath: () => {},
      moveTo: (x, y) => {
        at = [x, y];
      },
      lineTo: (x, y) => {
        // No negative nought: it is the same place.
        drawn.push([...at, x, y].map((value) => value + 0));
        at = [x, y];
      },
      stroke: () => {
        strokes += 1;
      },
    },
  };
}

const canvas = { scale: 10, x: 0, y: 100, width: 200, height: 100 };
const coordinate = fc.integer({ min: -500, max: 2500 }).map((centimetres) => centimetres / 100);

test("every line that shows on the canvas and is a pixel long is drawn from end to end, in its place", () => {
  let seen = 0;
  fc.assert(
    fc.property(
      fc.array(fc.tuple(coordinate, coordinate, coordinate, coordinate), { maxLength: 40 }),
      (all) => {
        const { brush, drawn } = recorder();
        for (const _ of strokeLines(brush, [Float64Array.from(all.flat())], canvas));
        const places = all.map(([ax, ay, bx, by]) => [
          10 * ax + 0,
          100 - 10 * ay,
          10 * bx + 0,
          100 - 10 * by,
        ]);
        for (const line of drawn) expect(places).toContainEqual(line);
        for (const line of places) {
          const [ax, ay, bx, by] = line as [number, number, number, number];
          const shows = [
            [ax, ay],
            [bx, by],
          ].some(([x, y]) => x! >= 0 && x! <= 200 && y! >= 0 && y! <= 100);
          if (!shows || Math.max(Math.abs(bx - ax), Math.abs(by - ay)) < 1) continue;
          seen += 1;
          expect(drawn).toContainEqual(line);
        }
      },
    ),
    { seed: 11, numRuns: 100 },
  );
  expect(seen).toBeGreaterThan(100);
});

test("of short lines one is drawn for each pixel", () => {
  const { brush, drawn } = recorder();
  const short = [2.01, 2.01, 2.05, 2.05];
  const other = [4.01, 2.01, 4.05, 2.05];
  for (const _ of strokeLines(brush, [Float64Array.from([short, short, other, short].flat())], canvas));
  expect(drawn).toHaveLength(2);
});

test("lines off the canvas are left out", () => {
  const { brush, drawn } = recorder();
  for (const _ of strokeLines(brush, [Float64Array.of(-2, 1, -1, 9, 1, 12, 19, 12)], canvas));
  expect(drawn).toEqual([]);
});

test("many lines are stroked in slices, with a pause after each", () => {
  const { brush, drawn, strokes } = recorder();
  const lines = Float64Array.from(
    Array.from({ length: 10_000 }, (_, i) => [0, i / 1000, 15, i / 1000]).flat(),
  );
  let pauses = 0;
  for (const _ of strokeLines(brush, [lines], canvas)) pauses += 1;
  expect(drawn).toHaveLength(10_000);
  expect([pauses, strokes()]).toEqual([2, 3]);
});
