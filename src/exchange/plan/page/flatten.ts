import { type Circular, circleOfCubic, circlesOfRuns, joined } from "./circles.ts";
import { type Matrix, placed } from "./matrix.ts";

/** A path as both formats write it: 0 x y move, 1 x y line, 2 x y x y x y cubic, 3 x y x y quadratic, 4 close. */
export type PathSteps = ArrayLike<number>;

/** One stroke of the pen, flattened and in place. */
export interface Stroke {
  /** x y x y … */
  readonly points: readonly number[];
  readonly closed: boolean;
  /** Stretches that lie on a circle, in order, none over another. */
  readonly circular: readonly Circular[];
}

/** Lines that one curve may become. */
const mostPieces = 64;

/**
 * The strokes of a path after a matrix.
 *
 * @param tolerance - Largest gap between a curve and its lines. [drawing units]
 */
export function strokesOf(steps: PathSteps, matrix: Matrix, tolerance: number): readonly Stroke[] {
  const strokes: Stroke[] = [];
  let points: number[] = [];
  let curves: Circular[] = [];
  /** Corners that lie inside a curve or at its ends: no straight run goes over them. */
  let bent = new Set<number>();
  const end = (closed: boolean): void => {
    if (points.length >= 4) {
      const circular = joined([...curves, ...circlesOfRuns(points, bent, closed)], points);
      strokes.push({ points, closed, circular });
    }
    points = [];
    curves = [];
    bent = new Set();
  };
  let start: readonly [number, number] | undefined;
  let at: readonly [number, number] | undefined;
  const begin = (): void => {
    if (points.length === 0 && at) points.push(...at);
  };
  const lineTo = (to: readonly [number, number]): void => {
    begin();
    if (!at) start = to;
    if (points.length === 0 || points.at(-2) !== to[0] || points.at(-1) !== to[1]) points.push(...to);
    at = to;
  };
  const curveTo = (
    one: readonly [number, number],
    two: readonly [number, number],
    to: readonly [number, number],
  ): void => {
    if (!at) {
      lineTo(to);
      return;
    }
    begin();
    const cubic = [at, one, two, to] as const;
    const pieces = piecesOf(cubic, tolerance);
    const first = points.length / 2 - 1;
    for (let i = 1; i <= pieces; i++) points.push(...cubicAt(cubic, i / pieces));
    const last = points.length / 2 - 1;
    for (let i = first; i < last; i++) bent.add(i);
    const circle = pieces > 1 ? circleOfCubic((t) => cubicAt(cubic, t)) : undefined;
    if (circle) curves.push({ ...circle, first, last });
    at = to;
  };
  for (let i = 0; i < steps.length; ) {
    const kind = steps[i]!;
    const point = (offset: number) => placed(matrix, steps[i + offset]!, steps[i + offset + 1]!);
    if (kind === 0) {
      end(false);
      start = at = point(1);
      i += 3;
    } else if (kind === 1) {
      lineTo(point(1));
      i += 3;
    } else if (kind === 2) {
      curveTo(point(1), point(3), point(5));
      i += 7;
    } else if (kind === 3) {
      const [from, middle, to] = [at ?? point(1), point(1), point(3)];
      curveTo(between(from, middle, 2 / 3), between(to, middle, 2 / 3), to);
      i += 5;
    } else {
      if (start && points.length >= 4 && at) lineTo(start);
      end(true);
      at = start;
      i += 1;
    }
  }
  end(false);
  return strokes;
}

type Cubic = readonly [Pair, Pair, Pair, Pair];
type Pair = readonly [number, number];

const between = (a: Pair, b: Pair, t: number): Pair => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];

const cubicAt = ([a, b, c, d]: Cubic, t: number): Pair => {
  const s = 1 - t;
  const [u, v, w, z] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return t === 1 ? d : [u * a[0] + v * b[0] + w * c[0] + z * d[0], u * a[1] + v * b[1] + w * c[1] + z * d[1]];
};

/** A cubic lies within (6/8) · m / n² of n lines between its points, m being the largest second difference of its corners. */
const piecesOf = ([a, b, c, d]: Cubic, tolerance: number): number => {
  const second = (p: Pair, q: Pair, r: Pair): number =>
    Math.hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1]);
  const straight = (p: Pair): boolean => {
    const length = Math.hypot(d[0] - a[0], d[1] - a[1]);
    const along = ((p[0] - a[0]) * (d[0] - a[0]) + (p[1] - a[1]) * (d[1] - a[1])) / length;
    const across = Math.abs((p[0] - a[0]) * (d[1] - a[1]) - (p[1] - a[1]) * (d[0] - a[0])) / length;
    return along >= -tolerance && along <= length + tolerance && across < tolerance / 2;
  };
  if (straight(b) && straight(c)) return 1;
  const m = Math.max(second(a, b, c), second(b, c, d));
  const pieces = Math.ceil(Math.sqrt((0.75 * m) / tolerance));
  return Number.isFinite(pieces) ? Math.min(mostPieces, Math.max(1, pieces)) : 1;
};
