/**
 * Repeatable numbers from a seed: the same seed gives the same row everywhere, so that chance is an argument.
 *
 * @param seed - Any whole number
 * @returns Gives the next number, 0 ≤ x < 1
 * @source FROM-MEMORY
 * @example drawsFrom(1)() equals drawsFrom(1)() of any other run
 */
export function drawsFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 4_294_967_296;
  };
}

/**
 * A seed that words and numbers lead to, so that what is drawn for one of them does not hang on the others.
 *
 * @param seed - Any whole number
 * @param words - What it is for
 * @returns A whole number from 0 on
 */
export function seedFor(seed: number, ...words: readonly (string | number)[]): number {
  let mixed = (seed ^ 0x811c9dc5) >>> 0;
  for (const sign of words.join(" ")) {
    mixed = Math.imul(mixed ^ (sign.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  }
  return mixed;
}

/**
 * A length of exponential law.
 *
 * x = −m ln(1 − u)
 *
 * @param mean - m > 0
 * @param draw - Gives u, 0 ≤ u < 1
 * @returns The length, in the unit of the mean
 * @source DERIVED-HERE
 */
export const exponential = (mean: number, draw: () => number): number => -mean * Math.log(1 - draw());
