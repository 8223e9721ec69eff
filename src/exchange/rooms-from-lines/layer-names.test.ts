import { expect, test } from "vitest";
import { english } from "#engine";
import { box, pencil } from "./drawn-plan.fixture.ts";
import { findRoomAt } from "./find-room-at.ts";
import { findRooms } from "./find-rooms.ts";

/** Two nameless rooms with walls of two faces, each with its outline on a layer of its own, and a layer that runs through both. */
function plan(first: string, second: string) {
  const p = pencil();
  p.ring(box(-0.2, -0.2, 9.4, 4.4), "Walls");
  p.ring(box(0, 0, 5, 4), "Walls");
  p.ring(box(5.2, 0, 3.8, 4), "Walls");
  p.ring(box(0, 0, 5, 4), first);
  p.ring(box(5.2, 0, 3.8, 4), second);
  p.line([1, 2], [8, 2], "0");
  return p;
}
const called = (p: ReturnType<typeof plan>) =>
  findRooms(p.linework(), { layers: ["Walls"] }).rooms.map(({ number, name }) => [number, name]);

test("A layer that is called as a room is names the room that its lines fill", () => {
  expect(called(plan("E15-309", "xref$0$E15-311"))).toEqual([
    ["E15-309", ""],
    ["E15-311", ""],
  ]);
  expect(called(plan("Library", "Toilets"))).toEqual([
    ["", "Library"],
    ["", "Toilets"],
  ]);
});

test("A layer of another meaning, and one that lies over several rooms, name none", () => {
  expect(called(plan("0", "Layer7"))).toEqual([
    ["", ""],
    ["", ""],
  ]);
  expect(called(plan("25", "Kitchen fittings"))).toEqual([
    ["", ""],
    ["", ""],
  ]);
  const both = plan("E15-309", "E15-309");
  expect(called(both)).toEqual([
    ["", ""],
    ["", ""],
  ]);
});

test("Lettering in a room comes first, and the room is no surer for the layer", () => {
  const p = plan("E15-309", "E15-311");
  p.text("Store", [2, 1]);
  const { rooms } = findRooms(p.linework(), { layers: ["Walls"] });
  expect(rooms.map(({ number, name }) => [number, name])).toEqual([
    ["", "Store"],
    ["E15-311", ""],
  ]);
  expect(rooms[0]!.confidence).toBeCloseTo(rooms[1]!.confidence, 6);
  expect(rooms[1]!.doubts.map(english)).not.toContain("no name in it");
});

test("A touch inside a room tells its layer's name as well, turned and far from the origin", () => {
  const far = plan("E15-309", "E15-311").linework({ shift: [500_000, 5_000_000] });
  const found = findRoomAt(far, [500_007, 5_000_002], { layers: ["Walls"] });
  expect(found?.room.number).toBe("E15-311");
});
