import { expect, test } from "vitest";
import type { Point } from "#engine";
import { askedDrawing, surveyRoomAt } from "./survey-room-at.ts";

/** Two rooms side by side with walls of 0.1 m, a door gap of 0.9 m in the left one's lower wall, and scribbles elsewhere. */
const strokes: readonly (readonly [Point, Point])[] = [
  [
    [0, 0],
    [1, 0],
  ],
  [
    [1.9, 0],
    [4, 0],
  ],
  [
    [4, 0],
    [4, 3],
  ],
  [
    [4, 3],
    [0, 3],
  ],
  [
    [0, 3],
    [0, 0],
  ],
  [
    [-0.1, -0.1],
    [1, -0.1],
  ],
  [
    [1.9, -0.1],
    [8.1, -0.1],
  ],
  [
    [1, 0],
    [1, -0.1],
  ],
  [
    [1.9, 0],
    [1.9, -0.1],
  ],
  [
    [4.1, 0],
    [8, 0],
  ],
  [
    [8, 0],
    [8, 3],
  ],
  [
    [8, 3],
    [4.1, 3],
  ],
  [
    [4.1, 3],
    [4.1, 0],
  ],
  [
    [20, 20],
    [23, 21],
  ],
  [
    [21, 20],
    [20, 24],
  ],
];
const drawing = askedDrawing({
  file: "plan.dxf",
  lines: Float64Array.from(strokes.flat(2)),
  layerOf: new Uint16Array(strokes.length),
  layers: [{ name: "0", shown: true }],
});
const storey = { id: "ground", name: "Ground", elevation: 0 };

test("the room round a place comes alone, with its door", () => {
  const found = surveyRoomAt(drawing, [2, 1.5], { storey, ceiling: 2.7 });
  expect(found?.room).toMatchObject({ storey: "ground", ceilingHeight: 2.7 });
  const xs = found?.room.outline.map(([x]) => x) ?? [];
  expect([Math.min(...xs), Math.max(...xs)]).toEqual([0, 4]);
  expect(found?.openings).toHaveLength(1);
  expect(found?.openings[0]?.rooms).toEqual([found?.room.id, null]);
});

test("where the lines close no room, none is made up", () => {
  expect(surveyRoomAt(drawing, [21, 21], { storey, ceiling: 2.7 })).toBeUndefined();
  expect(surveyRoomAt(drawing, [50, 50], { storey, ceiling: 2.7 })).toBeUndefined();
});
