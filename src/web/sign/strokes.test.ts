import { expect, test } from "vitest";
import { begun, drawnOn, fieldShape, onField, pathOf, type Strokes } from "./strokes.ts";

const field = { left: 100, top: 50, width: 200 };

test("a place on the screen is a share of the width, and stays inside the field", () => {
  expect(onField({ x: 150, y: 70 }, field)).toEqual([0.25, 0.1]);
  expect(onField({ x: 500, y: 500 }, field)).toEqual([1, fieldShape]);
  expect(onField({ x: 0, y: 0 }, field)).toEqual([0, 0]);
});

test("a stroke begins, goes on, and leaves out what is hardly apart; the next begins anew", () => {
  const one = drawnOn(drawnOn(begun([], [0.1, 0.1]), [0.1001, 0.1]), [0.2, 0.15]);
  expect(one).toEqual([
    [
      [0.1, 0.1],
      [0.2, 0.15],
    ],
  ]);
  expect(begun(one, [0.5, 0.2])).toHaveLength(2);
  expect(drawnOn([], [0.1, 0.1])).toEqual([]);
  expect(pathOf(one)).toBe("M100 100L200 150");
  expect(pathOf([[[0.1, 0.1]]])).toBe("M100 100L104 100");
});

test("a hand that does not stop makes no more than a job file takes", () => {
  let strokes: Strokes = begun([], [0, 0]);
  for (let i = 1; i <= 6_000; i++) strokes = drawnOn(strokes, [(i % 100) / 100, (i % 30) / 100]);
  expect(strokes[0]!.length).toBe(5_000);
  for (let i = 0; i < 600; i++) strokes = begun(strokes, [0, 0]);
  expect(strokes.length).toBe(500);
});
