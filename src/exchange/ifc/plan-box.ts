import type { Metres, Point } from "#engine";
import { hullOf } from "../region.ts";
import type { ElementMesh } from "./kernel.ts";

/** A body seen from above as the smallest turned rectangle around it, with its heights in the file's world. */
export interface PlanBox {
  readonly centre: Point;
  /** Unit vector along the longer side. */
  readonly along: Point;
  /** Longer and shorter side. [m] */
  readonly length: Metres;
  readonly width: Metres;
  readonly low: Metres;
  readonly high: Metres;
}

/** Smallest turned rectangle around a body in plan; undefined where it has no corners or one is not finite. */
export function planBox(mesh: ElementMesh): PlanBox | undefined {
  const points: Point[] = [];
  let [low, high] = [Infinity, -Infinity];
  for (const { corners } of mesh.parts) {
    for (let i = 0; i < corners.length; i += 3) {
      const x = corners[i]!;
      const y = corners[i + 1]!;
      const z = corners[i + 2]!;
      if (!Number.isFinite(x + y + z)) return undefined;
      if (!isKnown(points, x, y)) points.push([x, y]);
      if (z < low) low = z;
      if (z > high) high = z;
    }
  }
  const hull = hullOf(points);
  if (hull.length < 2) return undefined;
  return { ...smallestRectangle(hull), low, high };
}

/** Whether the place is one of the last few: a body has each of its edges many times, upright ones in the same place. */
const isKnown = (points: readonly Point[], x: Metres, y: Metres): boolean => {
  for (let i = points.length - 1; i >= 0 && i >= points.length - 8; i--)
    if (points[i]![0] === x && points[i]![1] === y) return true;
  return false;
};

/** Smallest turned rectangle around a ring. */
export const boxAround = (ring: readonly Point[]): Rectangle => smallestRectangle(hullOf(ring));

type Rectangle = Pick<PlanBox, "centre" | "along" | "length" | "width">;

/** One side of the smallest rectangle lies along a side of the hull (Freeman and Shapira 1975). */
const smallestRectangle = (hull: readonly Point[]): Rectangle => {
  let best: Rectangle | undefined;
  let least = Infinity;
  hull.forEach((a, i) => {
    const b = hull[(i + 1) % hull.length]!;
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (size < 1e-6) return;
    const u: Point = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
    const rectangle = rectangleAlong(hull, u);
    const area = rectangle.length * rectangle.width;
    // A strip of no width has the area 0 in one direction only, which is the right one.
    if (area < least - 1e-9) [best, least] = [rectangle, area];
  });
  return best ?? { centre: hull[0]!, along: [1, 0], length: 0, width: 0 };
};

const rectangleAlong = (hull: readonly Point[], u: Point): Rectangle => {
  const n: Point = [-u[1], u[0]];
  const [s, t] = [spread(hull, u), spread(hull, n)];
  const [su, tn] = [(s[0] + s[1]) / 2, (t[0] + t[1]) / 2];
  const centre: Point = [su * u[0] + tn * n[0], su * u[1] + tn * n[1]];
  const [length, width] = [s[1] - s[0], t[1] - t[0]];
  return length >= width
    ? { centre, along: u, length, width }
    : { centre, along: n, length: width, width: length };
};

/** Least and largest distance of points along a direction. [m] */
export const spread = (points: readonly Point[], u: Point): readonly [number, number] => {
  let [low, high] = [Infinity, -Infinity];
  for (const p of points) {
    const s = p[0] * u[0] + p[1] * u[1];
    low = Math.min(low, s);
    high = Math.max(high, s);
  }
  return [low, high];
};
