import { describe, expect, test } from "vitest";
import type { Point } from "#engine";
import { lineSearch } from "./box-index.ts";
import { box, pencil } from "./drawn-plan.fixture.ts";
import { findRooms } from "./find-rooms.ts";
import { slidingLeaves } from "./sliding-leaves.ts";
import { stairsIn } from "./stair-flights.ts";

const areas = (found: ReturnType<typeof findRooms>): readonly number[] =>
  found.rooms.map(({ area }) => Math.round(area * 10) / 10).sort((a, b) => a - b);

/** A stair of 3.5 × 6 m beside a room of 5 × 6 m: two flights of 1.6 m with eleven front edges with rails on both sides of a well, a landing at both ends. */
function stairAndRoom() {
  const p = pencil();
  p.ring(box(0, 0, 3.5, 6));
  p.ring(box(3.7, 0, 5, 6));
  p.ring(box(-0.2, -0.2, 9.1, 6.4));
  for (const x of [0, 1.9])
    for (let i = 0; i < 11; i++) p.line([x, 1.7 + 0.28 * i], [x + 1.6, 1.7 + 0.28 * i]);
  p.ring(box(1.6, 1.6, 0.3, 3));
  return p;
}

describe("A stair", () => {
  for (const turn of [0, 0.5])
    test(`with two flights, a well and two landings is one room, turned by ${turn}`, () => {
      expect(areas(findRooms(stairAndRoom().linework({ turn })))).toEqual([21, 30]);
    });

  test("is told by four front edges and more, evenly apart: fewer, wider apart or uneven ones are none", () => {
    const rows = (places: readonly number[]) =>
      stairsIn(Float64Array.from(places.flatMap((y) => [0, y, 1.2, y]))).flights.length;
    expect(rows([0, 0.28, 0.56, 0.84])).toBe(1);
    expect(rows([0, 0.28, 0.56])).toBe(0);
    expect(rows([0, 0.5, 1, 1.5, 2])).toBe(0);
    expect(rows([0, 0.22, 0.56, 0.8, 1.18])).toBe(0);
  });

  test("in two parts with a break line between them holds what lies between, a hall at its foot does not", () => {
    const lines = [0, 0.28, 0.56, 0.84, 1.8, 2.08, 2.36, 2.64].flatMap((y) => [0, y, 1.2, y]);
    const stairs = stairsIn(Float64Array.from(lines));
    expect(stairs.flights.length).toBe(2);
    expect(stairs.inWell([0.6, 1.3])).toBe(true);
    expect(stairs.inWell([0.6, 3.5])).toBe(false);
    expect(stairs.inWell([2, 1.3])).toBe(false);
  });
});

/** Two rooms of 3 × 3 m in a wall 0.1 m thick, with a door of 0.8 m whose leaf of 0.8 m is half in its pocket. */
function pocketDoor({ slot }: { readonly slot: boolean }) {
  const p = pencil();
  const ring = (points: readonly Point[]): void => {
    for (let i = 0; i + 1 < points.length; i++) p.line(points[i]!, points[i + 1]!, "wall");
  };
  ring([
    [3, 1.8],
    [3, 3],
    [0, 3],
    [0, 0],
    [3, 0],
    [3, 1],
    [3.1, 1],
    [3.1, 0],
    [6.1, 0],
    [6.1, 3],
    [3.1, 3],
    [3.1, 1.8],
  ]);
  p.ring(box(-0.2, -0.2, 6.5, 3.4), "wall");
  if (slot) {
    p.line([3, 1.8], [3.025, 1.8], "wall");
    p.line([3.075, 1.8], [3.1, 1.8], "wall");
  } else p.line([3, 1.8], [3.1, 1.8], "wall");
  p.ring(box(3.035, 1.4, 0.03, 0.8), "door");
  return p;
}

describe("A door that slides into its wall", () => {
  for (const slot of [true, false])
    for (const turn of [0, 0.3])
      test(`parts two rooms and is a door, ${slot ? "with a slot in the wall's end" : "with the wall's end drawn through"}, turned by ${turn}`, () => {
        const found = findRooms(pocketDoor({ slot }).linework({ turn }));
        expect(areas(found)).toEqual([9, 9]);
        const doors = found.openings.filter(({ kind }) => kind === "door");
        expect(doors.length).toBe(1);
        expect([...doors[0]!.rooms].sort()).toEqual([0, 1]);
        const [{ from, to }] = doors as [(typeof doors)[0]];
        expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(0.8, 2);
      });

  test("is told by a wall's end across it: a thin board in the open stays what it is", () => {
    const board = Float64Array.from(
      box(0, 0, 0.03, 0.8).flatMap((p, i, ring) => [...p, ...ring[(i + 1) % 4]!]),
    );
    expect([...slidingLeaves(board, lineSearch(board)).pocketed]).toEqual([0, 0, 0, 0]);
    const wall = Float64Array.from([...board, -0.05, 0.4, 0.08, 0.4]);
    expect([...slidingLeaves(wall, lineSearch(wall)).pocketed]).toEqual([1, 1, 1, 1, 0]);
  });
});
