/** A stretch of a stroke that lies on a circle, from corner `first` to corner `last`. */
export interface Circular extends Circle {
  readonly first: number;
  readonly last: number;
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Angle that is swept from the first corner to the last; below 0: clockwise. [rad] */
  readonly sweep: number;
}

type Pair = readonly [number, number];

/** How far a point may lie off a circle: the usual cubic for a quarter circle is off by 0.03 %, files round further. [share of the radius] */
const offCircle = 0.004;

/** A flatter arc than this has no centre that could be told. [radius over chord] */
const flattest = 30;

/** The circle that a curve runs on, from places on the curve at 0 … 1; undefined where it runs on none. */
export function circleOfCubic(place: (t: number) => Pair): Circle | undefined {
  const [a, b, c] = [place(0), place(0.5), place(1)];
  const circle = through(a, b, c);
  if (!circle || circle.radius > flattest * Math.hypot(c[0] - a[0], c[1] - a[1])) return undefined;
  const off = [0.125, 0.25, 0.375, 0.625, 0.75, 0.875].some((t) => {
    const [x, y] = place(t);
    return !(Math.abs(Math.hypot(x - circle.x, y - circle.y) - circle.radius) <= offCircle * circle.radius);
  });
  return off ? undefined : { ...circle, sweep: turned(circle, a, b) + turned(circle, b, c) };
}

/** Corners that a run of straight lines needs to pass for an arc. */
const fewestLines = 4;

/** A polygon with sharper corners is meant as a polygon: 12 corners and fewer. [rad] */
const sharpest = 0.5;

/** Arcs of less are not worth to be told from a bent line. [rad] */
const shortest = 0.6;

/**
 * Arcs that were flattened before they were written: runs of lines of one length that turn by one angle.
 *
 * @param bent - Corners after which a curve runs; runs of straight lines end there
 */
export function circlesOfRuns(
  points: readonly number[],
  bent: ReadonlySet<number>,
  closed: boolean,
): readonly Circular[] {
  const found: Circular[] = [];
  const corner = (i: number): Pair => [points[2 * i]!, points[2 * i + 1]!];
  const lengthAfter = (i: number): number =>
    Math.hypot(points[2 * i + 2]! - points[2 * i]!, points[2 * i + 3]! - points[2 * i + 1]!);
  const lines = points.length / 2 - 1;
  if (lines < fewestLines) return found;
  let first = 0;
  while (first + fewestLines <= lines) {
    const circle = bent.has(first) ? undefined : through(corner(first), corner(first + 1), corner(first + 2));
    let last = first + 2;
    let sweep = 0;
    if (circle && !bent.has(first + 1)) {
      const one = turned(circle, corner(first), corner(first + 1));
      const two = turned(circle, corner(first + 1), corner(first + 2));
      if (alike(one, two)) {
        sweep = one + two;
        while (last < lines && !bent.has(last)) {
          const next = turned(circle, corner(last), corner(last + 1));
          const [x, y] = corner(last + 1);
          const off = Math.abs(Math.hypot(x - circle.x, y - circle.y) - circle.radius);
          // The circle comes from three near corners, so that rounding moves it: a wider margin than for a curve.
          if (!alike(one, next) || off > 4 * offCircle * circle.radius) break;
          if (!(lengthAfter(last) > 0) || Math.abs(sweep + next) > 2 * Math.PI + 1e-3) break;
          sweep += next;
          last++;
        }
      }
    }
    const whole = circle && last - first >= fewestLines && Math.abs(sweep) >= shortest;
    const better = whole
      ? through(
          corner(first),
          corner((first + last) >> 1),
          corner(last - (closed && Math.abs(sweep) > 6 ? 1 : 0)),
        )
      : undefined;
    if (circle && whole) found.push({ ...(better ?? circle), sweep, first, last });
    first = whole ? last : first + 1;
  }
  return found;
}

const alike = (one: number, other: number): boolean =>
  Math.abs(one) < sharpest && one * other > 0 && Math.abs(one - other) < 0.15 * Math.abs(one);

/** Neighbours on one circle as one arc: a circle is written as four curves. */
export function joined(arcs: readonly Circular[], points: readonly number[]): readonly Circular[] {
  const list: Circular[] = [];
  for (const arc of [...arcs].sort((a, b) => a.first - b.first)) {
    const before = list.at(-1);
    if (before && arc.first < before.last) continue;
    const same =
      before &&
      before.last === arc.first &&
      before.sweep * arc.sweep > 0 &&
      Math.abs(before.sweep + arc.sweep) < 2 * Math.PI + 0.02 &&
      Math.hypot(before.x - arc.x, before.y - arc.y) < 2 * offCircle * arc.radius &&
      Math.abs(before.radius - arc.radius) < 2 * offCircle * arc.radius;
    if (same) list[list.length - 1] = { ...before, sweep: before.sweep + arc.sweep, last: arc.last };
    else list.push(arc);
  }
  return list.filter((arc) => arc.last > arc.first && points.length >= 4);
}

/** The circle through three points; undefined where they lie in a line. */
const through = (a: Pair, b: Pair, c: Pair): Omit<Circle, "sweep"> | undefined => {
  const [bx, by] = [b[0] - a[0], b[1] - a[1]];
  const [cx, cy] = [c[0] - a[0], c[1] - a[1]];
  const d = 2 * (bx * cy - by * cx);
  const [bb, cc] = [bx * bx + by * by, cx * cx + cy * cy];
  const [x, y] = [(cy * bb - by * cc) / d, (bx * cc - cx * bb) / d];
  const radius = Math.hypot(x, y);
  return Number.isFinite(radius) && radius > 0 ? { x: a[0] + x, y: a[1] + y, radius } : undefined;
};

/** Angle at the centre from one point to another, -π … π. [rad] */
const turned = (circle: { x: number; y: number }, from: Pair, to: Pair): number => {
  const [ax, ay] = [from[0] - circle.x, from[1] - circle.y];
  const [bx, by] = [to[0] - circle.x, to[1] - circle.y];
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
};
