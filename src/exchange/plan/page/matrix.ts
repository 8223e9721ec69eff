/** x' = a x + c y + e, y' = b x + d y + f; written a b c d e f, as PDF and SVG both do. */
export type Matrix = readonly [number, number, number, number, number, number];

export const identity: Matrix = [1, 0, 0, 1, 0, 0];

/** The matrix that does `inner` first, then `outer`. */
export const product = (outer: Matrix, inner: Matrix): Matrix => [
  outer[0] * inner[0] + outer[2] * inner[1],
  outer[1] * inner[0] + outer[3] * inner[1],
  outer[0] * inner[2] + outer[2] * inner[3],
  outer[1] * inner[2] + outer[3] * inner[3],
  outer[0] * inner[4] + outer[2] * inner[5] + outer[4],
  outer[1] * inner[4] + outer[3] * inner[5] + outer[5],
];

export const placed = (m: Matrix, x: number, y: number): readonly [number, number] => [
  m[0] * x + m[2] * y + m[4],
  m[1] * x + m[3] * y + m[5],
];

/** How much lengths grow, on the mean of all directions: √|determinant|. */
export const growth = (m: Matrix): number => Math.sqrt(Math.abs(m[0] * m[3] - m[1] * m[2]));

/** Four corners of a rectangle after the matrix, in order round it: x y x y x y x y. */
export const cornersOf = (m: Matrix, box: readonly number[]): number[] => {
  const [x0, y0, x1, y1] = box as [number, number, number, number];
  return [...placed(m, x0, y0), ...placed(m, x1, y0), ...placed(m, x1, y1), ...placed(m, x0, y1)];
};
