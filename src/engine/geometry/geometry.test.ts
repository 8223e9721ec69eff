import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  areaOf,
  centroidOf,
  contains,
  convexHull,
  difference,
  distanceToRings,
  distanceToSegment,
  inset,
  intersection,
  nearestOnRings,
  nearestOnSegment,
  type Outline,
  outset,
  type Point,
  placeInRegion,
  poleOf,
  type Region,
  regionOf,
  ringsOf,
  selfCrossing,
  signedArea,
  simplified,
  union,
} from "./index.ts";

const box = (x: number, y: number, w = 1, h = 1): Region => [
  {
    outline: [
      [x, y],
      [x + w, y],
      [x + w, y + h],
      [x, y + h],
    ],
    holes: [],
  },
];
const moved = (region: Region, [dx, dy]: Point): Region => {
  const ring = (one: Outline): Outline => one.map(([x, y]) => [x + dx, y + dy]);
  return region.map((piece) => ({ outline: ring(piece.outline), holes: piece.holes.map(ring) }));
};
const polygon = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 800 })), {
    minLength: 3,
    maxLength: 9,
  })
  .map((corners): Outline => corners.map(([x, y]) => [x / 100, y / 100]));

describe("booleans", () => {
  test("two squares side by side are one piece of 2 m²", () => {
    const joined = union([box(0, 0), box(1, 0)]);
    expect(joined).toHaveLength(1);
    expect(areaOf(joined)).toBe(2);
  });
  test("squares half a metre apart share 0.5 m², and one less the other leaves the rest", () => {
    expect(areaOf(intersection(box(0, 0), box(0.5, 0)))).toBeCloseTo(0.5, 12);
    expect(areaOf(difference(box(0, 0), box(0.5, 0)))).toBeCloseTo(0.5, 12);
  });
  test("a hole stays a hole, clockwise in a counter-clockwise ring", () => {
    const [piece] = difference(box(0, 0, 4, 4), box(1, 1));
    expect(signedArea(piece?.outline ?? [])).toBeCloseTo(16, 12);
    expect(piece?.holes.map(signedArea)).toEqual([expect.closeTo(-1, 12)]);
  });
  test("rings count whichever way they run", () => {
    const [square] = box(0, 0);
    const clockwise = [{ outline: square?.outline.toReversed() ?? [], holes: [] }];
    expect(areaOf(union([clockwise]))).toBe(1);
    expect(areaOf(regionOf(clockwise[0]?.outline ?? []))).toBe(1);
  });
  test("what is in both and what is in one only make up the whole; 10 km away the same", () => {
    fc.assert(
      fc.property(polygon, polygon, (p, q) => {
        const [a, b] = [regionOf(p), regionOf(q)];
        const parts = areaOf(intersection(a, b)) + areaOf(difference(a, b));
        expect(Math.abs(parts - areaOf(a))).toBeLessThan(1e-3);
        expect(areaOf(a) + areaOf(b) - areaOf(intersection(a, b))).toBeCloseTo(areaOf(union([a, b])), 3);
        const far: Point = [10000, -7000];
        const there = areaOf(intersection(moved(a, far), moved(b, far)));
        expect(Math.abs(there - areaOf(intersection(a, b)))).toBeLessThan(1e-4);
      }),
      { seed: 11, numRuns: 150 },
    );
  });
});

describe("offsets", () => {
  test("a square grown by 1 m has round corners", () => {
    expect(areaOf(outset(box(0, 0), 1))).toBeCloseTo(5 + Math.PI, 2);
  });
  test("drawn in by 0.25 m a quarter is left; by 0.5 m nothing", () => {
    expect(areaOf(inset(box(0, 0), 0.25))).toBeCloseTo(0.25, 9);
    expect(inset(box(0, 0), 0.5)).toEqual([]);
  });
  test("what is drawn in lies that far from the edge, to the grain", () => {
    fc.assert(
      fc.property(polygon, (p) => {
        const region = regionOf(p);
        for (const ring of ringsOf(inset(region, 0.3))) {
          for (const corner of ring)
            expect(distanceToRings(corner, ringsOf(region))).toBeGreaterThan(0.3 - 3e-4);
        }
      }),
      { seed: 12, numRuns: 100 },
    );
  });
  test("a straight edge loses its middle corner", () => {
    const five: Outline = [
      [0, 0],
      [0.5, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ];
    expect(simplified([{ outline: five, holes: [] }], 1e-3)[0]?.outline).toHaveLength(4);
  });
});

describe("points", () => {
  test("inside, on the edge, in a hole", () => {
    const ring = difference(box(0, 0, 4, 4), box(1, 1));
    expect(placeInRegion(ring, [0.5, 0.5])).toBe("inside");
    expect(placeInRegion(ring, [1.5, 1.5])).toBe("outside");
    expect(placeInRegion(ring, [2, 1.5])).toBe("edge");
    expect(placeInRegion(ring, [4, 4])).toBe("edge");
    expect(placeInRegion(ring, [5, 0])).toBe("outside");
  });
  test("a corner passed at its own height is counted once", () => {
    const diamond: Region = [
      {
        outline: [
          [0, -1],
          [1, 0],
          [0, 1],
          [-1, 0],
        ],
        holes: [],
      },
    ];
    expect(contains(diamond, [-0.5, 0])).toBe(true);
    expect(contains(diamond, [-1.5, 0])).toBe(false);
    expect(contains(diamond, [0, 0.999])).toBe(true);
  });
  test("a third of the way along an edge is on it, though no double hits it: only exact signs decide", () => {
    const triangle: Region = [
      {
        outline: [
          [0, 0],
          [3, 1],
          [0, 1],
        ],
        holes: [],
      },
    ];
    expect(placeInRegion(triangle, [1.5, 0.5])).toBe("edge");
    expect(placeInRegion(triangle, [1.5, 0.5 + 2 ** -53])).toBe("inside");
  });
  test("centre of an L of three squares", () => {
    const l = union([box(0, 0), box(1, 0), box(0, 1)]);
    expect(centroidOf(l)?.[0]).toBeCloseTo((0.5 + 1.5 + 0.5) / 3, 12);
    expect(centroidOf(moved(l, [10000, 0]))?.[0]).toBeCloseTo(10000 + (0.5 + 1.5 + 0.5) / 3, 8);
  });
  test("the pole of a rectangle lies on its middle line, that of an L in its elbow", () => {
    const [piece] = box(0, 0, 4, 2);
    expect(poleOf(piece as never).distance).toBeGreaterThan(0.99);
    const l = regionOf([
      [0, 0],
      [4, 0],
      [4, 1],
      [1, 1],
      [1, 4],
      [0, 4],
    ]);
    const pole = poleOf(l[0] as never, 0.001);
    // Touches both outer walls and the inner corner: r = (1 − r)√2, r = 2 − √2.
    expect(pole.distance).toBeCloseTo(2 - Math.SQRT2, 2);
  });
  test("of a sliver 90 km long and a hand wide the pole lies within it, without looking at millions of places", () => {
    for (const turn of [0, 0.3, Math.PI / 2]) {
      const outline = [
        [0, 0],
        [90_000, 0],
        [90_000, 0.1],
        [0, 0.1],
      ].map(
        ([x, y]): Point => [
          x! * Math.cos(turn) - y! * Math.sin(turn),
          x! * Math.sin(turn) + y! * Math.cos(turn),
        ],
      );
      const piece = { outline, holes: [] };
      const { at, distance } = poleOf(piece);
      expect(contains([piece], at)).toBe(true);
      expect(distance).toBeCloseTo(0.05, 6);
    }
  }, 5_000);
});

describe("rings", () => {
  test("the hull of an L has five corners", () => {
    expect(
      convexHull([
        [0, 0],
        [2, 0],
        [2, 1],
        [1, 1],
        [1, 2],
        [0, 2],
      ]),
    ).toHaveLength(5);
  });
  test("the hull holds every point and turns left everywhere", () => {
    fc.assert(
      fc.property(polygon, (points) => {
        const hull = convexHull(points);
        if (hull.length < 3) return;
        expect(signedArea(hull)).toBeGreaterThan(0);
        for (const point of points) expect(contains([{ outline: hull, holes: [] }], point)).toBe(true);
      }),
      { seed: 13, numRuns: 200 },
    );
  });
  test("a bow tie crosses itself in its middle, a doubled-back edge at its corner, a square nowhere", () => {
    expect(
      selfCrossing([
        [0, 0],
        [1, 1],
        [1, 0],
        [0, 1],
      ]),
    ).toEqual([0.5, 0.5]);
    expect(
      selfCrossing([
        [0, 0],
        [2, 0],
        [1, 0],
        [1, 1],
      ]),
    ).toBeDefined();
    expect(
      selfCrossing([
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ]),
    ).toBeUndefined();
  });
  test("a ring that touches itself at a corner is not simple", () => {
    expect(
      selfCrossing([
        [0, 0],
        [2, 0],
        [2, 2],
        [1, 0],
        [0, 2],
      ]),
    ).toBeDefined();
  });
});

describe("the place of an edge nearest to a point", () => {
  const at = fc.tuple(
    fc.double({ min: -9, max: 9, noNaN: true }),
    fc.double({ min: -9, max: 9, noNaN: true }),
  );
  test("is an end beyond the ends, the foot of the perpendicular between, the place itself where both ends are one", () => {
    const segment = [
      [-1, 0],
      [1, 0],
    ] as const;
    expect(nearestOnSegment([0, 1], segment)).toEqual([0, 0]);
    expect(nearestOnSegment([3, 1], segment)).toEqual([1, 0]);
    expect(nearestOnSegment([3, 1], [segment[0], segment[0]])).toEqual([-1, 0]);
    expect(nearestOnRings([3, 1], [])).toBeUndefined();
  });
  test("lies at the distance that is told, and no other place of the segment is nearer", () => {
    fc.assert(
      fc.property(at, at, at, fc.double({ min: 0, max: 1, noNaN: true }), (point, a, b, share) => {
        const [x, y] = nearestOnSegment(point, [a, b]);
        const distance = Math.hypot(x - point[0], y - point[1]);
        expect(distance).toBeCloseTo(distanceToSegment(point, [a, b]), 9);
        const other = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])] as const;
        expect(Math.hypot(other[0] - point[0], other[1] - point[1])).toBeGreaterThanOrEqual(distance - 1e-9);
        const ring = [a, b, point] as const;
        const [u, v] = nearestOnRings([0, 0], [ring]) as Point;
        expect(Math.hypot(u, v)).toBeCloseTo(distanceToRings([0, 0], [ring]), 9);
      }),
      { seed: 611, numRuns: 200 },
    );
  });
});
