/** What a version of the symbol holds at error correction level M. */
export interface QrVersion {
  readonly version: number;
  /** Error correction codewords of each block. */
  readonly correction: number;
  readonly blocks: number;
  /** All codewords, data and correction together. */
  readonly codewords: number;
  /** Centres of the small alignment marks, in rows and columns alike. */
  readonly alignment: readonly number[];
}

/**
 * Versions 1 to 10 at level M (about 15 % of the codewords may be lost).
 *
 * @source ISO-18004
 */
export const qrVersions: readonly QrVersion[] = (
  [
    [26, 10, 1, []],
    [44, 16, 1, [6, 18]],
    [70, 26, 1, [6, 22]],
    [100, 18, 2, [6, 26]],
    [134, 24, 2, [6, 30]],
    [172, 16, 4, [6, 34]],
    [196, 18, 4, [6, 22, 38]],
    [242, 22, 4, [6, 24, 42]],
    [292, 22, 5, [6, 26, 46]],
    [346, 26, 5, [6, 28, 50]],
  ] as const
).map(([codewords, correction, blocks, alignment], i) => ({
  version: i + 1,
  codewords,
  correction,
  blocks,
  alignment,
}));

/** Modules along an edge. @example Version 1 has 21 */
export const qrSize = (version: number): number => 17 + 4 * version;
