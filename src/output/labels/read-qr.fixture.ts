import type { QrModules } from "./qr.ts";

/** Correction codewords and blocks at level M by version. @source ISO-18004 */
const correction: readonly (readonly [each: number, blocks: number])[] = [
  [10, 1],
  [16, 1],
  [26, 1],
  [18, 2],
  [24, 2],
  [16, 4],
  [18, 4],
  [22, 4],
  [22, 5],
  [26, 5],
];

/** Powers and logarithms of the field of 256 elements. */
const powers: number[] = [1];
for (let i = 1; i < 255; i++) {
  const next = powers[i - 1]! << 1;
  powers.push(next > 255 ? next ^ 0x11d : next);
}
const logs = new Map(powers.map((value, i) => [value, i]));
const times = (a: number, b: number): number =>
  a === 0 || b === 0 ? 0 : powers[(logs.get(a)! + logs.get(b)!) % 255]!;

const turned = [
  (i: number, j: number) => (i + j) % 2,
  (i: number) => i % 2,
  (_: number, j: number) => j % 3,
  (i: number, j: number) => (i + j) % 3,
  (i: number, j: number) => (Math.floor(i / 2) + Math.floor(j / 3)) % 2,
  (i: number, j: number) => ((i * j) % 2) + ((i * j) % 3),
  (i: number, j: number) => (((i * j) % 2) + ((i * j) % 3)) % 2,
  (i: number, j: number) => (((i + j) % 2) + ((i * j) % 3)) % 2,
] as const;

/** What a symbol says, read from its modules alone, and whether every block divides by the generator of its correction. */
export function readQr(modules: QrModules): { readonly text: string; readonly blocks: "whole" | "broken" } {
  const size = modules.length;
  const version = (size - 17) / 4;
  const bit = (row: number, column: number): number => (modules[row]![column] ? 1 : 0);
  // The format beside the upper left corner mark, its highest bit first, from the left along row 8 and then up column 8.
  const along = [0, 1, 2, 3, 4, 5, 7, 8].map((column) => bit(8, column));
  const up = [7, 5, 4, 3, 2, 1, 0].map((row) => bit(row, 8));
  const format = [...along, ...up].reduce((sum, one) => 2 * sum + one, 0) ^ 0b101010000010010;
  const mask = turned[(format >>> 10) & 7]!;
  if (format >>> 13 !== 0) throw new Error("not level M");
  const marks = version === 1 ? [] : [6, ...alignments(version)];
  const isData = (i: number, j: number): boolean => {
    const corner = (i < 9 && j < 9) || (i < 9 && j >= size - 8) || (i >= size - 8 && j < 9);
    const versionMark =
      version >= 7 &&
      ((i < 6 && j >= size - 11 && j < size - 8) || (j < 6 && i >= size - 11 && i < size - 8));
    const aligned = marks.some((a) =>
      marks.some((b) => {
        const inCorner = (a === 6 && b === 6) || (a === 6 && b === size - 7) || (a === size - 7 && b === 6);
        return !inCorner && Math.abs(i - a) <= 2 && Math.abs(j - b) <= 2;
      }),
    );
    return !(corner || versionMark || aligned || i === 6 || j === 6);
  };
  const bits: number[] = [];
  const columns = Array.from({ length: size - 1 }, (_, k) => (k < size - 7 ? size - 1 - k : size - 2 - k));
  for (let pair = 0; pair < columns.length; pair += 2)
    for (let k = 0; k < size; k++) {
      const i = (pair / 2) % 2 === 0 ? size - 1 - k : k;
      for (const j of [columns[pair]!, columns[pair + 1]!])
        if (isData(i, j)) bits.push(bit(i, j) ^ (mask(i, j) === 0 ? 1 : 0));
    }
  const words = Array.from({ length: Math.floor(bits.length / 8) }, (_, k) =>
    Number.parseInt(bits.slice(8 * k, 8 * k + 8).join(""), 2),
  );
  const [each, count] = correction[version - 1]!;
  const data = words.length - each * count;
  const lengths = Array.from(
    { length: count },
    (_, k) => Math.floor(data / count) + (k >= count - (data % count) ? 1 : 0),
  );
  const blocks: number[][] = lengths.map(() => []);
  let at = 0;
  for (let k = 0; k < Math.max(...lengths); k++)
    blocks.forEach((block, b) => {
      if (k < lengths[b]!) block.push(words[at++]!);
    });
  const checks: number[][] = lengths.map(() => []);
  for (let k = 0; k < each; k++) for (const check of checks) check.push(words[at++]!);
  const whole = blocks.every((block, b) =>
    Array.from({ length: each }, (_, root) =>
      [...block, ...checks[b]!].reduce((sum, word) => times(sum, powers[root]!) ^ word, 0),
    ).every((value) => value === 0),
  );
  const stream = blocks
    .flat()
    .map((word) => word.toString(2).padStart(8, "0"))
    .join("");
  const counted = version < 10 ? 8 : 16;
  const length = Number.parseInt(stream.slice(4, 4 + counted), 2);
  const bytes = Array.from({ length }, (_, k) =>
    Number.parseInt(stream.slice(4 + counted + 8 * k, 12 + counted + 8 * k), 2),
  );
  return { text: new TextDecoder().decode(Uint8Array.from(bytes)), blocks: whole ? "whole" : "broken" };
}

/** Evenly spaced from the last one, as far as version 10. */
const alignments = (version: number): readonly number[] =>
  version < 7 ? [4 * version + 10] : [2 * version + 8, 4 * version + 10];
