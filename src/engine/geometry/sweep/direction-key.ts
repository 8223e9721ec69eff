/** Directions closer than this (about a nanoradian) are one: 10 nm at 10 m, far below the grain, far above rounding. */
export const SAME_DIRECTION = 1e-9;

/**
 * A number that rises with the direction of a vector, counter-clockwise from +x, from 0 to below 4: a quarter turn is 1.
 *
 * k = y / (|x| + |y|) in the first quadrant. It orders like the angle, costs no arctangent, and opposite directions differ by exactly 2.
 *
 * @param x - East. @param y - North.
 * @returns 0 ≤ key < 4; 0 for the zero vector.
 * @source DERIVED-HERE
 * @example (1, 1): 0.5
 */
export function directionKey(x: number, y: number): number {
  const sum = Math.abs(x) + Math.abs(y);
  if (sum === 0) return 0;
  const share = y / sum;
  const key = x < 0 ? 2 - share : share >= 0 ? share : 4 + share;
  return key >= 4 - SAME_DIRECTION ? 0 : key;
}

/** Turn from one key to another, counter-clockwise positive, above −2 and up to 2. @example From 3.5 to 0.5: 1 */
export function keyDifference(from: number, to: number): number {
  const d = to - from;
  return d > 2 ? d - 4 : d <= -2 ? d + 4 : d;
}

/** Unit vector of a key, x. @example Key 1: 0 */
export const keyX = (key: number): number => {
  const k = key >= 4 ? key - 4 : key;
  const x = k <= 2 ? 1 - k : k - 3;
  const y = k <= 1 ? k : k <= 3 ? 2 - k : k - 4;
  return x / Math.hypot(x, y);
};

/** Unit vector of a key, y. @example Key 1: 1 */
export const keyY = (key: number): number => {
  const k = key >= 4 ? key - 4 : key;
  const x = k <= 2 ? 1 - k : k - 3;
  const y = k <= 1 ? k : k <= 3 ? 2 - k : k - 4;
  return y / Math.hypot(x, y);
};

/** Index of the last of some rising keys that is not above a value; 0 where all are. @example [0, 1, 2] and 1.5: 1 */
export function indexOf(keys: Float64Array, value: number): number {
  let low = 0;
  let high = keys.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((keys[middle] as number) <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}
