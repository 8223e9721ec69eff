import { say } from "#engine";
import { identity, type Matrix } from "../plan/page/matrix.ts";
import type { Strokes } from "./curves.ts";
import { type Entity, finite, numbersOf } from "./entity.ts";
import { type DxfRecord, numberOf } from "./record.ts";
import { type Stroke, strokeBuilder } from "./stroke.ts";

/** A corner of a polyline, and the bulge of the piece behind it. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** The stroke of corners with bulges, after a matrix. */
export function cornerStroke(corners: readonly Corner[], how: { closed: boolean; plane: Matrix }): Stroke {
  const stroke = strokeBuilder();
  corners.forEach((corner, i) => {
    if (i === 0) stroke.to(corner.x, corner.y);
    else stroke.bulge(corner.x, corner.y, corners[i - 1]!.bulge);
  });
  const [first, last] = [corners[0], corners.at(-1)];
  if (how.closed && first && last && corners.length > 1) stroke.bulge(first.x, first.y, last.bulge);
  return stroke.done(how.plane);
}

/** A polyline whose corners stand in its own record. */
export function lightPolyline(record: DxfRecord, { plane }: Entity): Strokes {
  const corners: { x: number; y: number; bulge: number }[] = [];
  let flags = 0;
  for (let i = 0; i < record.count; i++) {
    const code = record.code(i);
    const last = corners.at(-1);
    if (code === 10) corners.push({ x: record.number(i), y: Number.NaN, bulge: 0 });
    else if (code === 20 && last) last.y = record.number(i);
    else if (code === 42 && last) last.bulge = finite(record.number(i), 0);
    else if (code === 70) flags = record.number(i);
  }
  return corners.length < 2 ? fewCorners : [cornerStroke(corners, { closed: (flags & CLOSED) !== 0, plane })];
}

/** A polyline whose corners follow as records of their own. */
export interface OpenPolyline {
  add(vertex: DxfRecord): void;
  done(): Strokes;
}

const CLOSED = 1;
const IN_SPACE = 8;
const MESHES = 16 + 64;
/** A corner of the frame that a smoothed polyline was drawn with; the curve itself follows in other corners. */
const FRAME = 16;

/** Begins a polyline with the record that heads it. */
export function openPolyline(head: DxfRecord, { plane }: Entity): OpenPolyline {
  const flags = finite(numberOf(head, 70, 0), 0);
  const corners: Corner[] = [];
  return {
    add: (vertex) => {
      const [x, y, bulge, kind] = numbersOf(vertex, [10, 20, 42, 70]);
      if ((finite(kind, 0) & FRAME) === 0)
        corners.push({ x, y, bulge: flags & IN_SPACE ? 0 : finite(bulge, 0) });
    },
    done: () => {
      if (flags & MESHES) return say`solid bodies and meshes are not read`;
      if (corners.length < 2) return fewCorners;
      return [
        cornerStroke(corners, { closed: (flags & CLOSED) !== 0, plane: flags & IN_SPACE ? identity : plane }),
      ];
    },
  };
}

/**
 * A bundle of parallel lines along one way, as walls are drawn with: each corner says for each line how far from the way
 * it lies, along the corner's mitre.
 */
export function bundleStrokes(record: DxfRecord): Strokes {
  const lines: { points: number[]; arcs: [] }[] = [];
  let flags = 0;
  let corner = { x: Number.NaN, y: Number.NaN, mitreX: Number.NaN, mitreY: Number.NaN };
  let line = -1;
  let first = false;
  for (let i = 0; i < record.count; i++) {
    const code = record.code(i);
    const value = record.number(i);
    if (code === 71) flags = value;
    else if (code === 11) {
      corner = { x: value, y: Number.NaN, mitreX: Number.NaN, mitreY: Number.NaN };
      line = -1;
    } else if (code === 21) corner.y = value;
    else if (code === 13) corner.mitreX = value;
    else if (code === 23) corner.mitreY = value;
    else if (code === 74) {
      line++;
      first = value > 0;
    } else if (code === 41 && first && line >= 0) {
      first = false;
      lines[line] ??= { points: [], arcs: [] };
      lines[line]!.points.push(corner.x + value * corner.mitreX, corner.y + value * corner.mitreY);
    }
  }
  const strokes = lines.filter((each) => each && each.points.length >= 4);
  if (strokes.length === 0) return fewCorners;
  if (flags & 2) for (const { points } of strokes) points.push(points[0]!, points[1]!);
  return strokes;
}

const fewCorners = say`it has fewer than two corners`;
