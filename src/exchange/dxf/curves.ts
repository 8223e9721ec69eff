import { type Said, say } from "#engine";
import { identity } from "../plan/page/matrix.ts";
import { type Entity, finite, numbersOf, radians } from "./entity.ts";
import { cross } from "./extrusion.ts";
import { type DxfRecord, numberOf } from "./record.ts";
import { curveThrough, isSound, splinePoints } from "./spline.ts";
import { arcPieces, type Stroke, type StrokeBuilder, strokeBuilder } from "./stroke.ts";

/** Strokes of an entity; a sentence where it cannot be drawn. */
export type Strokes = readonly Stroke[] | Said;

/** How one type of entity is drawn. */
export type StrokeReader = (record: DxfRecord, entity: Entity) => Strokes;

const lineStroke: StrokeReader = (record) => {
  const [x1, y1, x2, y2] = numbersOf(record, [10, 20, 11, 21]);
  return [{ points: [x1, y1, x2, y2], arcs: [] }];
};

const arcStroke: StrokeReader = (record, { plane }) => {
  const [x, y, radius, from, to] = numbersOf(record, [10, 20, 40, 50, 51]);
  if (!(radius > 0)) return noSize;
  const stroke = strokeBuilder();
  stroke.arc({ x, y, radius, from: radians(from), sweep: sweepOf(radians(from), radians(to)) });
  return [stroke.done(plane)];
};

const circleStroke: StrokeReader = (record, { plane }) => {
  const [x, y, radius] = numbersOf(record, [10, 20, 40]);
  if (!(radius > 0)) return noSize;
  const stroke = strokeBuilder();
  stroke.arc({ x, y, radius, from: 0, sweep: 2 * Math.PI });
  return [stroke.done(plane)];
};

/** An ellipse is written in the world's coordinates: centre, end of the longer axis, ratio of the axes, and two parameters. */
const ellipseStroke: StrokeReader = (record, { direction }) => {
  const [x, y, majorX, majorY, ratio] = numbersOf(record, [10, 20, 11, 21, 40]);
  const [majorZ, from, to] = numbersOf(record, [31, 41, 42]);
  const length = Math.hypot(...direction) || 1;
  const normal = [direction[0] / length, direction[1] / length, direction[2] / length] as const;
  const minor = cross(normal, [majorX, majorY, finite(majorZ, 0)]);
  if (!(Math.hypot(majorX, majorY, finite(majorZ, 0)) > 0) || !Number.isFinite(ratio)) return noSize;
  const stroke = strokeBuilder();
  const ellipse = {
    centre: [x, y],
    major: [majorX, majorY],
    minor: [minor[0] * ratio, minor[1] * ratio],
    from: finite(from, 0),
    sweep: sweepOf(finite(from, 0), finite(to, 2 * Math.PI)),
  } as const;
  drawEllipse(stroke, ellipse);
  return [stroke.done(identity)];
};

/** An ellipse by its centre and two half axes at right angles, seen from above. */
export interface Ellipse {
  readonly centre: readonly [number, number];
  readonly major: readonly [number, number];
  readonly minor: readonly [number, number];
  /** Parameter where it begins, and how far it runs; not an angle of the plan unless the axes are equal. [rad] */
  readonly from: number;
  readonly sweep: number;
}

/** Puts an ellipse into a stroke; as an arc of a circle where its axes are equal. */
export function drawEllipse(stroke: StrokeBuilder, { centre, major, minor, from, sweep }: Ellipse): void {
  const radius = Math.hypot(...major);
  const round =
    Math.abs(Math.hypot(...minor) - radius) <= 1e-6 * radius &&
    Math.abs(major[0] * minor[0] + major[1] * minor[1]) <= 1e-6 * radius ** 2;
  if (round) {
    const turned = major[0] * minor[1] - major[1] * minor[0] < 0 ? -1 : 1;
    const start = Math.atan2(major[1], major[0]) + turned * from;
    stroke.arc({ x: centre[0], y: centre[1], radius, from: start, sweep: turned * sweep });
    return;
  }
  stroke.curve((t) => {
    const angle = from + sweep * t;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return [centre[0] + major[0] * cos + minor[0] * sin, centre[1] + major[1] * cos + minor[1] * sin];
  }, arcPieces(sweep));
}

const splineStroke: StrokeReader = (record) => {
  const knots: number[] = [];
  const weights: number[] = [];
  const controls: number[] = [];
  const through: number[] = [];
  let [degree, flags] = [3, 0];
  for (let i = 0; i < record.count; i++) {
    const code = record.code(i);
    if (code === 40) knots.push(record.number(i));
    else if (code === 41) weights.push(record.number(i));
    else if (code === 10 || code === 20) controls.push(record.number(i));
    else if (code === 11 || code === 21) through.push(record.number(i));
    else if (code === 71) degree = record.number(i);
    else if (code === 70) flags = record.number(i);
  }
  if (controls.length === 0) {
    if (through.length < 4 || through.length % 2 !== 0) return broken;
    return [{ points: curveThrough(through, (flags & 1) === 1 && through.length >= 6), arcs: [] }];
  }
  const points = splineStrokePoints({ degree, knots, controls, weights });
  return points ? [{ points, arcs: [] }] : broken;
};

/** Points along a spline as a file writes it; undefined where its parts do not fit each other. */
export function splineStrokePoints(written: {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly controls: readonly number[];
  readonly weights: readonly number[];
}): number[] | undefined {
  const count = written.controls.length / 2;
  const weights =
    written.weights.length === 0 ? new Array<number>(Math.floor(count)).fill(1) : written.weights;
  const spline = { ...written, weights };
  return isSound(spline) ? splinePoints(spline) : undefined;
}

/** Corners of a filled shape are written crosswise: the third and the fourth change places. */
const solidStroke: StrokeReader = (record, { plane }) => {
  const [x1, y1, x2, y2, x3, y3, x4, y4] = numbersOf(record, [10, 20, 11, 21, 12, 22, 13, 23]);
  const stroke = strokeBuilder();
  stroke.to(x1, y1);
  stroke.to(x2, y2);
  if (Number.isFinite(x4 + y4)) stroke.to(x4, y4);
  stroke.to(x3, y3);
  stroke.close();
  return [stroke.done(plane)];
};

const faceStrokes: StrokeReader = (record) => {
  const [x1, y1, x2, y2, x3, y3, x4, y4] = numbersOf(record, [10, 20, 11, 21, 12, 22, 13, 23]);
  const hidden = finite(numberOf(record, 70, 0), 0);
  const corners = [[x1, y1], [x2, y2], [x3, y3], ...(Number.isFinite(x4 + y4) ? [[x4, y4]] : [])];
  const edges = corners.map((corner, i) => ({
    points: [...corner, ...corners[(i + 1) % corners.length]!],
    arcs: [],
  }));
  return edges.filter((_, i) => (hidden & (1 << i)) === 0);
};

/** Types of one record that are drawn with one or more strokes. */
export const curveReaders: Readonly<Record<string, StrokeReader>> = {
  LINE: lineStroke,
  ARC: arcStroke,
  CIRCLE: circleStroke,
  ELLIPSE: ellipseStroke,
  SPLINE: splineStroke,
  SOLID: solidStroke,
  TRACE: solidStroke,
  "3DFACE": faceStrokes,
};

/** Angle from one direction counter-clockwise to another; a full turn where both are one. [rad] */
export function sweepOf(from: number, to: number): number {
  const turn = 2 * Math.PI;
  const sweep = (to - from) % turn;
  const positive = sweep < 0 ? sweep + turn : sweep;
  return positive < 1e-9 ? turn : positive;
}

const noSize = say`it has no size`;
const broken = say`its points and knots do not fit each other`;
