import { say } from "#engine";
import { drawEllipse, type Strokes, splineStrokePoints, sweepOf } from "./curves.ts";
import { type Entity, radians } from "./entity.ts";
import { type Corner, cornerStroke } from "./polylines.ts";
import type { DxfRecord } from "./record.ts";
import { placedStroke, type Stroke, type StrokeBuilder, strokeBuilder } from "./stroke.ts";

/** A boundary is written as one polyline. */
const POLYLINE = 2;

/**
 * Outlines of a hatched or filled area. Its pattern is not drawn.
 *
 * The boundary stands in the record as a sequence in which the same codes return with other meanings, so it is read in order.
 */
export function hatchStrokes(record: DxfRecord, { plane }: Entity): Strokes {
  const groups = inOrder(record);
  const boundaries = groups.skipTo(91);
  if (!(boundaries > 0)) return say`it has no boundary`;
  const strokes: Stroke[] = [];
  for (let b = 0; b < boundaries && groups.at < record.count; b++) {
    const flags = groups.skipTo(92);
    if (!Number.isFinite(flags)) break;
    if (flags & POLYLINE) {
      const stroke = polylineBoundary(groups);
      if (stroke) strokes.push(placedStroke(stroke, plane));
      continue;
    }
    const edges = groups.skipTo(93);
    const stroke = strokeBuilder();
    for (let e = 0; e < edges && groups.at < record.count; e++) edge(groups, stroke);
    strokes.push(stroke.done(plane));
  }
  return strokes.length > 0 ? strokes : say`it has no boundary`;
}

/** Groups of a record, taken one after the other. */
interface Groups {
  readonly at: number;
  /** Value of the next group with the code, which is passed; NaN where none comes. */
  skipTo(code: number): number;
  /** Value of the next group if it has the code; it is passed then. */
  take(code: number): number | undefined;
  /** Values of the next groups as long as their codes are among these. */
  run(codes: readonly number[]): readonly { readonly code: number; readonly value: number }[];
}

const inOrder = (record: DxfRecord): Groups => {
  let at = 0;
  const take = (code: number): number | undefined =>
    at < record.count && record.code(at) === code ? record.number(at++) : undefined;
  return {
    get at() {
      return at;
    },
    skipTo: (code) => {
      while (at < record.count && record.code(at) !== code) at++;
      return take(code) ?? Number.NaN;
    },
    take,
    run: (codes) => {
      const found: { code: number; value: number }[] = [];
      while (at < record.count && codes.includes(record.code(at))) {
        found.push({ code: record.code(at), value: record.number(at) });
        at++;
      }
      return found;
    },
  };
};

const polylineBoundary = (groups: Groups): Stroke | undefined => {
  groups.skipTo(72);
  groups.take(73);
  const count = groups.skipTo(93);
  const corners: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of groups.run([10, 20, 42])) {
    const last = corners.at(-1);
    if (code === 10) {
      if (corners.length >= count) break;
      corners.push({ x: value, y: Number.NaN, bulge: 0 });
    } else if (last && code === 20) last.y = value;
    else if (last && Number.isFinite(value)) last.bulge = value;
  }
  const read: readonly Corner[] = corners;
  return read.length < 2 ? undefined : cornerStroke(read, { closed: true, plane: [1, 0, 0, 1, 0, 0] });
};

const edge = (groups: Groups, stroke: StrokeBuilder): void => {
  switch (groups.skipTo(72)) {
    case 1: {
      const from = pair(groups, 10);
      const to = pair(groups, 11);
      stroke.to(...from);
      stroke.to(...to);
      return;
    }
    case 2: {
      const [x, y] = pair(groups, 10);
      const radius = groups.take(40) ?? Number.NaN;
      const { from, sweep } = turn(groups);
      if (radius > 0) stroke.arc({ x, y, radius, from, sweep });
      return;
    }
    case 3: {
      const centre = pair(groups, 10);
      const major = pair(groups, 11);
      const ratio = groups.take(40) ?? Number.NaN;
      const minor = [-major[1] * ratio, major[0] * ratio] as const;
      drawEllipse(stroke, { centre, major, minor, ...turn(groups) });
      return;
    }
    case 4: {
      splineEdge(groups, stroke);
      return;
    }
  }
};

const pair = (groups: Groups, code: number): readonly [number, number] => [
  groups.take(code) ?? Number.NaN,
  groups.take(code + 10) ?? Number.NaN,
];

/** Angles of clockwise edges are counted clockwise too. */
const turn = (groups: Groups): { readonly from: number; readonly sweep: number } => {
  const from = radians(groups.take(50) ?? Number.NaN);
  const to = radians(groups.take(51) ?? Number.NaN);
  const sweep = sweepOf(from, to);
  return groups.take(73) === 0 ? { from: -from, sweep: -sweep } : { from, sweep };
};

const splineEdge = (groups: Groups, stroke: StrokeBuilder): void => {
  const degree = groups.take(94) ?? 3;
  groups.run([73, 74]);
  const knotCount = groups.take(95) ?? 0;
  groups.take(96);
  const knots = groups.run([40]).map(({ value }) => value);
  const controls: number[] = [];
  const weights: number[] = [];
  for (const { code, value } of groups.run([10, 20, 42])) (code === 42 ? weights : controls).push(value);
  const points =
    knots.length === knotCount ? splineStrokePoints({ degree, knots, controls, weights }) : undefined;
  for (let i = 0; points && i + 1 < points.length; i += 2) stroke.to(points[i]!, points[i + 1]!);
};
