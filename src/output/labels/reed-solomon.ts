/** The field of 256 elements of the symbol: x⁸ + x⁴ + x³ + x² + 1. @source ISO-18004 */
const polynomial = 0x11d;

/** Product in the field. @example multiplied(2, 128) is 29: 256 less the polynomial */
export function multiplied(a: number, b: number): number {
  let product = 0;
  for (let bit = 7; bit >= 0; bit--) {
    product = (product << 1) ^ ((product >>> 7) * polynomial);
    product ^= ((b >>> bit) & 1) * a;
  }
  return product;
}

/** Factors of the generator (x − 1)(x − 2)(x − 4)…, without the leading 1, the highest power first. */
export function generator(degree: number): readonly number[] {
  const factors = new Array<number>(degree).fill(0);
  factors[degree - 1] = 1;
  let root = 1;
  for (let i = 0; i < degree; i++) {
    for (let j = 0; j < degree; j++)
      factors[j] = multiplied(factors[j]!, root) ^ (j + 1 < degree ? factors[j + 1]! : 0);
    root = multiplied(root, 2);
  }
  return factors;
}

/** Correction codewords of a block: the rest of its division by the generator. */
export function correctionOf(block: readonly number[], factors: readonly number[]): readonly number[] {
  const rest = new Array<number>(factors.length).fill(0);
  for (const codeword of block) {
    const factor = codeword ^ rest.shift()!;
    rest.push(0);
    factors.forEach((value, i) => {
      rest[i] = rest[i]! ^ multiplied(value, factor);
    });
  }
  return rest;
}
