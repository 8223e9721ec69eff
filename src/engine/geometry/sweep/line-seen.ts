import { nearestOnSegment } from "../measure.ts";
import type { Point } from "../shapes.ts";
import { keyX, keyY } from "./direction-key.ts";
import type { Wedges } from "./wedges.ts";

/**
 * The seen point of a line that lies nearest to the eye.
 *
 * @param wedges - Result of a sweep. @param line - Ends; the same point twice for a single place. [m]
 * @returns Nearest seen point [m]; undefined where nothing of the line is seen.
 * @source DERIVED-HERE
 * @example A line that begins behind a wall: where it comes out
 */
export function nearestSeen(wedges: Wedges, line: readonly [Point, Point]): Point | undefined {
  const { keys, first, near, far, lines, eye } = wedges;
  const a: Point = [line[0][0] - eye[0], line[0][1] - eye[1]];
  const b: Point = [line[1][0] - eye[0], line[1][1] - eye[1]];
  let best: Point | undefined;
  let least = Infinity;
  const side = (edge: number, sign: 1 | -1): HalfPlane => ({
    nx: sign * (lines.dy[edge] as number),
    ny: -sign * (lines.dx[edge] as number),
    c: sign * (lines.c[edge] as number),
  });
  for (let j = 0; j < keys.length; j++) {
    if (first[j] === first[j + 1]) continue;
    const from = keys[j] as number;
    const to = j + 1 < keys.length ? (keys[j + 1] as number) : (keys[0] as number) + 4;
    const wedge: HalfPlane[] = [
      { nx: -keyY(from), ny: keyX(from), c: 0 },
      { nx: keyY(to), ny: -keyX(to), c: 0 },
    ];
    for (let i = first[j] as number; i < (first[j + 1] as number); i++) {
      const sides = [...wedge, side(far[i] as number, -1)];
      if ((near[i] as number) >= 0) sides.push(side(near[i] as number, 1));
      const part = clipped([a, b], sides);
      if (!part) continue;
      const point = nearestOnSegment(EYE, part);
      const distance = Math.hypot(point[0], point[1]);
      if (distance < least) {
        least = distance;
        best = [point[0] + eye[0], point[1] + eye[1]];
      }
    }
  }
  return best;
}

/** Points p with n · p ≥ c. */
interface HalfPlane {
  readonly nx: number;
  readonly ny: number;
  readonly c: number;
}

function clipped(
  line: readonly [Point, Point],
  sides: readonly HalfPlane[],
): readonly [Point, Point] | undefined {
  const [a, b] = line;
  let [low, high] = [0, 1];
  for (const { nx, ny, c } of sides) {
    const slack = 1e-9 * Math.hypot(nx, ny);
    const at = nx * a[0] + ny * a[1] - c + slack;
    const rise = nx * (b[0] - a[0]) + ny * (b[1] - a[1]);
    if (rise === 0) {
      if (at < 0) return undefined;
    } else if (rise > 0) low = Math.max(low, -at / rise);
    else high = Math.min(high, -at / rise);
    if (low > high) return undefined;
  }
  const point = (t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
  return [point(low), point(high)];
}

/** The eye, about which the wedges lie. */
const EYE: Point = [0, 0];
