import { expect, test } from "vitest";
import { box, pencil } from "./drawn-plan.fixture.ts";
import { findRooms } from "./find-rooms.ts";

const areas = (found: ReturnType<typeof findRooms>): readonly number[] =>
  found.rooms.map(({ area }) => Math.round(area * 10) / 10).sort((a, b) => a - b);

/** A room of 6 m × 5 m, and beside it a shaft of 2 m × 2.4 m, its car 0.15 m away from the walls and crossed by diagonals. */
function roomAndLift() {
  const p = pencil();
  p.ring(box(0, 0, 6, 5));
  p.ring(box(6.2, 0, 2, 2.4));
  p.ring(box(-0.2, -0.2, 8.6, 5.4));
  p.ring(box(6.2, 2.6, 2, 2.4));
  const car = box(6.35, 0.15, 1.7, 2.1);
  p.ring(car, "lift");
  p.line(car[0]!, car[2]!, "lift");
  p.line(car[1]!, car[3]!, "lift");
  return p;
}

test("A lift is the shaft within its walls, neither the car nor a quarter of it", () => {
  expect(areas(findRooms(roomAndLift().linework()))).toEqual([4.8, 4.8, 30]);
});

test("Turned and drawn in millimetres, it is the same shaft", () => {
  expect(areas(findRooms(roomAndLift().linework({ turn: 0.4, scale: 1000 })))).toEqual([4.8, 4.8, 30]);
});

test("A cabin that stands alone within its own wall is as large as its floor", () => {
  const p = pencil();
  p.ring(box(0, 0, 3, 3));
  p.ring(box(-0.2, -0.2, 3.4, 3.4));
  expect(areas(findRooms(p.linework()))).toEqual([9]);
});
