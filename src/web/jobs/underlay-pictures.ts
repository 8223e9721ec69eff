import type { Point } from "#engine";
import type { JobFile, JobUnderlay } from "#job";

/** A projective map of the plane, row by row: (x, y) → (X/W, Y/W). */
export type PlaneMap = readonly number[];

/** A picture under the plan, with the map from its pixels to the plan. */
export interface UnderlayPicture {
  readonly id: string;
  readonly storey: string;
  readonly source: string;
  readonly width: number;
  readonly height: number;
  readonly map: PlaneMap;
}

const made = new WeakMap<JobUnderlay, UnderlayPicture>();

/** The pictures that are shown under a storey; the same objects while they are the same. */
export function picturesOf(underlays: JobFile["underlays"], storey: string): readonly UnderlayPicture[] {
  return underlays.flatMap((record) => {
    const { picture } = record;
    if (!record.shown || record.storey !== storey || !picture) return [];
    const known = made.get(record) ?? {
      id: record.id,
      storey,
      source: `data:${picture.type};base64,${picture.data}`,
      width: picture.width,
      height: picture.height,
      map: product(placement(record), picture.map),
    };
    made.set(record, known);
    return [known];
  });
}

/** Corners of a picture on the plan. [m] */
export const cornersOf = ({ width, height, map }: UnderlayPicture): readonly Point[] =>
  (
    [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ] as const
  ).flatMap((pixel) => mapped(map, pixel) ?? []);

/** A place under a map; undefined on or beyond its horizon. */
function mapped(map: PlaneMap, [x, y]: Point): readonly [Point] | undefined {
  const w = map[6]! * x + map[7]! * y + map[8]!;
  if (!(w > 0)) return undefined;
  return [[(map[0]! * x + map[1]! * y + map[2]!) / w, (map[3]! * x + map[4]! * y + map[5]!) / w]];
}

function placement({ origin, turn }: JobUnderlay): PlaneMap {
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return [c, -s, origin[0], s, c, origin[1], 0, 0, 1];
}

/** First `b`, then `a`. */
export const product = (a: PlaneMap, b: PlaneMap): PlaneMap =>
  Array.from({ length: 9 }, (_, at) => {
    const [row, column] = [Math.floor(at / 3), at % 3];
    return a[3 * row]! * b[column]! + a[3 * row + 1]! * b[3 + column]! + a[3 * row + 2]! * b[6 + column]!;
  });
