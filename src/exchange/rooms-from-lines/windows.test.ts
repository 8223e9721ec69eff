import { expect, test } from "vitest";
import { english } from "#engine";
import { box, pencil } from "./drawn-plan.fixture.ts";
import { findRooms } from "./find-rooms.ts";

/** A room of 4 × 3 m in walls of 0.3 m, beside another one; a window of 1.2 m in the lower wall, and whatever a test adds. */
function twoRooms(extra: (p: ReturnType<typeof pencil>) => void) {
  const p = pencil();
  p.ring(box(-0.3, -0.3, 8.8, 3.6));
  p.ring(box(0, 0, 4, 3));
  p.ring(box(4.2, 0, 4, 3));
  extra(p);
  return p;
}

const window = (p: ReturnType<typeof pencil>): void => {
  p.line([1, 0], [1, -0.3]);
  p.line([2.2, 0], [2.2, -0.3]);
  p.line([1, -0.15], [2.2, -0.15]);
};

test("A line from jamb to jamb in an outer wall is a window, on the face of its room and as thick as the wall", () => {
  for (const turn of [0, 0.7, Math.PI / 2]) {
    const { rooms, openings } = findRooms(twoRooms(window).linework({ turn }));
    expect(rooms).toHaveLength(2);
    expect(openings).toHaveLength(1);
    const [one] = openings;
    expect(one).toMatchObject({ kind: "window", thickness: expect.closeTo(0.3, 2) });
    expect(Math.hypot(one!.to[0] - one!.from[0], one!.to[1] - one!.from[1])).toBeCloseTo(1.2, 2);
    expect(one!.rooms[1]).toBe(-1);
    // A window lets nobody in: the room is none the surer for it.
    expect(rooms[one!.rooms[0]]!.doubts.map(english)).toContain("no door found");
  }
});

test("Linings that run along a whole wall, and glass between two rooms, are no windows", () => {
  const lining = twoRooms((p) => p.line([-0.3, -0.15], [8.5, -0.15])).linework();
  expect(findRooms(lining).openings).toEqual([]);
  const between = twoRooms((p) => {
    p.line([4, 1], [4.2, 1]);
    p.line([4, 2], [4.2, 2]);
    p.line([4.1, 1], [4.1, 2]);
  }).linework();
  expect(findRooms(between).openings.filter(({ kind }) => kind === "window")).toEqual([]);
});
