import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "#engine";
import { distance, nearestOn } from "../plan/shapes.ts";
import { nearestOnUnderlays } from "./underlay-near.ts";

const underlay = (lines: readonly number[]) => [{ storey: "ground", lines: Float64Array.from(lines) }];

test("an end within reach goes before a nearer place on a line", () => {
  const nearest = nearestOnUnderlays(underlay([0, 0, 4, 0]), "ground");
  expect(nearest([0.2, 0.05], 0.3)).toEqual({ at: [0, 0], kind: "end" });
  expect(nearest([2, 0.05], 0.3)).toEqual({ at: [2, 0], kind: "line" });
  expect(nearest([2, 0.5], 0.3)).toBeUndefined();
});

test("drawings of other storeys are not snapped to", () => {
  expect(nearestOnUnderlays(underlay([0, 0, 4, 0]), "first")([0, 0], 1)).toBeUndefined();
});

const metres = fc.double({ min: -10, max: 10, noNaN: true });
test("what is found is as near as a plain search finds it", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(metres, metres, metres, metres), { maxLength: 30 }),
      fc.tuple(metres, metres),
      fc.double({ min: 0.05, max: 3, noNaN: true }),
      (lines, at, within) => {
        const found = nearestOnUnderlays(underlay(lines.flat()), "ground")(at, within);
        const ends = lines.flatMap(([a, b, c, d]): Point[] => [
          [a, b],
          [c, d],
        ]);
        const end = Math.min(Infinity, ...ends.map((one) => distance(one, at)));
        const on = Math.min(
          Infinity,
          ...lines.map(([a, b, c, d]) => distance(nearestOn([a, b], [c, d], at), at)),
        );
        if (end <= within) {
          expect(found?.kind).toBe("end");
          expect(distance(found?.at ?? [Infinity, 0], at)).toBeCloseTo(end, 9);
        } else if (on <= within - 1e-9) {
          expect(found?.kind).toBe("line");
          expect(distance(found?.at ?? [Infinity, 0], at)).toBeCloseTo(on, 9);
        } else if (on > within + 1e-9) expect(found).toBeUndefined();
      },
    ),
    { seed: 11, numRuns: 500 },
  );
});
