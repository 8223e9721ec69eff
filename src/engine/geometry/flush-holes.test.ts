import { expect, test } from "vitest";
import { areaOf, difference, type Outline, regionOf, union } from "./index.ts";

/** Angles that do not bring corners onto the grid alike. [rad] */
const turns = Array.from({ length: 60 }, (_, i) => i * 0.1);

const turned = (outline: Outline, angle: number): Outline =>
  outline.map(([x, y]) => [
    x * Math.cos(angle) - y * Math.sin(angle),
    x * Math.sin(angle) + y * Math.cos(angle),
  ]);

const box = (x: number, y: number, width: number, height: number): Outline => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

test.each(turns)("what stands flush with a wall is taken off the floor once, turned by %f", (angle) => {
  const floor = regionOf(turned(box(14.32, 0, 4.68, 5.88), angle));
  const blocks = [box(14.32, 3.2, 1.2, 0.05), box(18.45, 2, 0.55, 2.6), box(16, 0, 0.6, 1.5)];
  const blocked = union(blocks.map((block) => regionOf(turned(block, angle))));
  const blockArea = 1.2 * 0.05 + 0.55 * 2.6 + 0.6 * 1.5;
  // Corners lie on a grid of 10 µm: 5 µm along some 35 m of edge.
  expect(areaOf(difference(floor, blocked))).toBeCloseTo(4.68 * 5.88 - blockArea, 3);
});
