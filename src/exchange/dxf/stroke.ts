import { type Matrix, placed } from "../plan/page/matrix.ts";

/** One run of the pen in the coordinates of its block, curves flattened. */
export interface Stroke {
  /** x y x y … */
  readonly points: ArrayLike<number>;
  /** Stretches of the run that are arcs of a circle. */
  readonly arcs: readonly StrokeArc[];
}

/** An arc of a circle from one point of a stroke to another. */
export interface StrokeArc {
  readonly first: number;
  readonly last: number;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Angle from the first point to the last; below 0: clockwise. [rad] */
  readonly sweep: number;
}

/** Builds a stroke, piece by piece. */
export interface StrokeBuilder {
  to(x: number, y: number): void;
  /** An arc about a centre; the pen first goes to where it begins. */
  arc(arc: { x: number; y: number; radius: number; from: number; sweep: number }): void;
  /** An arc to a point, its bulge being the tangent of a quarter of its angle, below 0 clockwise. */
  bulge(x: number, y: number, bulge: number): void;
  /** A curve that is given by places along it, 0 … 1. */
  curve(place: (t: number) => readonly [number, number], pieces: number): void;
  close(): void;
  done(matrix: Matrix): Stroke;
}

/**
 * Largest gap between a curve and its lines, as a share of the curve's size, which is the lesser of its length and its
 * diameter. 0.9 mm at a door leaf of 0.9 m. Relative, because the unit of a drawing may not be known yet.
 */
export const gapShare = 1 / 1000;

/** Lines that an arc with this angle becomes. [rad] */
export function arcPieces(sweep: number): number {
  const angle = Math.min(Math.abs(sweep), 2 * Math.PI);
  // Gap of a chord = radius · (1 − cos(step / 2)).
  const step = 2 * Math.acos(1 - gapShare * Math.min(2, angle));
  return Math.max(1, Math.ceil(angle / step - 1e-9));
}

/** Flatter bulges than this are straight: the gap is under a millionth of the length. */
const flattest = 1e-6;

/** A new, empty stroke. */
export function strokeBuilder(): StrokeBuilder {
  const points: number[] = [];
  const arcs: StrokeArc[] = [];
  const to = (x: number, y: number): void => {
    points.push(x, y);
  };
  const arc: StrokeBuilder["arc"] = ({ x, y, radius, from, sweep }) => {
    const pieces = arcPieces(sweep);
    if (!Number.isFinite(pieces + from + radius)) {
      // Whoever takes the stroke sees that it is no good.
      to(Number.NaN, Number.NaN);
      return;
    }
    const [startX, startY] = [x + radius * Math.cos(from), y + radius * Math.sin(from)];
    const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * radius;
    const last = points.length;
    if (last === 0 || !near(points[last - 2]!, startX) || !near(points[last - 1]!, startY))
      to(startX, startY);
    const first = points.length / 2 - 1;
    for (let i = 1; i <= pieces; i++) {
      const angle = from + (sweep * i) / pieces;
      to(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    }
    // The last point of a full turn is the first, to the last digit.
    if (Math.abs(sweep) >= 2 * Math.PI) points.splice(-2, 2, points[2 * first]!, points[2 * first + 1]!);
    arcs.push({ first, last: points.length / 2 - 1, x, y, radius, sweep });
  };
  return {
    to,
    arc,
    bulge: (x, y, bulge) => {
      const [x0, y0] = [points.at(-2)!, points.at(-1)!];
      const chord = Math.hypot(x - x0, y - y0);
      if (!(Math.abs(bulge) > flattest) || chord === 0) {
        to(x, y);
        return;
      }
      const off = (1 - bulge * bulge) / (4 * bulge);
      const [cx, cy] = [(x0 + x) / 2 - off * (y - y0), (y0 + y) / 2 + off * (x - x0)];
      const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
      arc({ x: cx, y: cy, radius, from: Math.atan2(y0 - cy, x0 - cx), sweep: 4 * Math.atan(bulge) });
      // The end as written, not as worked out: corners must meet.
      points[points.length - 2] = x;
      points[points.length - 1] = y;
    },
    curve: (place, pieces) => {
      for (let i = points.length === 0 ? 0 : 1; i <= pieces; i++) to(...place(i / pieces));
    },
    close: () => {
      const n = points.length;
      if (n >= 4 && (points[0] !== points[n - 2] || points[1] !== points[n - 1])) to(points[0]!, points[1]!);
    },
    done: (matrix) => placedStroke({ points, arcs }, matrix),
  };
}

/** A stroke after a matrix; arcs stay arcs where the matrix keeps angles. */
export function placedStroke(stroke: Stroke, matrix: Matrix): Stroke {
  if (matrix[0] === 1 && matrix[1] === 0 && matrix[2] === 0 && matrix[3] === 1 && !matrix[4] && !matrix[5])
    return stroke;
  const { points } = stroke;
  const moved = new Float64Array(points.length);
  const [a, b, c, d, e, f] = matrix;
  for (let i = 0; i + 1 < points.length; i += 2) {
    moved[i] = a * points[i]! + c * points[i + 1]! + e;
    moved[i + 1] = b * points[i]! + d * points[i + 1]! + f;
  }
  const scale = keptAngles(matrix);
  if (scale === undefined || stroke.arcs.length === 0) return { points: moved, arcs: [] };
  const turned = a * d - b * c < 0 ? -1 : 1;
  return {
    points: moved,
    arcs: stroke.arcs.map((arc) => {
      const [x, y] = placed(matrix, arc.x, arc.y);
      return { ...arc, x, y, radius: arc.radius * scale, sweep: arc.sweep * turned };
    }),
  };
}

/** How much a matrix enlarges, if it does so alike in all directions; undefined if not. */
const keptAngles = ([a, b, c, d]: Matrix): number | undefined => {
  const scale = Math.hypot(a, b);
  const alike =
    Math.abs(Math.hypot(c, d) - scale) <= 1e-6 * scale && Math.abs(a * c + b * d) <= 1e-6 * scale ** 2;
  return alike && scale > 0 ? scale : undefined;
};
