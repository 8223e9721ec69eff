/** What reading one DXF drawing may cost at most. */
export interface DxfLimits {
  readonly bytes: number;
  /** Lines after flattening, with every copy of every block. */
  readonly lines: number;
  readonly texts: number;
  /** Blocks put in, each row and column of each insertion counted. */
  readonly copies: number;
  /** Blocks inside one another. */
  readonly blockDepth: number;
}

/** Limits that no sound plan has been seen to reach. */
export const usualDxfLimits: DxfLimits = {
  bytes: 200e6,
  lines: 2_000_000,
  texts: 200_000,
  copies: 1_000_000,
  blockDepth: 32,
};
