import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Point } from "../../geometry/index.ts";
import { shortestChain } from "./chain.ts";
import { routeLengths } from "./distances.ts";
import { cableRoute } from "./route.ts";
import { lengthBound, shortestTree } from "./tree.ts";

const place = fc.tuple(
  fc.integer({ min: 0, max: 40 }),
  fc.integer({ min: 0, max: 40 }),
) as fc.Arbitrary<Point>;
const places = (most: number) => fc.array(place, { minLength: 2, maxLength: most });
const style = fc.constantFrom("free" as const, "orthogonal" as const);

/** Every order tried: the witness for small groups. */
function everyOrder(lengths: readonly (readonly number[])[]): number {
  const walk = (here: number, open: readonly number[]): number =>
    open.length === 0
      ? 0
      : Math.min(
          ...open.map(
            (next) =>
              lengths[here]![next]! +
              walk(
                next,
                open.filter((one) => one !== next),
              ),
          ),
        );
  return walk(0, lengths.map((_, i) => i).slice(1));
}

describe("routes", () => {
  test("a chain is what trying every order gives", () => {
    fc.assert(
      fc.property(places(7), style, (points, by) => {
        const lengths = routeLengths(points, by);
        const chain = shortestChain(lengths);
        expect(chain.length).toBeCloseTo(everyOrder(lengths), 9);
        expect([...chain.order].sort((a, b) => a - b)).toEqual(points.map((_, i) => i));
        expect(chain.order[0]).toBe(0);
      }),
      { seed: 41, numRuns: 150 },
    );
  });
  test("a long chain visits every point once and is not called exact", () => {
    const points = Array.from({ length: 30 }, (_, i): Point => [(i * 7) % 30, (i * 11) % 13]);
    const chain = shortestChain(routeLengths(points, "free"));
    expect(new Set(chain.order).size).toBe(30);
    expect(chain.exact).toBe(false);
    expect(chain.length).toBeGreaterThanOrEqual(shortestTree(routeLengths(points, "free")).length - 1e-9);
  });
  test("bound ≤ shortest tree ≤ shortest chain, in both styles", () => {
    fc.assert(
      fc.property(places(8), style, (points, by) => {
        const lengths = routeLengths(points, by);
        const tree = shortestTree(lengths).length;
        expect(lengthBound(points, by).length).toBeLessThanOrEqual(tree + 1e-9);
        expect(tree).toBeLessThanOrEqual(shortestChain(lengths).length + 1e-9);
      }),
      { seed: 42, numRuns: 100 },
    );
  });
  test("orthogonal trees with free branch points: square 3 m, cross 4 m against 6 m without the middle", () => {
    expect(
      lengthBound(
        [
          [0, 0],
          [1, 0],
          [0, 1],
          [1, 1],
        ],
        "orthogonal",
      ),
    ).toEqual({ length: 3, kind: "exact" });
    const cross: Point[] = [
      [1, 0],
      [1, 2],
      [0, 1],
      [2, 1],
    ];
    expect(lengthBound(cross, "orthogonal").length).toBe(4);
    expect(shortestTree(routeLengths(cross, "orthogonal")).length).toBe(6);
  });
  test("three points, orthogonal: half the way round their bounding rectangle", () => {
    fc.assert(
      fc.property(place, place, place, (a, b, c) => {
        const span = (i: 0 | 1) => Math.max(a[i], b[i], c[i]) - Math.min(a[i], b[i], c[i]);
        expect(lengthBound([a, b, c], "orthogonal").length).toBeCloseTo(span(0) + span(1), 9);
      }),
      { seed: 43, numRuns: 200 },
    );
  });
  test("a row is looped without a box; a star branches at its middle", () => {
    const inRow = cableRoute(
      [
        { id: "board", at: [0, 0] },
        { id: "b", at: [6, 0] },
        { id: "a", at: [3, 0] },
      ],
      { style: "free", wiring: "loop" },
    );
    expect(inRow.cables).toEqual([
      { from: "board", to: "a", length: 3 },
      { from: "a", to: "b", length: 3 },
    ]);
    expect(inRow).toMatchObject({ planLength: 6, branches: [], exact: true });
    expect(inRow.boughtLength).toBeCloseTo((6 + 4 * 0.3) * 1.1, 9);
    const star = cableRoute(
      [
        { id: "board", at: [0, 1] },
        { id: "m", at: [1, 1] },
        { id: "n", at: [1, 2] },
        { id: "s", at: [1, 0] },
      ],
      { style: "free", wiring: "branch" },
    );
    expect(star).toMatchObject({ planLength: 3, branches: ["m"] });
  });
});
