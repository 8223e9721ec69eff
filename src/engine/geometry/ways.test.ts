import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  contains,
  difference,
  inset,
  type Outline,
  outset,
  type Point,
  prepareWays,
  type Region,
  regionOf,
  side,
  union,
  waysFrom,
  wayTo,
} from "./index.ts";

const box = (x: number, y: number, width: number, depth: number): Outline => [
  [x, y],
  [x + width, y],
  [x + width, y + depth],
  [x, y + depth],
];
const wayIn = (region: Region, from: Point, to: Point) => wayTo(waysFrom(prepareWays(region), from), to);

test("side is positive to the left and exact on the line", () => {
  expect(side([0, 0], [1, 0], [0, 1])).toBe(1);
  expect(side([0, 0], [1, 0], [0.3, -1])).toBe(-1);
  expect(side([0.1, 0.1], [0.3, 0.3], [0.2, 0.2])).toBe(0);
});

describe("shortest ways", () => {
  test("in an empty room the way is the straight line", () => {
    const way = wayIn(regionOf(box(0, 0, 4, 3)), [0.5, 0.5], [3.5, 2.5]);
    expect(way?.path).toEqual([
      [0.5, 0.5],
      [3.5, 2.5],
    ]);
    expect(way?.length).toBeCloseTo(Math.hypot(3, 2), 12);
  });

  test("in an L the way bends once, at the inner corner", () => {
    const l = regionOf([
      [0, 0],
      [5, 0],
      [5, 1],
      [1, 1],
      [1, 5],
      [0, 5],
    ]);
    const way = wayIn(l, [5, 1], [1, 5]);
    // Both goals lie on the walls of the inner corner (1, 1): 4 m along one, 4 m along the other.
    expect(way?.path).toEqual([
      [5, 1],
      [1, 1],
      [1, 5],
    ]);
    expect(way?.length).toBeCloseTo(8, 12);
  });

  test("round a square column the shorter side is taken", () => {
    const region = difference(regionOf(box(0, 0, 10, 10)), regionOf(box(4, 4, 2, 2)));
    // From (0, 5.5) to (10, 5.5): over the top corners (4, 6) and (6, 6).
    const way = wayIn(region, [0, 5.5], [10, 5.5]);
    expect(way?.path).toEqual([
      [0, 5.5],
      [4, 6],
      [6, 6],
      [10, 5.5],
    ]);
    expect(way?.length).toBeCloseTo(2 * Math.hypot(4, 0.5) + 2, 12);
  });

  test("round a disc the way is two tangents and an arc", () => {
    const column = outset(regionOf(box(-1e-3, -1e-3, 2e-3, 2e-3)), 1);
    const way = wayIn(difference(regionOf(box(-5, -5, 10, 10)), column), [-3, 0], [3, 0]);
    // Tangent √(3² − 1²) twice, arc π − 2·acos(1/3) (the column is 1 mm larger than the unit disc).
    expect(way?.length).toBeCloseTo(2 * Math.sqrt(8) + (Math.PI - 2 * Math.acos(1 / 3)), 2);
  });

  test("no way leads into another piece", () => {
    const region = union([regionOf(box(0, 0, 1, 1)), regionOf(box(2, 0, 1, 1))]);
    expect(wayIn(region, [0.5, 0.5], [2.5, 0.5])).toBeUndefined();
  });

  test("a start on the edge, or a grain outside it, is a start", () => {
    const room = regionOf(box(0, 0, 4, 3));
    expect(wayIn(room, [2, -1e-5], [2, 3])?.length).toBeCloseTo(3, 4);
    expect(wayIn(room, [0, 0], [4, 0])?.path).toHaveLength(2);
  });

  test("a goal on an edge is reached by the way to the edge's end and along it, on whichever side of the edge rounding has put it", () => {
    for (let k = 1; k <= 12; k++) {
      const turned = ([x, y]: Point): Point => [
        x * Math.cos(k / 2) - y * Math.sin(k / 2),
        x * Math.sin(k / 2) + y * Math.cos(k / 2),
      ];
      const column = box(4, 4, 2, 3).map(turned);
      const room = difference(regionOf(box(0, 0, 10, 10).map(turned)), regionOf(column));
      const from = waysFrom(prepareWays(room), turned([1, 1]));
      const ring = room[0]?.holes[0] as readonly Point[];
      for (const [i, a] of ring.entries()) {
        const b = ring[(i + 1) % ring.length] as Point;
        for (const t of [0.1, 0.37, 0.5, 0.83]) {
          const goal: Point = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
          for (const end of [a, b]) {
            const round = (wayTo(from, end)?.length ?? 0) + Math.hypot(goal[0] - end[0], goal[1] - end[1]);
            expect(wayTo(from, goal)?.length).toBeLessThanOrEqual(round + 1e-4);
          }
        }
      }
    }
  });

  test("a gap between two columns that touch at a corner is passed, a closed row is not", () => {
    const room = regionOf(box(0, 0, 4, 4));
    const row = difference(room, union([regionOf(box(0, 1, 2, 1)), regionOf(box(2, 1, 2, 1))]));
    expect(wayIn(row, [1, 0.5], [1, 3])).toBeUndefined();
  });
});

/** Rooms with random columns, drawn in by a body; starts and goals inside. */
const scenes = fc.record({
  columns: fc.array(
    fc.tuple(
      fc.integer({ min: 0, max: 80 }),
      fc.integer({ min: 0, max: 80 }),
      fc.integer({ min: 3, max: 20 }),
      fc.integer({ min: 3, max: 20 }),
    ),
    { maxLength: 8 },
  ),
  from: fc.tuple(
    fc.double({ min: 0.3, max: 9.7, noNaN: true }),
    fc.double({ min: 0.3, max: 9.7, noNaN: true }),
  ),
  to: fc.tuple(
    fc.double({ min: 0.3, max: 9.7, noNaN: true }),
    fc.double({ min: 0.3, max: 9.7, noNaN: true }),
  ),
});
const regionWith = (columns: readonly (readonly [number, number, number, number])[]): Region =>
  inset(
    difference(
      regionOf(box(0, 0, 10, 10)),
      union(columns.map(([x, y, w, d]) => regionOf(box(x / 10, y / 10, w / 10, d / 10)))),
    ),
    0.2,
  );

describe("laws of shortest ways (seed 4711)", () => {
  test("a way never leaves the region, is as long as its pieces, and is no shorter than the straight line", () => {
    fc.assert(
      fc.property(scenes, ({ columns, from, to }) => {
        const region = regionWith(columns);
        if (!contains(region, from) || !contains(region, to)) return;
        const way = wayIn(region, from, to);
        if (!way) return;
        const within = outset(region, 1e-4);
        let length = 0;
        for (let i = 0; i + 1 < way.path.length; i++) {
          const [a, b] = [way.path[i] as Point, way.path[i + 1] as Point];
          length += Math.hypot(b[0] - a[0], b[1] - a[1]);
          for (const t of [0.1, 0.3, 0.5, 0.7, 0.9]) {
            const p: Point = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
            expect(contains(within, p)).toBe(true);
          }
        }
        expect(way.length).toBeCloseTo(length, 9);
        expect(way.length).toBeGreaterThanOrEqual(Math.hypot(to[0] - from[0], to[1] - from[1]) - 1e-9);
      }),
      { seed: 4711, numRuns: 40, endOnFailure: true },
    );
  });

  // Samples every 20 mm may let the grid cut a corner by a millimetre or two: that is the tolerance.
  test("a way is as long as its way back, and never longer than a way over a fine grid", () => {
    fc.assert(
      fc.property(scenes, ({ columns, from, to }) => {
        const region = regionWith(columns);
        if (!contains(region, from) || !contains(region, to)) return;
        const way = wayIn(region, from, to);
        const back = wayIn(region, to, from);
        expect(way === undefined).toBe(back === undefined);
        const grid = gridWay(region, from, to);
        if (!way || !back) {
          expect(grid).toBe(Number.POSITIVE_INFINITY);
          return;
        }
        expect(way.length).toBeCloseTo(back.length, 6);
        expect(way.length).toBeLessThanOrEqual(grid + 2e-3);
      }),
      { seed: 4711, numRuns: 15, endOnFailure: true },
    );
  });
});

/** Length of a way over the points of a 0.2 m grid and their eight neighbours: an upper bound by a method that shares no code. */
function gridWay(region: Region, from: Point, to: Point): number {
  const n = 50;
  const at = (i: number): Point => [(i % n) * 0.2 + 0.1, Math.floor(i / n) * 0.2 + 0.1];
  const free = Array.from({ length: n * n }, (_, i) => contains(region, at(i)));
  const link = (a: Point, b: Point): number => {
    const whole = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const steps = Math.ceil(whole / 0.02);
    for (let k = 0; k <= steps; k++) {
      const t = steps === 0 ? 0 : k / steps;
      if (!contains(region, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]))
        return Number.POSITIVE_INFINITY;
    }
    return whole;
  };
  const length = new Float64Array(n * n).fill(Number.POSITIVE_INFINITY);
  const near = (p: Point): number[] =>
    [...free.keys()].filter((i) => free[i] && Math.hypot(at(i)[0] - p[0], at(i)[1] - p[1]) < 0.3);
  for (const i of near(from)) length[i] = link(from, at(i));
  const open = new Set([...free.keys()].filter((i) => free[i] && length[i] !== Number.POSITIVE_INFINITY));
  const settled = new Set<number>();
  while (open.size > 0) {
    let best = -1;
    for (const i of open) if (best < 0 || (length[i] as number) < (length[best] as number)) best = i;
    open.delete(best);
    settled.add(best);
    for (const step of [-n - 1, -n, -n + 1, -1, 1, n - 1, n, n + 1]) {
      const next = best + step;
      if (
        !free[next] ||
        settled.has(next) ||
        Math.hypot(at(next)[0] - at(best)[0], at(next)[1] - at(best)[1]) > 0.3
      )
        continue;
      open.add(next);
      length[next] = Math.min(length[next] as number, (length[best] as number) + link(at(best), at(next)));
    }
  }
  return Math.min(link(from, to), ...near(to).map((i) => (length[i] as number) + link(at(i), to)));
}
