import { type QrVersion, qrSize, qrVersions } from "./qr-tables.ts";
import { correctionOf, generator } from "./reed-solomon.ts";

/** A symbol: rows of modules, true is dark. The clear rim of four modules is not part of it. */
export type QrModules = readonly (readonly boolean[])[];

/**
 * Text as a matrix of dark and light modules, in bytes of UTF-8 at level M, the smallest version that holds it.
 *
 * @param text - At most 213 bytes. @returns undefined where it is longer.
 * @source ISO-18004
 * @example "roomwake:" needs version 1, 21 × 21 modules
 */
export function qrOf(text: string): QrModules | undefined {
  const bytes = new TextEncoder().encode(text);
  const version = qrVersions.find((one) => headBits(one) + 8 * bytes.length <= 8 * dataWords(one));
  if (!version) return undefined;
  const words = interleaved(version, dataOf(version, bytes));
  const grid = gridOf(version);
  place(grid, words);
  const masked = masks.map((_, mask) => {
    const modules = withMask(grid, mask);
    return { modules, penalty: penaltyOf(modules) };
  });
  return masked.reduce((best, one) => (one.penalty < best.penalty ? one : best)).modules;
}

/** Mode of bytes (4 bits) and the count of them. */
const headBits = ({ version }: QrVersion): number => 4 + countBits(version);
const countBits = (version: number): number => (version < 10 ? 8 : 16);
const dataWords = ({ codewords, correction, blocks }: QrVersion): number => codewords - correction * blocks;

function dataOf(version: QrVersion, bytes: Uint8Array): readonly number[] {
  const bits: number[] = [];
  const put = (value: number, count: number): void => {
    for (let i = count - 1; i >= 0; i--) bits.push((value >>> i) & 1);
  };
  put(0b0100, 4);
  put(bytes.length, countBits(version.version));
  for (const byte of bytes) put(byte, 8);
  const room = 8 * dataWords(version);
  put(0, Math.min(4, room - bits.length));
  put(0, (8 - (bits.length % 8)) % 8);
  const words = Array.from({ length: bits.length / 8 }, (_, i) =>
    bits.slice(8 * i, 8 * i + 8).reduce((sum, bit) => 2 * sum + bit, 0),
  );
  for (let pad = 0xec; words.length < room / 8; pad ^= 0xec ^ 0x11) words.push(pad);
  return words;
}

/** The data in blocks, shorter ones first, each with its correction; then a codeword of each block in turn. */
function interleaved(version: QrVersion, data: readonly number[]): readonly number[] {
  const factors = generator(version.correction);
  const short = Math.floor(data.length / version.blocks);
  const longer = data.length % version.blocks;
  let from = 0;
  const blocks = Array.from({ length: version.blocks }, (_, i) => {
    const to = from + short + (i >= version.blocks - longer ? 1 : 0);
    const own = data.slice(from, to);
    from = to;
    return { own, correction: correctionOf(own, factors) };
  });
  const words: number[] = [];
  for (let i = 0; i <= short; i++) for (const { own } of blocks) if (i < own.length) words.push(own[i]!);
  for (let i = 0; i < version.correction; i++)
    for (const { correction } of blocks) words.push(correction[i]!);
  return words;
}

interface Grid {
  readonly size: number;
  readonly version: number;
  readonly dark: boolean[][];
  /** Modules with a meaning of their own, which no mask turns. */
  readonly fixed: boolean[][];
}

function gridOf({ version, alignment }: QrVersion): Grid {
  const size = qrSize(version);
  const square = (): boolean[][] => Array.from({ length: size }, () => new Array<boolean>(size).fill(false));
  const grid: Grid = { size, version, dark: square(), fixed: square() };
  const set = (row: number, column: number, dark: boolean): void => {
    if (row < 0 || column < 0 || row >= size || column >= size) return;
    grid.dark[row]![column] = dark;
    grid.fixed[row]![column] = true;
  };
  for (let i = 0; i < size; i++) {
    set(6, i, i % 2 === 0);
    set(i, 6, i % 2 === 0);
  }
  const rings = (row: number, column: number, reach: number, light: readonly number[]): void => {
    for (let r = -reach; r <= reach; r++)
      for (let c = -reach; c <= reach; c++)
        set(row + r, column + c, !light.includes(Math.max(Math.abs(r), Math.abs(c))));
  };
  for (const [row, column] of [
    [3, 3],
    [3, size - 4],
    [size - 4, 3],
  ] as const)
    rings(row, column, 4, [2, 4]);
  for (const row of alignment)
    for (const column of alignment) {
      const corner =
        (row === 6 && (column === 6 || column === size - 7)) || (column === 6 && row === size - 7);
      if (!corner) rings(row, column, 2, [1]);
    }
  for (const [row, column] of formatPlaces(size).flat()) set(row, column, false);
  set(size - 8, 8, true);
  if (version >= 7) {
    const bits = (version << 12) | remainder(version, { generator: 0x1f25, degree: 12 });
    for (let i = 0; i < 18; i++) {
      const [a, b] = [size - 11 + (i % 3), Math.floor(i / 3)];
      set(a, b, ((bits >>> i) & 1) === 1);
      set(b, a, ((bits >>> i) & 1) === 1);
    }
  }
  return grid;
}

/** Both copies of the format, the lowest bit first. */
const formatPlaces = (size: number): readonly (readonly (readonly [number, number])[])[] => [
  Array.from({ length: 15 }, (_, i): readonly [number, number] =>
    i < 6 ? [i, 8] : i < 8 ? [i + 1, 8] : i === 8 ? [8, 7] : [8, 14 - i],
  ),
  Array.from({ length: 15 }, (_, i): readonly [number, number] =>
    i < 8 ? [8, size - 1 - i] : [size - 15 + i, 8],
  ),
];

/** Rest of a division over bits: the check digits of format and version. */
function remainder(value: number, code: { readonly generator: number; readonly degree: number }): number {
  let rest = value;
  for (let i = 0; i < code.degree; i++)
    rest = (rest << 1) ^ ((rest >>> (code.degree - 1)) & 1 ? code.generator : 0);
  return rest & ((1 << code.degree) - 1);
}

/** Codewords in columns of two from the right, up and down in turn, past what is fixed. */
function place({ size, dark, fixed }: Grid, words: readonly number[]): void {
  let bit = 0;
  for (let right = size - 1; right >= 1; right -= 2) {
    if (right === 6) right = 5;
    for (let step = 0; step < size; step++) {
      const upwards = ((right + 1) & 2) === 0;
      const row = upwards ? size - 1 - step : step;
      for (const column of [right, right - 1]) {
        if (fixed[row]![column] || bit >= 8 * words.length) continue;
        dark[row]![column] = ((words[bit >>> 3]! >>> (7 - (bit & 7))) & 1) === 1;
        bit++;
      }
    }
  }
}

const masks: readonly ((row: number, column: number) => boolean)[] = [
  (r, c) => (r + c) % 2 === 0,
  (r) => r % 2 === 0,
  (_, c) => c % 3 === 0,
  (r, c) => (r + c) % 3 === 0,
  (r, c) => (Math.floor(r / 2) + Math.floor(c / 3)) % 2 === 0,
  (r, c) => ((r * c) % 2) + ((r * c) % 3) === 0,
  (r, c) => (((r * c) % 2) + ((r * c) % 3)) % 2 === 0,
  (r, c) => (((r + c) % 2) + ((r * c) % 3)) % 2 === 0,
];

function withMask(grid: Grid, mask: number): QrModules {
  const rows = grid.dark.map((cells, row) =>
    cells.map((dark, column) => (grid.fixed[row]![column] ? dark : dark !== masks[mask]!(row, column))),
  );
  // Level M is 0 in the format, so that its five bits are those of the mask.
  const bits = ((mask << 10) | remainder(mask, { generator: 0x537, degree: 10 })) ^ 0x5412;
  for (const copy of formatPlaces(grid.size))
    copy.forEach(([row, column], i) => {
      rows[row]![column] = ((bits >>> i) & 1) === 1;
    });
  return rows;
}

/** How hard a symbol is to read: runs, blocks, patterns like the corner marks, and more dark than light or less. */
function penaltyOf(modules: QrModules): number {
  const size = modules.length;
  const columns = modules.map((_, i) => modules.map((row) => row[i]!));
  let penalty = 0;
  for (const line of [...modules, ...columns]) {
    let run = 1;
    for (let i = 1; i <= size; i++) {
      if (i < size && line[i] === line[i - 1]) run++;
      else {
        if (run >= 5) penalty += run - 2;
        run = 1;
      }
    }
    // A window of eleven modules slides along; the two patterns are the mark's own rhythm with four light ones at an end.
    let eleven = 0;
    line.forEach((dark, i) => {
      eleven = ((eleven << 1) | (dark ? 1 : 0)) & 0x7ff;
      if (i >= 10 && (eleven === 0b10111010000 || eleven === 0b00001011101)) penalty += 40;
    });
  }
  for (let r = 0; r + 1 < size; r++)
    for (let c = 0; c + 1 < size; c++) {
      const dark = modules[r]![c]!;
      if (dark === modules[r]![c + 1] && dark === modules[r + 1]![c] && dark === modules[r + 1]![c + 1])
        penalty += 3;
    }
  const share = modules.flat().filter(Boolean).length / (size * size);
  return penalty + 10 * Math.floor(Math.abs(share - 0.5) / 0.05);
}
