/** Powers of ten that a double holds exactly. */
const powers = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

/**
 * The number that stands between two bytes, correctly rounded; NaN where there is none.
 *
 * Up to fifteen digits and a power of ten up to 22 are exact in doubles, so that one division rounds correctly; everything
 * else goes the slow way through a string.
 */
export function decimalAt(bytes: Uint8Array, from: number, to: number): number {
  let i = from;
  let end = to;
  while (i < end && bytes[i]! <= 32) i++;
  while (end > i && bytes[end - 1]! <= 32) end--;
  const start = i;
  const sign = bytes[i];
  if (sign === 45 || sign === 43) i++;
  let digits = 0;
  let value = 0;
  let behind = -1;
  for (; i < end; i++) {
    const byte = bytes[i]!;
    if (byte >= 48 && byte <= 57) {
      value = value * 10 + (byte - 48);
      if (value > 0) digits++;
      if (behind >= 0) behind++;
    } else if (byte === 46 && behind < 0) behind = 0;
    else break;
  }
  if (i < end || digits > 15 || behind > 22) return slowly(bytes, start, end);
  // "" and "." are no numbers, "-." neither; anything else that came here has a digit.
  if (end - start - (behind >= 0 ? 1 : 0) - (sign === 45 || sign === 43 ? 1 : 0) <= 0) return Number.NaN;
  const size = behind > 0 ? value / powers[behind]! : value;
  return sign === 45 ? -size : size;
}

/** Longer than any way to write a double. */
const longest = 400;

const decimal = /^[+-]?(\d+\.?\d*|\.\d+)([eEdD][+-]?\d+)?$/;

const slowly = (bytes: Uint8Array, from: number, to: number): number => {
  if (to - from > longest) return Number.NaN;
  const text = String.fromCharCode(...bytes.subarray(from, to));
  return decimal.test(text) ? Number(text.replace(/[dD]/, "e")) : Number.NaN;
};
