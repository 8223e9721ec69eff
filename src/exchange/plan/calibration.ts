import type { Metres, Point, Problem } from "#engine";

/** From the pixels of a picture (x right, y down) to the plan: the projective map, row by row. */
export type PictureMap = readonly [
  ...[number, number, number],
  ...[number, number, number],
  ...[number, number, number],
];

/** A place of the picture on the plan; undefined where it lies on or beyond the horizon. [m] */
export function onPlan(map: PictureMap, [x, y]: Point): Point | undefined {
  const w = map[6] * x + map[7] * y + map[8];
  if (!(w > 0)) return undefined;
  return [(map[0] * x + map[1] * y + map[2]) / w, (map[3] * x + map[4] * y + map[5]) / w];
}

/**
 * The map of a picture taken straight from the front, a scan or a print, from two places and the length between them: the
 * same size everywhere, not turned, y up, the lower left corner of the picture at the origin.
 *
 * @param places - Two places in the picture. [px]
 * @param known.length - Distance between them in the building. [m]
 * @param known.height - Height of the picture. [px]
 * @example 200 px are 5 m: one pixel is 0.025 m
 */
export function twoPointMap(
  places: readonly [Point, Point],
  known: { readonly length: Metres; readonly height: number },
): { readonly map: PictureMap; readonly metres: Metres } | Problem {
  const [a, b] = places;
  const pixels = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const metres = known.length / pixels;
  // Two clicks nearer than this are a slip: a tenth of a pixel more or less would change the scale by 5 %.
  if (!(pixels >= 2) || !(known.length > 0) || !Number.isFinite(metres))
    return { code: "plan-calibration-short", values: {} };
  return { metres, map: [metres, 0, 0, 0, -metres, known.height * metres, 0, 0, 1] };
}

/**
 * The map of a picture taken at an angle, from four places and where they lie on the plan.
 *
 * The eight unknowns of the projective map x' = (a x + b y + c) / (g x + h y + 1), y' = (d x + e y + f) / (g x + h y + 1)
 * solve eight linear equations, two for each place; both sides are shifted and scaled to about 1 first, so that pixels in
 * thousands and metres do not lose digits to each other.
 *
 * @param places - In order round a four-cornered figure. [px]
 * @param plan - Where they lie. [m]
 * @returns The map; or the problem where three places lie in a line, the figure is not convex, or the order crosses
 * @source HARTLEY-ZISSERMAN, section 4.1, direct linear transformation with normalisation
 */
export function fourPointMap(
  places: readonly [Point, Point, Point, Point],
  plan: readonly [Point, Point, Point, Point],
): { readonly map: PictureMap } | Problem {
  const problem: Problem = { code: "plan-calibration-in-line", values: {} };
  const [turned, laid] = [turnsOf(places), turnsOf(plan)];
  if (turned === 0 || laid === 0) return problem;
  const [from, to] = [normal(places), normal(plan)];
  const rows: number[][] = [];
  for (let i = 0; i < 4; i++) {
    const [x, y] = from.apply(places[i]!);
    const [u, v] = to.apply(plan[i]!);
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u], [0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  }
  const solved = solve(rows);
  if (!solved) return problem;
  const core = [...solved, 1];
  const map = product3(product3(to.back, core), from.matrix);
  // The sign of a projective map is free; here it is the one that sees all four places in front.
  const w = map[6]! * places[0][0] + map[7]! * places[0][1] + map[8]!;
  const sign = w < 0 ? -1 : 1;
  const whole = map.map((value) => sign * value) as unknown as PictureMap;
  return places.every((place) => onPlan(whole, place)) ? { map: whole } : problem;
}

/** Least height of a triangle of three places over the figure's size: flatter ones magnify a click's slip more than tenfold. */
const flattest = 0.02;

/** 1 or -1 for a convex figure that goes round once, by its direction; 0 otherwise. */
const turnsOf = (ring: readonly Point[]): number => {
  const size = Math.max(...ring.flatMap((a) => ring.map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]))));
  if (!(size > 0) || !Number.isFinite(size)) return 0;
  const signs = ring.map((a, i) => {
    const [b, c] = [ring[(i + 1) % 4]!, ring[(i + 2) % 4]!];
    const cross = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    const longest = Math.max(
      Math.hypot(b[0] - a[0], b[1] - a[1]),
      Math.hypot(c[0] - b[0], c[1] - b[1]),
      Math.hypot(c[0] - a[0], c[1] - a[1]),
    );
    return Math.abs(cross) / longest > flattest * size ? Math.sign(cross) : 0;
  });
  return signs.every((sign) => sign === signs[0]) ? signs[0]! : 0;
};

/** A shift and a scale that bring points to about 1 round the origin, and back. */
const normal = (points: readonly Point[]) => {
  const x = points.reduce((sum, point) => sum + point[0], 0) / points.length;
  const y = points.reduce((sum, point) => sum + point[1], 0) / points.length;
  const mean = points.reduce((sum, p) => sum + Math.hypot(p[0] - x, p[1] - y), 0) / points.length;
  const s = Math.SQRT2 / mean;
  return {
    apply: (point: Point): Point => [(point[0] - x) * s, (point[1] - y) * s],
    matrix: [s, 0, -x * s, 0, s, -y * s, 0, 0, 1],
    back: [1 / s, 0, x, 0, 1 / s, y, 0, 0, 1],
  };
};

/** Solves rows of [coefficients …, right side] by elimination with the largest pivot; undefined where they do not determine it. */
const solve = (rows: number[][]): number[] | undefined => {
  const n = rows.length;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    const head = rows[column]!;
    if (!(Math.abs(head[column]!) > 1e-10)) return undefined;
    for (let row = 0; row < n; row++) {
      if (row === column) continue;
      const factor = rows[row]![column]! / head[column]!;
      for (let i = column; i <= n; i++) rows[row]![i] = rows[row]![i]! - factor * head[i]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
};

const product3 = (a: readonly number[], b: readonly number[]): number[] =>
  Array.from({ length: 9 }, (_, i) =>
    [0, 1, 2].reduce((sum, k) => sum + a[3 * Math.floor(i / 3) + k]! * b[3 * k + (i % 3)]!, 0),
  );
