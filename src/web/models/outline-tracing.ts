import type { Metres, Point, Radians } from "#engine";
import { wholeTurn } from "#engine";

/** How a picture of a data sheet lies under the drawing. Places in the picture's own pixels, y down. */
export interface Tracing {
  readonly centre: Point | undefined;
  /** A place at a known distance from the centre. */
  readonly mark: Point | undefined;
  readonly distance: Metres;
  /** Direction of the notch in the picture, counter-clockwise from the right. */
  readonly notch: Radians;
}

export type PolarPoint = readonly [angle: Radians, radius: Metres];

/** Metres in one pixel of the picture; undefined until centre and mark are set apart. */
export function metresPerPixel({ centre, mark, distance }: Tracing): number | undefined {
  if (centre === undefined || mark === undefined) return undefined;
  const pixels = Math.hypot(mark[0] - centre[0], mark[1] - centre[1]);
  return pixels < 1 || !(distance > 0) ? undefined : distance / pixels;
}

/** A place in the picture as angle from the notch and radius; undefined until the picture has its scale. */
export function polarOf(tracing: Tracing, [x, y]: Point): PolarPoint | undefined {
  const scale = metresPerPixel(tracing);
  if (scale === undefined || tracing.centre === undefined) return undefined;
  const [dx, dy] = [x - tracing.centre[0], tracing.centre[1] - y];
  return [wholeTurn(Math.atan2(dy, dx) - tracing.notch), Math.hypot(dx, dy) * scale];
}

/** The point that a press in the picture sets: to a tenth of a degree and a centimetre, finer than a hand is. */
export function tracedPoint(tracing: Tracing, pixel: Point): PolarPoint | undefined {
  const point = polarOf(tracing, pixel);
  if (point === undefined) return undefined;
  const tenths = Math.round((point[0] * 1800) / Math.PI) % 3600;
  return [(tenths * Math.PI) / 1800, Math.round(point[1] * 100) / 100];
}

/** The place in the picture of a polar point. */
export function pixelOf(tracing: Tracing, [angle, radius]: PolarPoint): Point | undefined {
  const scale = metresPerPixel(tracing);
  if (scale === undefined || tracing.centre === undefined) return undefined;
  const direction = angle + tracing.notch;
  return [
    tracing.centre[0] + (Math.cos(direction) * radius) / scale,
    tracing.centre[1] - (Math.sin(direction) * radius) / scale,
  ];
}

/** Two points nearer to each other in angle than this are one: the newer counts. */
const sameAngle: Radians = Math.PI / 360;

/** Points with one more, in order of angle. */
export function withPoint(points: readonly PolarPoint[], point: PolarPoint): readonly PolarPoint[] {
  const apart = (angle: Radians) => {
    const turn = wholeTurn(angle - point[0]);
    return Math.min(turn, 2 * Math.PI - turn);
  };
  return [...points.filter(([angle]) => apart(angle) > sameAngle), point].sort((a, b) => a[0] - b[0]);
}
