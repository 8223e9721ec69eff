import { distanceToSegment } from "../region.ts";
import { gapShare } from "./stroke.ts";

/** A rational B-spline. */
export interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  /** x y x y … */
  readonly controls: readonly number[];
  /** One a control point; all 1 where the curve is not rational. */
  readonly weights: readonly number[];
}

/** Whether the parts of a spline fit each other. */
export function isSound({ degree, knots, controls, weights }: Spline): boolean {
  const points = controls.length / 2;
  return (
    Number.isInteger(degree) &&
    degree >= 1 &&
    degree <= 25 &&
    points > degree &&
    knots.length === points + degree + 1 &&
    weights.length === points &&
    weights.every((weight) => weight > 0) &&
    knots.every((knot, i) => i === 0 || knot >= knots[i - 1]!) &&
    knots[points]! > knots[degree]!
  );
}

/** How often one span between two knots may be halved. */
const mostHalvings = 7;

/**
 * Points along a spline so dense that the lines between them keep within the gap of all flattened curves.
 *
 * Each span between knots is halved until its middle, and the middles of its halves, lie close enough to their chord.
 *
 * @returns x y x y …
 */
export function splinePoints(spline: Spline): number[] {
  const { degree, knots, controls } = spline;
  const gap = gapShare * sizeOf(controls);
  const points: number[] = [];
  const count = controls.length / 2;
  const refine = (t0: number, p0: Pair, t1: number, p1: Pair, halvings: number): void => {
    const t = (t0 + t1) / 2;
    const middle = splineAt(spline, t);
    const quarters = [(t0 + t) / 2, (t + t1) / 2].map((u) => splineAt(spline, u));
    const off = Math.max(...[middle, ...quarters].map((p) => distanceToSegment(p, p0, p1)));
    if (halvings >= mostHalvings || !(off > gap)) {
      points.push(...p1);
      return;
    }
    refine(t0, p0, t, middle, halvings + 1);
    refine(t, middle, t1, p1, halvings + 1);
  };
  for (let span = degree; span < count; span++) {
    const [t0, t1] = [knots[span]!, knots[span + 1]!];
    if (!(t1 > t0)) continue;
    const [p0, p1] = [splineAt(spline, t0), splineAt(spline, t1)];
    if (points.length === 0) points.push(...p0);
    refine(t0, p0, t1, p1, 0);
  }
  return points;
}

type Pair = readonly [number, number];

/** Point of a spline at a parameter (de Boor's algorithm, on points with their weight as a third coordinate). */
export function splineAt({ degree, knots, controls, weights }: Spline, t: number): Pair {
  const count = controls.length / 2;
  let span = degree;
  let high = count - 1;
  // The last span that begins at or before t and is not empty.
  while (span < high) {
    const middle = (span + high + 1) >> 1;
    if (knots[middle]! <= t) span = middle;
    else high = middle - 1;
  }
  while (span > degree && knots[span] === knots[span + 1]) span--;
  const x: number[] = [];
  const y: number[] = [];
  const w: number[] = [];
  for (let j = 0; j <= degree; j++) {
    const i = span - degree + j;
    w.push(weights[i]!);
    x.push(controls[2 * i]! * weights[i]!);
    y.push(controls[2 * i + 1]! * weights[i]!);
  }
  for (let round = 1; round <= degree; round++) {
    for (let j = degree; j >= round; j--) {
      const i = span - degree + j;
      const [low, top] = [knots[i]!, knots[i + degree - round + 1]!];
      const share = top > low ? (t - low) / (top - low) : 0;
      x[j] = (1 - share) * x[j - 1]! + share * x[j]!;
      y[j] = (1 - share) * y[j - 1]! + share * y[j]!;
      w[j] = (1 - share) * w[j - 1]! + share * w[j]!;
    }
  }
  return [x[degree]! / w[degree]!, y[degree]! / w[degree]!];
}

/** Distance of the first control point from the farthest: the same however the curve is turned. */
const sizeOf = (controls: readonly number[]): number => {
  let size = 0;
  for (let i = 2; i + 1 < controls.length; i += 2)
    size = Math.max(size, Math.hypot(controls[i]! - controls[0]!, controls[i + 1]! - controls[1]!));
  return size;
};

/**
 * A curve through points that were clicked, for splines that come without control points: each stretch a cubic whose
 * direction at a point is that of its two neighbours (Catmull and Rom).
 *
 * @param through - x y x y … @returns x y x y …
 */
export function curveThrough(through: readonly number[], closed: boolean): number[] {
  const count = through.length / 2;
  const at = (i: number): Pair => {
    const k = closed ? (i + count) % count : Math.max(0, Math.min(count - 1, i));
    return [through[2 * k]!, through[2 * k + 1]!];
  };
  const points: number[] = [...at(0)];
  for (let i = 0; i < (closed ? count : count - 1); i++) {
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    for (let k = 1; k <= piecesThrough; k++) {
      const t = k / piecesThrough;
      const along = (n: 0 | 1): number =>
        b[n] +
        0.5 *
          t *
          (c[n] - a[n] + t * (2 * a[n] - 5 * b[n] + 4 * c[n] - d[n] + t * (3 * (b[n] - c[n]) + d[n] - a[n])));
      points.push(along(0), along(1));
    }
  }
  return points;
}

/** Lines between two clicked points. */
const piecesThrough = 8;
