import fc from "fast-check";
import { expect, test } from "vitest";
import { type Line, linesIn, withoutPartner } from "../../../test/exchange/same-lines.ts";
import { entity, type Group, insert, line, type WrittenDrawing } from "../../../test/exchange/written-dxf.ts";
import { read } from "./read-drawn.fixture.ts";

type Point = readonly [number, number];

/** Turned, enlarged and moved, in this order. */
interface Move {
  readonly turn: number;
  readonly scale: number;
  readonly by: Point;
}

const stay: Move = { turn: 0, scale: 1, by: [0, 0] };

const moved = ({ turn, scale, by }: Move, [x, y]: Point): Point => [
  scale * (Math.cos(turn) * x - Math.sin(turn) * y) + by[0],
  scale * (Math.sin(turn) * x + Math.cos(turn) * y) + by[1],
];

/** A drawing whose every coordinate, length and angle was moved before it was written. */
function movedDrawing(shape: Shape, move: Move): WrittenDrawing {
  const at = (point: Point): Point => moved(move, point);
  const degrees = (move.turn * 180) / Math.PI;
  const place = (x: number, y: number): Group[] => {
    const [px, py] = at([x, y]);
    return [
      [10, px],
      [20, py],
    ];
  };
  const corners = shape.corners.flatMap(([x, y], i): Group[] => [
    ...place(x, y),
    [42, shape.bulges[i % shape.bulges.length]!],
  ]);
  const [mx, my] = [shape.axis[0], shape.axis[1]].map((v) => v * move.scale) as [number, number];
  const axis: Point = [
    Math.cos(move.turn) * mx - Math.sin(move.turn) * my,
    Math.sin(move.turn) * mx + Math.cos(move.turn) * my,
  ];
  const [a, b] = [at(shape.corners[0]!), at(shape.corners[1]!)];
  return {
    // The block is the same in both: only where it is put differs.
    blocks: [
      {
        name: "Part",
        base: [1, 2],
        entities: [
          ...line(1, 2, 3, 2),
          ...entity(
            "LWPOLYLINE",
            "0",
            [90, 2],
            [70, 0],
            [10, 1],
            [20, 2],
            [42, shape.bulges[0]!],
            [10, 1],
            [20, 4],
          ),
          ...entity("TEXT", "0", [10, 1], [20, 2], [40, 0.25], [1, "Room"]),
        ],
      },
    ],
    entities: [
      ...line(a[0], a[1], b[0], b[1]),
      ...entity("LWPOLYLINE", "0", [90, shape.corners.length], [70, 1], ...corners),
      ...entity(
        "ARC",
        "0",
        ...place(...shape.corners[2]!),
        [40, 0.9 * move.scale],
        [50, shape.angle + degrees],
        [51, shape.angle + 90 + degrees],
      ),
      ...entity(
        "ELLIPSE",
        "0",
        ...place(...shape.corners[1]!),
        [11, axis[0]],
        [21, axis[1]],
        [40, 0.5],
        [41, 0],
        [42, 4],
      ),
      ...entity(
        "SPLINE",
        "0",
        [70, 0],
        [71, 2],
        ...([0, 0, 0, 1, 1, 1].map((knot) => [40, knot]) as Group[]),
        ...shape.corners.slice(0, 3).flatMap(([x, y]) => place(x, y)),
      ),
      ...insert(
        "Part",
        ...at(shape.corners[0]!),
        [41, 2 * move.scale],
        [42, -move.scale],
        [50, shape.angle + degrees],
      ),
    ],
  };
}

interface Shape {
  readonly corners: readonly Point[];
  readonly bulges: readonly number[];
  readonly axis: Point;
  readonly angle: number;
}

const tenths = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((value) => value / 10);
const point = fc.tuple(tenths(-20, 20), tenths(-20, 20));
const shapes: fc.Arbitrary<Shape> = fc.record({
  corners: fc.uniqueArray(point, { minLength: 4, maxLength: 8, selector: (p) => p.join() }),
  bulges: fc.array(fc.constantFrom(0, 0, 0.3, -0.5, 1, 0.1), { minLength: 1, maxLength: 4 }),
  axis: fc.tuple(tenths(0.5, 3), tenths(-3, 3)),
  angle: tenths(0, 360),
});
/** As far out as national grids put a plan that is drawn in metres. */
const moves: fc.Arbitrary<Move> = fc
  .record({
    turn: tenths(-3, 3),
    scale: fc.constantFrom(0.001, 1, 25.4, 1000),
    away: fc.constantFrom<Point>([0, 0], [12.5, -7], [3_500_000, 5_800_000]),
  })
  .map(({ turn, scale, away: [x, y] }) => ({ turn, scale, by: [x * scale, y * scale] }));

/** Doubles near 5 800 000 resolve 1e-9; sums and products of some tens of them lose two digits more. [share of a metre] */
const lostDigits = 2e-7;

test("a drawing that is turned, enlarged and moved gives the same lines, arcs and texts, turned, enlarged and moved", () => {
  fc.assert(
    fc.property(shapes, moves, (shape, move) => {
      const still = read(movedDrawing(shape, stay)).linework;
      const gone = read(movedDrawing(shape, move)).linework;
      const expected = linesIn(still).map(
        ([x1, y1, x2, y2]): Line => [...moved(move, [x1, y1]), ...moved(move, [x2, y2])],
      );
      const off = lostDigits * move.scale;
      const found = linesIn(gone);
      // Where a curve turns back on itself a line may have a length of a few lost digits, or none.
      const seen = ([x1, y1, x2, y2]: Line): boolean => Math.hypot(x2 - x1, y2 - y1) > 2 * off;
      expect(withoutPartner(expected.filter(seen), found, off)).toEqual([]);
      expect(withoutPartner(found.filter(seen), expected, off)).toEqual([]);
      expect(gone.arcs.length).toBe(still.arcs.length);
      still.arcs.forEach((arc, i) => {
        const other = gone.arcs[i]!;
        expect(other.radius / move.scale).toBeCloseTo(arc.radius, 5);
        expect(other.to - other.from).toBeCloseTo(arc.to - arc.from, 5);
        expect(Math.cos(other.from - arc.from - move.turn)).toBeCloseTo(1, 5);
      });
      still.texts.forEach((text, i) => {
        const other = gone.texts[i]!;
        const [x, y] = moved(move, text.at);
        expect(Math.hypot(other.at[0] - x, other.at[1] - y)).toBeLessThan(off);
        expect(other.height / move.scale).toBeCloseTo(text.height, 9);
        expect(Math.cos(other.turn - text.turn - move.turn)).toBeCloseTo(1, 9);
      });
    }),
    { seed: 20_260_301, numRuns: 300 },
  );
});

test("a block put in by itself gives the lines that its entities give where they stand", () => {
  fc.assert(
    fc.property(shapes, (shape) => {
      const direct = movedDrawing(shape, stay);
      const whole = read({
        blocks: [...direct.blocks!, { name: "Whole", entities: direct.entities }],
        entities: insert("Whole", 0, 0),
      }).linework;
      expect([...whole.lines]).toEqual([...read(direct).linework.lines]);
    }),
    { seed: 20_260_302, numRuns: 100 },
  );
});
