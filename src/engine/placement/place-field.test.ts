import fc from "fast-check";
import { expect, test } from "vitest";
import { placeField } from "./place-field.ts";

const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
const place = fc.tuple(coordinate, coordinate);

test("Every place within the distance is among those that are near, and each once", () => {
  fc.assert(
    fc.property(
      fc.array(place, { maxLength: 60 }),
      place,
      fc.double({ min: 0, max: 30, noNaN: true }),
      (places, at, distance) => {
        const field = placeField();
        for (const one of places) field.add(one);
        const near = field.near(at, distance);
        expect(new Set(near).size).toBe(near.length);
        for (const [index, [x, y]] of places.entries())
          if (Math.hypot(x - at[0], y - at[1]) <= distance) expect(near).toContain(index);
      },
    ),
    { seed: 20_261_126, numRuns: 300 },
  );
});

test("Places far away are not looked at, and nothing is near where nothing reaches", () => {
  const field = placeField();
  field.add([0, 0]);
  field.add([100, 100]);
  expect(field.near([1, 1], 3)).toEqual([0]);
  expect(field.near([1, 1], -1)).toEqual([]);
});
