import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "#engine";
import { shortestTree } from "./shortest-tree.ts";

const points = fc.array(
  fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 50 })).map(([x, y]): Point => [x, y]),
  { minLength: 1, maxLength: 25 },
);
const long = (lines: readonly (readonly Point[])[]): number =>
  lines.reduce((sum, [a, b]) => sum + Math.hypot(a![0] - b![0], a![1] - b![1]), 0);

test("Every point is joined, by one line fewer than there are points", () => {
  fc.assert(
    fc.property(points, (all) => {
      const lines = shortestTree(all);
      expect(lines).toHaveLength(all.length - 1);
      const reached = new Set([String(all[0])]);
      for (const [from, to] of lines) {
        expect(reached.has(String(from))).toBe(true);
        reached.add(String(to));
      }
      expect(all.every((point) => reached.has(String(point)))).toBe(true);
    }),
    { seed: 41 },
  );
});

test("No chain through all points in the order given is shorter, and the order does not matter", () => {
  fc.assert(
    fc.property(points, (all) => {
      const chain = all.slice(1).map((point, i): readonly Point[] => [all[i]!, point]);
      expect(long(shortestTree(all))).toBeLessThanOrEqual(long(chain) + 1e-9);
      expect(long(shortestTree([...all].reverse()))).toBeCloseTo(long(shortestTree(all)), 9);
    }),
    { seed: 42 },
  );
});
