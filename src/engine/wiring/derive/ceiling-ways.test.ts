import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Point } from "../../geometry/index.ts";
import type { Opening, Room, Site } from "../../site/index.ts";
import { room, site } from "../of-site/of-site.fixture.ts";
import { ceilingWays } from "./ceiling-ways.ts";

const named = (id: string, outline: readonly Point[], more: Partial<Room> = {}): Room => ({
  ...room,
  id,
  outline,
  ...more,
});
const box = (left: number, bottom: number, right: number, top: number): readonly Point[] => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];
const door = (
  rooms: readonly [string, string | null],
  from: Point,
  to: Point,
  more: Partial<Opening> = {},
): Opening => ({
  id: `${rooms[0]} to ${rooms[1]}`,
  rooms,
  kind: "door",
  from,
  to,
  sill: 0,
  head: 2.1,
  thickness: 0.1,
  hinge: "from",
  opensInto: null,
  angle: 0,
  state: "closed",
  ...more,
});
/** West and east beside each other with a door at y = 3.5, attic without a door. */
const rooms = [
  named("west", box(0, 0, 4, 4)),
  named("east", box(4.1, 0, 8, 4)),
  named("shut", box(8.1, 0, 12, 4)),
  named("ell", [
    [0, 10],
    [6, 10],
    [6, 12],
    [2, 12],
    [2, 16],
    [0, 16],
  ]),
];
const openings = [door(["west", "east"], [4, 3], [4, 4])];
const between = (own: Partial<Site> = {}) => ceilingWays(site({ rooms, openings, ...own }), "ground").between;
const length = (from: readonly [string, Point], to: readonly [string, Point], own: Partial<Site> = {}) =>
  between(own)({ room: from[0], at: from[1] }, { room: to[0], at: to[1] });

describe("cables along the ceiling", () => {
  test("in a room along its walls: 3 m and 4 m make 7 m, with one corner", () => {
    const way = length(["west", [0.5, 0]], ["west", [3.5, 4]]);
    expect([way.length, way.points.length, way.walls]).toEqual([7, 3, "above-doors"]);
  });
  test("from room to room above the door, through the wall and back", () => {
    const way = length(["west", [3, 1]], ["east", [5, 1]]);
    // Up to the door at y = 3.5, through 0.1 m of wall, and down again.
    expect(way.length).toBeCloseTo(1 + 2.5 + 0.1 + 0.9 + 2.5, 9);
    expect(way.points).toContainEqual([4, 3.5]);
    expect(way.points).toContainEqual([4.1, 3.5]);
  });
  test("a lower ceiling beyond the door costs its step", () => {
    const low = rooms.map((one) => (one.id === "east" ? { ...one, ceilingHeight: 2.2 } : one));
    const step = length(["west", [3, 1]], ["east", [5, 1]], { rooms: low }).length;
    expect(step - length(["west", [3, 1]], ["east", [5, 1]]).length).toBeCloseTo(0.5, 9);
  });
  test("a window is no way; where no door leads the cable goes straight through the walls, and says so", () => {
    const windows = [door(["west", "east"], [4, 3], [4, 4], { kind: "window" })];
    const through = length(["west", [3, 1]], ["east", [5, 1]], { openings: windows });
    expect([through.length, through.walls]).toEqual([2, "through-walls"]);
    expect(length(["west", [3, 1]], ["shut", [9, 1]]).walls).toBe("through-walls");
  });
  test("round the inner corner of an L, never outside of it", () => {
    const way = length(["ell", [5, 11]], ["ell", [1, 15]]);
    expect(way.length).toBeCloseTo(8, 9);
    for (const [x, y] of way.points) expect(x <= 2 + 1e-4 || y <= 12 + 1e-4).toBe(true);
  });
  test("a place outside of its room beyond a niche is reached through walls", () => {
    expect(length(["west", [-3, 1]], ["west", [1, 1]]).walls).toBe("through-walls");
    expect(length(["west", [-0.2, 1]], ["west", [1, 1]]).walls).toBe("above-doors");
  });
  test("there and back are equally long, never shorter than the straight line; turned and shifted plans have the same lengths", () => {
    const inside = fc.record({
      room: fc.constantFrom("west", "east"),
      x: fc.double({ min: 0.1, max: 3.8, noNaN: true }),
      y: fc.double({ min: 0.1, max: 3.9, noNaN: true }),
    });
    const place = ({ room: id, x, y }: { room: string; x: number; y: number }) => ({
      room: id,
      at: [id === "west" ? x : x + 4.1, y] as Point,
    });
    fc.assert(
      fc.property(inside, inside, fc.double({ min: 0, max: 6.3, noNaN: true }), (a, b, angle) => {
        const [one, other] = [place(a), place(b)];
        const moved = ([x, y]: Point): Point => [
          x * Math.cos(angle) - y * Math.sin(angle) + 7,
          x * Math.sin(angle) + y * Math.cos(angle) - 3,
        ];
        const still = between();
        const turned = between({
          rooms: rooms.map((own) => ({ ...own, outline: own.outline.map(moved) })),
          openings: openings.map((own) => ({ ...own, from: moved(own.from), to: moved(own.to) })),
        });
        const there = still(one, other).length;
        expect(still(other, one).length).toBeCloseTo(there, 4);
        expect(there).toBeGreaterThanOrEqual(
          Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]) - 1e-4,
        );
        const again = turned({ ...one, at: moved(one.at) }, { ...other, at: moved(other.at) });
        // Corners are settled to a hundredth of a millimetre.
        expect(again.length).toBeCloseTo(there, 3);
      }),
      { seed: 71, numRuns: 80 },
    );
  });
});
