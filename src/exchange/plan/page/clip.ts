import type { LineBox } from "../../linework/linework.ts";

/** What shows of a drawing: inside every side, n·p ≥ d. */
export interface Clip {
  readonly sides: readonly (readonly [nx: number, ny: number, d: number])[];
}

export const unclipped: Clip = { sides: [] };

/**
 * A clip narrowed by an outline. A convex outline cuts exactly; of any other shape nothing outside of its box can show, so
 * its box cuts.
 *
 * @param outline - x y x y …, with or without the first corner at the end again
 */
export function clippedBy(clip: Clip, outline: readonly number[]): Clip {
  const corners = withoutRepeats(outline);
  const turning = corners.length >= 6 ? turnOf(corners) : 0;
  const ring = turning === 0 ? boxRing(corners) : turning > 0 ? corners : reversed(corners);
  const sides = [...clip.sides];
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const dx = ring[j]! - ring[i]!;
    const dy = ring[j + 1]! - ring[i + 1]!;
    const length = Math.hypot(dx, dy);
    const nx = length > 0 ? -dy / length : [0, -1, 0, 1][i / 2]!;
    const ny = length > 0 ? dx / length : [1, 0, -1, 0][i / 2]!;
    add(sides, [nx, ny, nx * ring[i]! + ny * ring[i + 1]!]);
  }
  return { sides };
}

/**
 * The part of a line that shows.
 *
 * @param slack - How far outside still counts as on the edge: coordinates in files are rounded. [drawing units]
 * @returns Shares of its way, 0 … 1, or undefined where nothing shows
 */
export function visiblePart(
  clip: Clip,
  line: readonly [number, number, number, number],
  slack: number,
): readonly [number, number] | undefined {
  let from = 0;
  let to = 1;
  for (const [nx, ny, d] of clip.sides) {
    const begin = nx * line[0] + ny * line[1] - d;
    const end = nx * line[2] + ny * line[3] - d;
    if (begin < -slack && end < -slack) return undefined;
    if (begin < -slack) from = Math.max(from, begin / (begin - end));
    else if (end < -slack) to = Math.min(to, begin / (begin - end));
  }
  return from < to ? [from, to] : undefined;
}

/** Whether a place shows. */
export const shows = (clip: Clip, x: number, y: number, slack: number): boolean =>
  clip.sides.every(([nx, ny, d]) => nx * x + ny * y - d + slack >= 0);

/** Sides that look the same way are one, the tighter: deep nesting stays cheap. */
const add = (sides: Clip["sides"][number][], side: Clip["sides"][number]): void => {
  const at = sides.findIndex(
    (other) => Math.abs(other[0] - side[0]) < 1e-9 && Math.abs(other[1] - side[1]) < 1e-9,
  );
  if (at < 0) sides.push(side);
  else if (side[2] > sides[at]![2]) sides[at] = side;
};

/** 1: convex and counter-clockwise, -1: convex and clockwise, 0: neither. */
const turnOf = (ring: readonly number[]): number => {
  let sign = 0;
  let total = 0;
  const n = ring.length;
  for (let i = 0; i < n; i += 2) {
    const [ax, ay] = [ring[i]!, ring[i + 1]!];
    const [bx, by] = [ring[(i + 2) % n]!, ring[(i + 3) % n]!];
    const [cx, cy] = [ring[(i + 4) % n]!, ring[(i + 5) % n]!];
    const cross = (bx - ax) * (cy - by) - (by - ay) * (cx - bx);
    const dot = (bx - ax) * (cx - bx) + (by - ay) * (cy - by);
    const angle = Math.atan2(cross, dot);
    total += angle;
    // A corner of less than a thousandth of a radian may bend the wrong way by rounding alone.
    if (Math.abs(angle) < 1e-3) continue;
    if (sign !== 0 && Math.sign(angle) !== sign) return 0;
    sign = Math.sign(angle);
  }
  // Once round, not a star that goes round twice.
  return Math.abs(Math.abs(total) - 2 * Math.PI) < 0.1 ? sign : 0;
};

const withoutRepeats = (outline: readonly number[]): number[] => {
  const ring: number[] = [];
  for (let i = 0; i + 1 < outline.length; i += 2) {
    if (i > 0 && outline[i] === ring.at(-2) && outline[i + 1] === ring.at(-1)) continue;
    ring.push(outline[i]!, outline[i + 1]!);
  }
  if (ring.length > 2 && ring[0] === ring.at(-2) && ring[1] === ring.at(-1)) ring.length -= 2;
  return ring;
};

const boxRing = (points: readonly number[]): number[] => {
  const [x0, y0, x1, y1] = boxOfPoints(points);
  return [x0, y0, x1, y0, x1, y1, x0, y1];
};

/** Least and largest coordinates of x y x y …. */
export const boxOfPoints = (points: readonly number[]): LineBox => {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < points.length; i += 2) {
    x0 = Math.min(x0, points[i]!);
    x1 = Math.max(x1, points[i]!);
    y0 = Math.min(y0, points[i + 1]!);
    y1 = Math.max(y1, points[i + 1]!);
  }
  return [x0, y0, x1, y1];
};

const reversed = (ring: readonly number[]): number[] => {
  const back: number[] = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) back.push(ring[i]!, ring[i + 1]!);
  return back;
};
