/** A set of small whole numbers, 32 to a word. */
export type Bits = Uint32Array;

/** An empty set that can hold 0 … size − 1. @param size - Number of possible members. @returns The set. */
export const noBits = (size: number): Bits => new Uint32Array((size + 31) >>> 5);

/** The set of the given members. @param members - Numbers below size. @param size - Number of possible members. @returns The set. */
export function bitsOf(members: ArrayLike<number>, size: number): Bits {
  const bits = noBits(size);
  for (let i = 0; i < members.length; i++) addBit(bits, members[i]!);
  return bits;
}

/** Puts a member in. @param bits - The set; changed. @param member - The number. */
export const addBit = (bits: Bits, member: number): void => {
  bits[member >>> 5]! |= 1 << (member & 31);
};

/** Whether a member is in. @param bits - The set. @param member - The number. @returns True if it is in. */
export const hasBit = (bits: Bits, member: number): boolean =>
  ((bits[member >>> 5]! >>> (member & 31)) & 1) === 1;

/** Whether every member of `part` is in `whole`. @param part - Set of the same size. @param whole - Set of the same size. @returns True for a subset or an equal set. */
export function isWithin(part: Bits, whole: Bits): boolean {
  for (let word = 0; word < part.length; word++) if ((part[word]! & ~whole[word]!) !== 0) return false;
  return true;
}

/** A number that is equal for equal sets and nearly always different for different ones. @param bits - The set. @returns The key, 0 … 2³² − 1. */
export function keyOf(bits: Bits): number {
  let key = 0x811c9dc5;
  for (let word = 0; word < bits.length; word++)
    key = Math.imul(key ^ bits[word]!, 0x01000193) ^ (key >>> 13);
  return key >>> 0;
}
