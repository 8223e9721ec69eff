import { expect, test } from "vitest";
import { barLength, fitted, panned, toPixel, toPoint, type View, zoomed } from "./view.ts";

const view: View = { scale: 40, x: 3, y: -2, width: 800, height: 600 };

test("a pixel and its plan point lead to each other", () => {
  const pixel = { px: 123, py: 456 };
  const back = toPixel(view, toPoint(view, pixel));
  expect(back.px).toBeCloseTo(123, 9);
  expect(back.py).toBeCloseTo(456, 9);
});

test("the plan point under the pointer stays there while zooming", () => {
  const at = { px: 700, py: 50 };
  const before = toPoint(view, at);
  const after = toPoint(zoomed(view, at, 2.5), at);
  expect(after[0]).toBeCloseTo(before[0], 9);
  expect(after[1]).toBeCloseTo(before[1], 9);
});

test("panning by pixels moves the plan by those pixels", () => {
  const moved = toPixel(panned(view, 30, -20), [0, 0]);
  expect(moved.px - toPixel(view, [0, 0]).px).toBeCloseTo(30, 9);
  expect(moved.py - toPixel(view, [0, 0]).py).toBeCloseTo(-20, 9);
});

test("a hall of 200 m fits on a phone between its walls", () => {
  const shown = fitted(
    { scale: 1, x: 0, y: 0, width: 390, height: 844 },
    { left: 0, right: 200, bottom: 0, top: 100 },
    { left: 0, right: 0, top: 52, bottom: 201 },
  );
  expect(toPixel(shown, [0, 0]).px).toBeGreaterThanOrEqual(-1e-9);
  expect(toPixel(shown, [200, 0]).px).toBeLessThanOrEqual(390 + 1e-9);
});

test("a fitted view shows the whole bounds between the insets", () => {
  const insets = { left: 20, right: 300, top: 60, bottom: 50 };
  const shown = fitted(view, { left: -10, right: 30, bottom: 5, top: 9 }, insets);
  const low = toPixel(shown, [-10, 5]);
  const high = toPixel(shown, [30, 9]);
  expect(low.px).toBeGreaterThanOrEqual(20 - 1e-6);
  expect(high.px).toBeLessThanOrEqual(500 + 1e-6);
  expect(high.py).toBeGreaterThanOrEqual(60 - 1e-6);
  expect(low.py).toBeLessThanOrEqual(550 + 1e-6);
});

test("a scale bar is the longest of 1, 2, 5 and their tenfolds that fits", () => {
  expect(barLength({ ...view, scale: 40 }, 120)).toBe(2);
  expect(barLength({ ...view, scale: 4 }, 120)).toBe(20);
  expect(barLength({ ...view, scale: 22 }, 120)).toBe(5);
  expect(barLength({ ...view, scale: 200 }, 120)).toBeCloseTo(0.5, 9);
});
