/** What one reading may cost at most. */
export interface ReadLimits {
  /** Bytes of the STEP text, unpacked. */
  readonly bytes: number;
  /** Unpacked size against packed size of a zip file. */
  readonly ratio: number;
  /** Records of the STEP text. */
  readonly records: number;
  /** Corners of one room, holes included. */
  readonly roomCorners: number;
  /** Corners of one obstacle's footprint. */
  readonly obstacleCorners: number;
}

/** Limits that no sound building model has been seen to reach. */
export const usualLimits: ReadLimits = {
  bytes: 500e6,
  ratio: 100,
  records: 8_000_000,
  roomCorners: 2_000,
  obstacleCorners: 48,
};
