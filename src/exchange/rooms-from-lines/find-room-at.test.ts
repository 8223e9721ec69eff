import { describe, expect, test } from "vitest";
import { box, pencil, twoRoomsAndCorridor } from "./drawn-plan.fixture.ts";
import { findRoomAt, lineIndex } from "./find-room-at.ts";
import { findRooms } from "./find-rooms.ts";
import { largePlan } from "./large-plan.fixture.ts";

describe("A click inside a room", () => {
  const linework = twoRoomsAndCorridor({ wall: "0", furniture: "0" }).linework();

  test("finds that room alone, with its name and its door", () => {
    const office = findRoomAt(linework, [4, 4])!;
    expect(office.room).toMatchObject({ name: "Office", number: "1.02", area: expect.closeTo(20, 6) });
    expect(office.openings).toMatchObject([{ kind: "door" }]);
    expect([...office.openings[0]!.rooms].sort()).toEqual([-1, 0]);
    expect(findRoomAt(linework, [7.5, 4])!.room.name).toBe("Store");
    expect(findRoomAt(linework, [4, 0.4])!.room.name).toBe("Corridor");
  });

  test("on a desk finds the room that the desk stands in", () => {
    expect(findRoomAt(linework, [2.5, 3.4])!.room.name).toBe("Office");
  });

  test("outside, or in a wall, finds nothing", () => {
    expect(findRoomAt(linework, [-5, -5])).toBeUndefined();
    expect(findRoomAt(linework, [5.1, 4])).toBeUndefined();
  });

  test("finds what reading the whole plan finds, wherever and in whatever unit it is drawn", () => {
    const shift = [4_500_000, 5_300_000] as const;
    const far = twoRoomsAndCorridor({ wall: "0", furniture: "0" }).linework({
      scale: 1000,
      turn: 0.4,
      shift,
    });
    const all = findRooms(far);
    expect(all.rooms).toHaveLength(3);
    for (const room of all.rooms) {
      const [a, b] = [room.outline[0]!, room.outline[Math.floor(room.outline.length / 2)]!];
      const at = findRoomAt(far, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], { shift: all.shift })!;
      expect(at.room.name).toBe(room.name);
      expect(at.room.area).toBeCloseTo(room.area, 2);
    }
  });

  test("finds one sound room although the rest of the plan closes nowhere", () => {
    const p = pencil();
    for (let i = 0; i < 300; i++) p.line([i * 0.37, 20 + (i % 7)], [i * 0.37 + 5, 22 + (i % 11)]);
    p.ring(box(0, 0, 4, 4));
    p.line([4, 1], [9, -3]);
    expect(findRoomAt(p.linework(), [2, 2])!.room.area).toBeCloseTo(16, 6);
    expect(findRoomAt(p.linework(), [6, 3])).toBeUndefined();
  });

  test("finds a room among more than 200 000 lines, with the index built before", () => {
    const large = largePlan(30, 23, 12);
    expect(large.layerOf.length).toBeGreaterThan(200_000);
    const index = lineIndex(large);
    const places = [
      [2.4, 3.9],
      [5.2 * 15 + 2.4, 4.2 * 11 + 3.9],
      [5.2 * 29 + 2.4, 4.2 * 22 + 3.9],
    ] as const;
    for (const place of places) expect(findRoomAt(large, place, { index })!.room.area).toBeCloseTo(20, 1);
  });
});
