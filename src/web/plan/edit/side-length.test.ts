import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Outline, type Site, selfCrossing, signedArea } from "#engine";
import { applied } from "../../jobs/apply.ts";
import { recordOf } from "../pick.ts";
import { sideLengthSteps } from "./side-length.ts";
import { sideNear, sidesOf } from "./sides.ts";
import { edgeOf } from "./stretch.ts";
import { box, door, room, siteOf } from "./test-site.ts";

/**
 * An L of 6 m × 5 m, its upper right corner of 2 m × 2 m left out.
 *
 *     0        4   6
 *     ┌────────┐     5
 *     │        └───┐ 3
 *     └────────────┘ 0
 */
const corner: Outline = [
  [0, 0],
  [6, 0],
  [6, 3],
  [4, 3],
  [4, 5],
  [0, 5],
];
const alone = siteOf({ rooms: [room("l", corner)] });

const typed = (site: Site, index: number, length: number) =>
  sideLengthSteps(site, recordOf(site, "rooms", "l")!, { index, length });

const afterwards = (site: Site, index: number, length: number): Site => {
  const made = typed(site, index, length);
  if ("refused" in made) throw new Error(made.refused);
  return applied(site, made.steps);
};
const outline = (site: Site, id = "l"): Outline => recordOf(site, "rooms", id)!.outline;

describe("a typed length of one side", () => {
  test("moves the wall at its end, and keeps right angles", () => {
    expect(outline(afterwards(alone, 0, 7.5))).toEqual([
      [0, 0],
      [7.5, 0],
      [7.5, 3],
      [4, 3],
      [4, 5],
      [0, 5],
    ]);
  });

  test("moves the wall of an inner corner as well, into the room or out of it", () => {
    // Side 3 goes up from the inner corner to (4, 5): longer, its end goes up.
    expect(outline(afterwards(alone, 3, 2.5))).toEqual([
      [0, 0],
      [6, 0],
      [6, 3],
      [4, 3],
      [4, 5.5],
      [0, 5.5],
    ]);
    // Side 2 goes left to the inner corner: longer, the wall at its end goes further into the room.
    expect(outline(afterwards(alone, 2, 3))).toEqual([
      [0, 0],
      [6, 0],
      [6, 3],
      [3, 3],
      [3, 5],
      [0, 5],
    ]);
  });

  test("moves the wall without a room behind it rather than the other, else the room behind it too", () => {
    const right = siteOf({ rooms: [room("l", corner), room("right", box(6.2, 0, 9, 3))] });
    const free = afterwards(right, 0, 7);
    expect(outline(free)[0]).toEqual([-1, 0]);
    expect(outline(free, "right")).toEqual(box(6.2, 0, 9, 3));
    const both = siteOf({ rooms: [...right.rooms, room("left", box(-4, 0, -0.2, 5))] });
    const moved = afterwards(both, 0, 7);
    expect(outline(moved)[1]).toEqual([7, 0]);
    expect(outline(moved, "right")).toEqual(box(7.2, 0, 9, 3));
  });

  test("is refused where the room would cross itself", () => {
    // Only walls at the inner corner may move: 4 m into a room that is 4 m deep there, or the right side as far out.
    const shut = siteOf({ rooms: [room("l", corner), room("behind", box(6.2, 0, 7, 3))] });
    expect(typed(shut, 2, 6.5)).toEqual({ refused: "crossing" });
  });

  test("is refused where a door would lose its wall, or two rooms would overlap", () => {
    const entrance = door("entrance", ["l", null], { from: [5, 0], to: [5.9, 0] });
    const guarded = siteOf({
      rooms: [room("l", corner), room("left", box(-4, 0, -0.2, 5))],
      openings: [entrance, door("exit", ["l", null], { from: [0.2, 0], to: [1.1, 0] })],
    });
    expect(typed(guarded, 0, 4.5)).toEqual({ refused: "opening" });
    const near = siteOf({
      rooms: [room("l", corner), room("right", box(8, 1, 10, 2)), room("left", box(-3, 1, -1, 2))],
    });
    expect(typed(near, 0, 9)).toEqual({ refused: "overlap" });
    expect(typed(near, 0, 6.9)).toHaveProperty("steps");
  });

  test("is refused where no wall beside it is square to it", () => {
    const triangle = siteOf({
      rooms: [
        room("l", [
          [0, 0],
          [6, 0],
          [3, 4],
        ]),
      ],
    });
    expect(typed(triangle, 0, 7)).toEqual({ refused: "slanted" });
  });

  test("of any side of any turned L is its length afterwards, with the corners as square as before", () => {
    const sound = fc.record({
      index: fc.integer({ min: 0, max: 5 }),
      by: fc.integer({ min: -900, max: 900 }),
      turn: fc.double({ min: -3, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(sound, ({ index, by, turn }) => {
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const turned: Outline = corner.map(([x, y]) => [c * x - s * y, s * x + c * y]);
        const site = siteOf({ rooms: [room("l", turned)] });
        const length = edgeOf(turned, index).length + by / 1000;
        const made = typed(site, index, length);
        if ("refused" in made) throw new Error(made.refused);
        const now = outline(applied(site, made.steps));
        expect(edgeOf(now, made.index).length).toBeCloseTo(length, 2);
        expect(now).toHaveLength(6);
        expect(selfCrossing(now)).toBeUndefined();
        expect(signedArea(now)).toBeGreaterThan(0);
        now.forEach((_, i) => {
          const [one, next] = [edgeOf(now, i).way, edgeOf(now, (i + 1) % 6).way];
          // Corners lie on whole millimetres: of a side of 1 m both ends may be half a millimetre off.
          expect(Math.abs(one[0] * next[0] + one[1] * next[1])).toBeLessThan(3e-3);
        });
      }),
      { seed: 20_311, numRuns: 200 },
    );
  });
});

test("sides are named by what they look out to; a point is nearest to one of them", () => {
  const [l] = alone.rooms;
  expect(sidesOf(l!).map(({ towards }) => towards)).toEqual(["down", "right", "up", "right", "up", "left"]);
  expect(sideNear(l!, [4.1, 4])).toEqual({ index: 3, away: expect.closeTo(0.1, 9) });
  const slanted = room("s", [
    [0, 0],
    [4, 0],
    [0, 4],
  ]);
  expect(sidesOf(slanted)[1]?.towards).toBe("aslant");
});
