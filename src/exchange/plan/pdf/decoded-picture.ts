/** Pixels of a picture as the package has decoded them. */
export interface DecodedPicture {
  readonly width: number;
  readonly height: number;
  /** Adds the share of red, green, blue and how much it covers, 0 … 255 each, of the pixel in a column and a row. */
  readonly add: (sum: Float64Array, column: number, row: number) => void;
}

/** How the package packs pixels. */
const kinds = { bits: 1, rgb: 2, rgba: 3 } as const;

/** A picture out of what the package hands over; undefined where its bytes are too few for its size, or it is packed otherwise. */
export function decodedPicture(
  stored: unknown,
  ink: readonly [number, number, number] | undefined,
): DecodedPicture | undefined {
  const { width, height, kind, data } = (stored ?? {}) as {
    readonly width?: unknown;
    readonly height?: unknown;
    readonly kind?: unknown;
    readonly data?: unknown;
  };
  if (!isSize(width) || !isSize(height)) return undefined;
  if (!(data instanceof Uint8Array || data instanceof Uint8ClampedArray)) return undefined;
  const size = { width, height };
  const rowBytes = (width + 7) >> 3;
  if (ink) {
    // In a stencil a bit that is not set paints.
    if (data.length < rowBytes * height) return undefined;
    return {
      ...size,
      add: (sum, column, row) => {
        if ((data[row * rowBytes + (column >> 3)]! >> (7 - (column & 7))) & 1) return;
        for (let i = 0; i < 3; i++) sum[i]! += ink[i]!;
        sum[3]! += 255;
      },
    };
  }
  switch (kind) {
    case kinds.bits:
      if (data.length < rowBytes * height) return undefined;
      return {
        ...size,
        add: (sum, column, row) => {
          const grey = (data[row * rowBytes + (column >> 3)]! >> (7 - (column & 7))) & 1 ? 255 : 0;
          for (let i = 0; i < 3; i++) sum[i]! += grey;
          sum[3]! += 255;
        },
      };
    case kinds.rgb:
      if (data.length < 3 * width * height) return undefined;
      return {
        ...size,
        add: (sum, column, row) => {
          const at = 3 * (row * width + column);
          for (let i = 0; i < 3; i++) sum[i]! += data[at + i]!;
          sum[3]! += 255;
        },
      };
    case kinds.rgba:
      if (data.length < 4 * width * height) return undefined;
      return {
        ...size,
        add: (sum, column, row) => {
          const at = 4 * (row * width + column);
          const cover = data[at + 3]!;
          for (let i = 0; i < 3; i++) sum[i]! += (data[at + i]! * cover) / 255;
          sum[3]! += cover;
        },
      };
    default:
      return undefined;
  }
}

const isSize = (value: unknown): value is number =>
  typeof value === "number" && Number.isInteger(value) && value > 0;
