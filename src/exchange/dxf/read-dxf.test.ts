import { describe, expect, test } from "vitest";
import { linesIn } from "../../../test/exchange/same-lines.ts";
import { entity, type Group, insert, line } from "../../../test/exchange/written-dxf.ts";
import type { Linework } from "../linework/linework.ts";
import { drawn, expectLines, read, square, squareLines } from "./read-drawn.fixture.ts";
import { gapShare } from "./stroke.ts";

/** Largest distance of the points of all lines, and of their middles, from a circle. */
const offCircle = (linework: Linework, [cx, cy, radius]: readonly [number, number, number]): number =>
  Math.max(
    ...linesIn(linework).flatMap(([x1, y1, x2, y2]) =>
      [
        [x1, y1],
        [(x1 + x2) / 2, (y1 + y2) / 2],
        [x2, y2],
      ].map(([x, y]) => Math.abs(Math.hypot(x! - cx, y! - cy) - radius)),
    ),
  );

describe("lines and curves", () => {
  test("a line comes out as it was written, to the last digit, however far from the origin", () => {
    const linework = drawn(line(3512345.678901234, 5812345.123456789, 3512349.000000001, 5812345.5));
    expect([...linework.lines]).toEqual([3512345.678901234, 5812345.123456789, 3512349.000000001, 5812345.5]);
  });

  test("a light polyline is its corners, closed where it says so", () => {
    expectLines(drawn(entity("LWPOLYLINE", "0", [90, 4], [70, 1], ...square)), squareLines);
    expectLines(drawn(entity("LWPOLYLINE", "0", [90, 4], [70, 0], ...square)), squareLines.slice(0, 3));
  });

  test("an old polyline is its vertices, and the frame of a smoothed one is left out", () => {
    const vertex = (x: number, y: number, flags = 0) =>
      entity("VERTEX", "0", [10, x], [20, y], [30, 0], [70, flags]);
    expectLines(
      drawn(
        entity("POLYLINE", "0", [66, 1], [70, 4], [10, 0], [20, 0], [30, 0]),
        vertex(0, 0, 8),
        vertex(5, 99, 16),
        vertex(4, 0, 8),
        vertex(4, 3, 8),
        entity("SEQEND", "0"),
        line(9, 9, 10, 9),
      ),
      [
        [0, 0, 4, 0],
        [4, 0, 4, 3],
        [9, 9, 10, 9],
      ],
    );
  });

  test("a bulge of 1 is half a circle to the right of a line upwards, within the gap, and is listed as an arc", () => {
    const linework = drawn(
      entity("LWPOLYLINE", "0", [90, 2], [70, 0], [10, 2], [20, -2], [42, 1], [10, 2], [20, 2]),
    );
    expect(offCircle(linework, [2, 0, 2])).toBeLessThan(gapShare * 4);
    expect(Math.max(...linework.lines.filter((_, i) => i % 2 === 0))).toBeCloseTo(4, 2);
    expect(linework.arcs).toHaveLength(1);
    expect(linework.arcs[0]!.from).toBeCloseTo(-Math.PI / 2, 12);
    expect(linework.arcs[0]!.to).toBeCloseTo(Math.PI / 2, 12);
    expect(new Set(linework.arcOf)).toEqual(new Set([1]));
  });

  test("an arc runs counter-clockwise from its first angle to its second, over 0°", () => {
    const linework = drawn(entity("ARC", "0", [10, 1], [20, 1], [40, 0.9], [50, 315], [51, 45]));
    expect(offCircle(linework, [1, 1, 0.9])).toBeLessThan(gapShare * 0.9 * 2);
    expect(Math.min(...linesIn(linework).map(([x]) => x))).toBeGreaterThan(1.6);
    expect(linework.arcs[0]!.to - linework.arcs[0]!.from).toBeCloseTo(Math.PI / 2, 12);
  });

  test("a circle closes to the last digit and is one arc of a full turn", () => {
    const linework = drawn(entity("CIRCLE", "0", [10, 7], [20, -3], [40, 0.3]));
    const lines = linesIn(linework);
    expect([lines.at(-1)![2], lines.at(-1)![3]]).toEqual([lines[0]![0], lines[0]![1]]);
    expect(offCircle(linework, [7, -3, 0.3])).toBeLessThan(gapShare * 0.6);
    expect(linework.arcs[0]!.to - linework.arcs[0]!.from).toBe(2 * Math.PI);
  });

  test("half an ellipse keeps to its axes", () => {
    const linework = drawn(
      entity("ELLIPSE", "0", [10, 0], [20, 0], [11, 0], [21, 5], [31, 0], [40, 0.4], [41, 0], [42, Math.PI]),
    );
    // x²/2² + y²/5² = 1, on the side of negative x.
    for (const [x, y] of linesIn(linework)) {
      expect((x / 2) ** 2 + (y / 5) ** 2).toBeCloseTo(1, 9);
      expect(x).toBeLessThanOrEqual(1e-9);
    }
    expect(linework.arcs).toHaveLength(0);
  });

  test("an ellipse with equal axes is listed as the circle that it is", () => {
    const linework = drawn(
      entity("ELLIPSE", "0", [10, 1], [20, 1], [11, 0.9], [21, 0], [40, 1], [41, 0], [42, Math.PI / 2]),
    );
    expect(linework.arcs).toHaveLength(1);
    expect(linework.arcs[0]!.radius).toBeCloseTo(0.9, 12);
  });

  test("a rational spline of degree 2 is the quarter circle that its weights make it", () => {
    const linework = drawn(
      entity(
        "SPLINE",
        "0",
        [70, 4],
        [71, 2],
        [72, 6],
        [73, 3],
        ...([0, 0, 0, 1, 1, 1].map((knot) => [40, knot]) as Group[]),
        ...([1, Math.SQRT1_2, 1].map((weight) => [41, weight]) as Group[]),
        ...([
          [10, 2],
          [20, 0],
          [10, 2],
          [20, 2],
          [10, 0],
          [20, 2],
        ] as Group[]),
      ),
    );
    expect(offCircle(linework, [0, 0, 2])).toBeLessThan(2 * gapShare * Math.hypot(2, 2));
    expect(linesIn(linework).length).toBeGreaterThan(4);
  });

  test("a cubic spline of two spans begins and ends at its end points and passes where the basis functions say", () => {
    const knots = [0, 0, 0, 0, 1, 2, 2, 2, 2];
    const linework = drawn(
      entity(
        "SPLINE",
        "0",
        [70, 0],
        [71, 3],
        ...(knots.map((knot) => [40, knot]) as Group[]),
        ...([0, 0, 1, 4, 4, 4, 7, 4, 8, 0].map((v, i) => [i % 2 === 0 ? 10 : 20, v]) as Group[]),
      ),
    );
    const lines = linesIn(linework);
    expect(lines[0]!.slice(0, 2)).toEqual([0, 0]);
    expect(lines.at(-1)!.slice(2)).toEqual([8, 0]);
    // At the knot 1 the four basis functions are 0, ¼, ½, ¼: ¼·(1,4) + ½·(4,4) + ¼·(7,4) = (4,4).
    expect(lines.some(([, , x, y]) => Math.hypot(x - 4, y - 4) < 1e-9)).toBe(true);
  });

  test("a spline of clicked points passes through each of them", () => {
    const linework = drawn(
      entity("SPLINE", "0", [70, 8], [71, 3], [74, 3], [11, 0], [21, 0], [11, 2], [21, 1], [11, 4], [21, 0]),
    );
    const ends = linesIn(linework).map(([, , x, y]) => [x, y]);
    expect(ends).toContainEqual([2, 1]);
    expect(ends.at(-1)).toEqual([4, 0]);
  });

  test("a filled shape is its outline, its corners written crosswise", () => {
    const solid = entity(
      "SOLID",
      "0",
      [10, 0],
      [20, 0],
      [11, 4],
      [21, 0],
      [12, 0],
      [22, 3],
      [13, 4],
      [23, 3],
    );
    expectLines(drawn(solid), squareLines);
  });

  test("a face shows the edges that are not hidden", () => {
    const corners: readonly Group[] = square.map(([code, value], i) => [code + Math.floor(i / 2), value]);
    const face = entity("3DFACE", "0", ...corners, [70, 2]);
    expectLines(drawn(face), [squareLines[0]!, squareLines[2]!, squareLines[3]!]);
  });

  test("a bundle of two parallel lines, as walls are drawn with, gives both", () => {
    const corner = (x: number): Group[] => [
      [11, x],
      [21, 0],
      [12, 1],
      [22, 0],
      [13, 0],
      [23, 1],
      [74, 2],
      [41, 0.1],
      [41, 0],
      [75, 0],
      [74, 2],
      [41, -0.1],
      [41, 0],
      [75, 0],
    ];
    expectLines(drawn(entity("MLINE", "0", [70, 1], [71, 1], [10, 0], [20, 0], ...corner(0), ...corner(5))), [
      [0, 0.1, 5, 0.1],
      [0, -0.1, 5, -0.1],
    ]);
  });
});

describe("hatches", () => {
  const hatch = (...boundary: readonly Group[]) =>
    entity("HATCH", "Walls", [10, 0], [20, 0], [30, 0], [2, "SOLID"], [70, 1], [71, 0], ...boundary, [75, 0]);

  test("their outlines stand on a layer of their own, apart from the lines of the walls", () => {
    const linework = drawn(
      hatch([91, 1], [92, 2], [72, 1], [73, 1], [93, 4], ...square, [97, 0]),
      line(9, 9, 10, 9, "Walls"),
    );
    expect(linework.layers.map(({ name, lines }) => [name, lines])).toEqual([
      ["Walls (hatch)", 4],
      ["Walls", 1],
    ]);
    expect(linesIn(linework, /hatch/)).toEqual(squareLines);
  });

  test("edges may be lines, arcs either way round, ellipses and splines", () => {
    const { arcs, lines } = drawn(
      hatch(
        [91, 1],
        [92, 1],
        [93, 3],
        [72, 1],
        [10, 0],
        [20, 0],
        [11, 4],
        [21, 0],
        // Clockwise from (4, 0) about (4, 1): its angles are counted clockwise, too.
        [72, 2],
        [10, 4],
        [20, 1],
        [40, 1],
        [50, 90],
        [51, 180],
        [73, 0],
        [72, 4],
        [94, 1],
        [73, 0],
        [74, 0],
        [95, 4],
        [96, 2],
        [40, 0],
        [40, 0],
        [40, 1],
        [40, 1],
        [10, 3],
        [20, 1],
        [10, 0],
        [20, 0],
        [97, 0],
      ),
    );
    expect(arcs).toHaveLength(1);
    // From straight below the centre clockwise to its left.
    expect(Math.cos(arcs[0]!.from)).toBeCloseTo(-1, 9);
    expect(arcs[0]!.to - arcs[0]!.from).toBeCloseTo(Math.PI / 2, 9);
    expect(lines[0]).toBe(0);
    const last = lines.subarray(-4);
    expect([...last]).toEqual([expect.closeTo(3, 9), expect.closeTo(1, 9), 0, 0]);
  });
});

test("against the plan's sight the x of arcs, polylines and blocks is mirrored, that of lines is not", () => {
  const down: readonly Group[] = [
    [210, 0],
    [220, 0],
    [230, -1],
  ];
  const { linework } = read({
    blocks: [{ name: "Mark", entities: line(0, 0, 1, 0) }],
    entities: [
      ...entity("LWPOLYLINE", "0", [90, 2], [70, 0], [10, 1], [20, 0], [10, 2], [20, 1], ...down),
      ...entity("LINE", "0", [10, 1], [20, 5], [11, 2], [21, 6], ...down),
      ...insert("Mark", 7, 7, ...down),
    ],
  });
  expectLines(linework, [
    [-1, 0, -2, 1],
    [1, 5, 2, 6],
    [-7, 7, -8, 7],
  ]);
  const arc = drawn(entity("ARC", "0", [10, 1], [20, 0], [40, 1], [50, 0], [51, 90], ...down)).arcs[0]!;
  // Mirrored, the quarter from 0° to 90° about (1, 0) is the one from 90° to 180° about (−1, 0).
  expect([arc.centre[0], arc.from, arc.to]).toEqual([
    -1,
    expect.closeTo(Math.PI / 2, 9),
    expect.closeTo(Math.PI, 9),
  ]);
});
