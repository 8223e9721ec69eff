/** What reading one plan may cost at most. */
export interface PlanLimits {
  /** Bytes of the file, unpacked. */
  readonly bytes: number;
  /** Lines after flattening. */
  readonly lines: number;
  readonly texts: number;
  /** Elements of an SVG file, those that are put in again and again counted each time. */
  readonly elements: number;
  /** Elements inside one another. */
  readonly depth: number;
  /** Pixels of a picture. */
  readonly pixels: number;
}

/** Limits that no sound plan has been seen to reach. */
export const usualPlanLimits: PlanLimits = {
  bytes: 200e6,
  lines: 2_000_000,
  texts: 100_000,
  elements: 2_000_000,
  depth: 1000,
  pixels: 100e6,
};

/** Bytes as a person reads them. */
export const megabytes = (bytes: number): string =>
  bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${Math.round(bytes / 1e6)} MB`;
