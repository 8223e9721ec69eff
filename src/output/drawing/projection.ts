import type { Outline, Piece, Point, Region } from "#engine";
import type { Box, Millimetres, PaperPoint, PaperRing } from "./mark.ts";

/** How the plan lies on paper: its scale, and which place of the plan lies where. */
export interface Projection {
  /** Denominator: 100 is 1 : 100. */
  readonly scale: number;
  /** The plan's (0, 0) on paper. */
  readonly origin: PaperPoint;
}

/** Scales of the sheets, largest first. The last ones only serve sites that fit no other way. */
export const scales = [50, 100, 200, 500, 1000, 2000, 5000] as const;

/** A length of the plan on paper. [m] → [mm] */
export const paperLength = (metres: number, projection: Projection): Millimetres =>
  (metres * 1000) / projection.scale;

/** A place of the plan on paper; paper y runs down. */
export const onPaper = (point: Point, projection: Projection): PaperPoint => [
  projection.origin[0] + paperLength(point[0], projection),
  projection.origin[1] - paperLength(point[1], projection),
];

/** The place of the plan under a point of the paper: the way back. */
export const onPlan = ([x, y]: PaperPoint, { origin, scale }: Projection): Point => [
  ((x - origin[0]) * scale) / 1000,
  ((origin[1] - y) * scale) / 1000,
];

export const ringOnPaper = (outline: Outline, projection: Projection): PaperRing =>
  outline.map((point) => onPaper(point, projection));

export const ringsOf = (piece: Piece, projection: Projection): readonly PaperRing[] =>
  [piece.outline, ...piece.holes].map((ring) => ringOnPaper(ring, projection));

export const ringsOfRegion = (region: Region, projection: Projection): readonly PaperRing[] =>
  region.flatMap((piece) => ringsOf(piece, projection));

/** Extent of some points of the plan. [m] */
export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export function extentOf(outlines: readonly Outline[]): Extent | undefined {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const outline of outlines)
    for (const [x, y] of outline) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
  return left <= right ? { left, right, low, high } : undefined;
}

/** The plan in the middle of a window at the largest scale that leaves the rim free. */
export function projectionInto(extent: Extent, window: Box, rim: Millimetres): Projection {
  const fits = (scale: number): boolean =>
    ((extent.right - extent.left) * 1000) / scale <= window.right - window.left - 2 * rim &&
    ((extent.high - extent.low) * 1000) / scale <= window.bottom - window.top - 2 * rim;
  return centred(extent, window, scales.find(fits) ?? scales[scales.length - 1]!);
}

/** The plan in the middle of a window at a given scale. */
export function centred(extent: Extent, window: Box, scale: number): Projection {
  return {
    scale,
    origin: [
      (window.left + window.right) / 2 - (((extent.left + extent.right) / 2) * 1000) / scale,
      (window.top + window.bottom) / 2 + (((extent.low + extent.high) / 2) * 1000) / scale,
    ],
  };
}
