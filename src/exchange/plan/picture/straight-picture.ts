import type { Metres } from "#engine";
import type { PictureMap } from "../calibration.ts";
import type { PlanPicture } from "./read-picture.ts";

/** A picture that was taken straight from the front, on the plan. */
export interface StraightPicture {
  /** Size of the stored pixels. [px] */
  readonly width: number;
  readonly height: number;
  /** From a stored pixel to the plan. */
  readonly map: PictureMap;
}

/**
 * Lays a picture under the plan: as it is shown, its lower left corner at the origin, one pixel everywhere as large.
 *
 * The pixels stay as they are stored; how the camera was held goes into the map.
 *
 * @param picture - As read. @param metres - Side of one pixel. [m]
 * @source EXIF-2-32, tag Orientation
 * @example 300 × 200 px held upright, 0.01 m a pixel: the first pixel lies at (0, 2)
 */
export function straightPicture(
  picture: Pick<PlanPicture, "width" | "height" | "orientation">,
  metres: Metres,
): StraightPicture {
  const { width: wide, height: high, orientation } = picture;
  const lying = orientation >= 5;
  // Where a stored pixel (x, y) is shown: column a·x + b·y + c, row d·x + e·y + f.
  const [a, b, c, d, e, f] = shown[orientation - 1]!;
  const [right, bottom] = [c * wide, f * high];
  return {
    width: lying ? high : wide,
    height: lying ? wide : high,
    map: [
      ...([a, b, right].map((value) => value * metres) as [number, number, number]),
      ...([-d, -e, high - bottom].map((value) => value * metres) as [number, number, number]),
      ...([0, 0, 1] as [number, number, number]),
    ],
  };
}

/** For orientation 1 … 8, where a stored pixel is shown; c and f count in whole widths and heights of what is shown. */
const shown: readonly (readonly [number, number, 0 | 1, number, number, 0 | 1])[] = [
  [1, 0, 0, 0, 1, 0],
  [-1, 0, 1, 0, 1, 0],
  [-1, 0, 1, 0, -1, 1],
  [1, 0, 0, 0, -1, 1],
  [0, 1, 0, 1, 0, 0],
  [0, -1, 1, 1, 0, 0],
  [0, -1, 1, -1, 0, 1],
  [0, 1, 0, -1, 0, 1],
];
