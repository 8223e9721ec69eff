const figures = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";

/**
 * The identity of a thing in a building model: 128 bits as 22 figures of base 64, the first of which holds two bits.
 *
 * A record that came out of a model keeps its own; all others get one from a hash of their name, so that the same job
 * gives the same file and a second file of the job speaks of the same things.
 *
 * @param name - The record's id, or what tells it from all others of the file.
 * @source ISO-16739, IfcGloballyUniqueId
 * @example globalId("2O2Fr$t4X7Zf8NOew3FLOH") is itself
 */
export function globalId(name: string): string {
  if (/^[0-3][\w$]{21}$/.test(name)) return name;
  const words = [0x811c9dc5, 0x9747b28c, 0x5bd1e995, 0x2545f491].map((start) => hash(name, start));
  let bits = words.reduce((sum, value) => (sum << 32n) | BigInt(value), 0n);
  let text = "";
  for (let i = 0; i < 22; i++) {
    text = figures[Number(bits & 63n)] + text;
    bits >>= 6n;
  }
  return text;
}

/** FNV-1a over UTF-16 units from a given start, stirred at the end so that names that differ in one letter lie far apart. */
function hash(text: string, start: number): number {
  let value = start;
  for (let i = 0; i < text.length; i++) value = Math.imul(value ^ text.charCodeAt(i), 0x01000193);
  value = Math.imul(value ^ (value >>> 15), 0x85ebca6b);
  value = Math.imul(value ^ (value >>> 13), 0xc2b2ae35);
  return (value ^ (value >>> 16)) >>> 0;
}
