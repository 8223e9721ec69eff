/** Numbers pairs of whole numbers in the order in which they come: a hash table in typed arrays, since maps of a million keys are slow. */
export interface PairNumbers {
  /** Number of a pair; a new one if it has not come before. */
  of(i: number, j: number): number;
  /** Number of a pair that has come before; −1 otherwise. */
  find(i: number, j: number): number;
  /** How many different pairs have come. */
  readonly count: number;
}

/**
 * @param most - How many different pairs may come at most.
 * @example of(3, 4) → 0, of(4, 3) → 1, of(3, 4) → 0
 */
export function pairNumbers(most: number): PairNumbers {
  let bits = 4;
  while (2 ** bits < 2 * most) bits++;
  const mask = 2 ** bits - 1;
  const slots = new Int32Array(2 ** bits).fill(-1);
  const [first, second] = [new Int32Array(most), new Int32Array(most)];
  let count = 0;
  /** Where a pair stands in the table, or the free slot where it would. */
  const slotOf = (i: number, j: number): number => {
    // Two large odd factors spread neighbours on a grid over the table.
    const mixed = Math.imul(i, 0x9e3779b1) ^ Math.imul(j, 0x85ebca6b);
    let at = (mixed ^ (mixed >>> 15)) & mask;
    for (let number = slots[at]!; number >= 0; number = slots[at]!) {
      if (first[number] === i && second[number] === j) return at;
      at = (at + 1) & mask;
    }
    return at;
  };
  return {
    get count() {
      return count;
    },
    find: (i, j) => slots[slotOf(i, j)]!,
    of: (i, j) => {
      const at = slotOf(i, j);
      if (slots[at]! >= 0) return slots[at]!;
      slots[at] = count;
      first[count] = i;
      second[count] = j;
      return count++;
    },
  };
}
