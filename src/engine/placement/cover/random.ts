/** A repeatable source of numbers: the same seed gives the same row of numbers everywhere. */
export interface Dice {
  /** Next number in 0 ≤ x < 1. */
  readonly next: () => number;
  /** Next whole number in 0 … count − 1. */
  readonly pick: (count: number) => number;
}

/**
 * Repeatable numbers from a seed (mulberry32, 2³² states): good enough to break ties in a search, not for secrets.
 *
 * @param seed - Any whole number.
 * @returns The source of numbers; it keeps its own place in the row.
 * @source FROM-MEMORY
 * @example diceOf(1).next() equals diceOf(1).next() of any other run
 */
export function diceOf(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  return { next, pick: (count) => Math.floor(next() * count) };
}
