import { expect, test } from "vitest";
import { onPlan } from "../calibration.ts";
import { straightPicture } from "./straight-picture.ts";

/** What the standard says of each orientation: the side at which the first row, and the first column, of the stored pixels is shown. */
const sides = [
  ["top", "left"],
  ["top", "right"],
  ["bottom", "right"],
  ["bottom", "left"],
  ["left", "top"],
  ["right", "top"],
  ["right", "bottom"],
  ["left", "bottom"],
] as const;

test.each(sides.map(([row, column], i) => [i + 1, row, column] as const))(
  "a picture held as %i shows its first row %s and its first column %s",
  (orientation, row, column) => {
    // As it is shown: 300 px wide and 200 px high, 3 m × 2 m.
    const { width, height, map } = straightPicture({ width: 300, height: 200, orientation }, 0.01);
    expect([width, height]).toEqual(orientation >= 5 ? [200, 300] : [300, 200]);
    const at = (x: number, y: number) => onPlan(map, [x, y])!;
    const place = { left: [0, 0], right: [0, 3], bottom: [1, 0], top: [1, 2] } as const;
    const [rowAxis, rowAt] = place[row];
    const [columnAxis, columnAt] = place[column];
    for (const share of [0, 0.3, 1]) {
      expect(at(share * width, 0)[rowAxis]).toBeCloseTo(rowAt, 9);
      expect(at(0, share * height)[columnAxis]).toBeCloseTo(columnAt, 9);
    }
    const far = at(width, height);
    expect(far[rowAxis]).toBeCloseTo((rowAxis === 0 ? 3 : 2) - rowAt, 9);
    expect(far[columnAxis]).toBeCloseTo((columnAxis === 0 ? 3 : 2) - columnAt, 9);
  },
);
