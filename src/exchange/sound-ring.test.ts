import { expect, test } from "vitest";
import { type Outline, selfCrossing } from "#engine";
import { ringArea } from "./region.ts";
import { soundRing } from "./sound-ring.ts";

test("a sound ring stays as it is, on the grid and in its direction", () => {
  const ring: Outline = [
    [0, 0],
    [4.00001, 0],
    [4, 3],
    [0, 3],
  ];
  expect(soundRing(ring)).toEqual([
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ]);
  expect(ringArea(soundRing(ring.toReversed()))).toBe(-12);
});

test("corners that fall together on the grid are one", () => {
  const ring: Outline = [
    [0, 0],
    [4, 0],
    [4.00002, 0.00002],
    [4, 3],
    [0, 3],
    [0.00001, 0],
  ];
  expect(soundRing(ring)).toHaveLength(4);
});

test("a ring that crosses itself at a neck keeps its larger part, whichever way it runs", () => {
  // A room of 4 m × 3 m, and behind a crossed neck a tail of some square centimetres.
  const ring: Outline = [
    [0, 0],
    [4, 0],
    [4, 1.4],
    [4.3, 1.5],
    [4.3, 1.4],
    [4, 1.5],
    [4, 3],
    [0, 3],
  ];
  expect(selfCrossing(ring)).toBeDefined();
  for (const [way, sign] of [
    [ring, 1],
    [ring.toReversed(), -1],
  ] as const) {
    const sound = soundRing(way);
    expect(selfCrossing(sound)).toBeUndefined();
    expect(sign * ringArea(sound)).toBeGreaterThan(11.9);
    expect(sign * ringArea(sound)).toBeLessThan(12.1);
  }
});
