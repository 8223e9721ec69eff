import type { Point } from "../geometry/index.ts";
import type { Metres } from "../quantity/index.ts";

/** Places by squares, so that in a hall only those near a device are looked at. */
export interface PlaceField {
  readonly add: (at: Point) => void;
  /** Numbers of places among which are all that lie within a distance; some lie farther. In no order. */
  readonly near: (at: Point, distance: Metres) => number[];
}

/** Side of a square. [m] */
const SIDE: Metres = 2;

/**
 * An empty field.
 *
 * @returns The field; places are numbered from 0 as they come.
 * @example Places 1 m and 50 m away, asked for 3 m: the first alone
 */
export function placeField(): PlaceField {
  const squares = new Map<number, Map<number, number[]>>();
  let count = 0;
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  return {
    add: ([x, y]) => {
      const [i, j] = [Math.floor(x / SIDE), Math.floor(y / SIDE)];
      [minX, minY, maxX, maxY] = [Math.min(minX, i), Math.min(minY, j), Math.max(maxX, i), Math.max(maxY, j)];
      const column = squares.get(i) ?? new Map<number, number[]>();
      const square = column.get(j) ?? [];
      square.push(count++);
      column.set(j, square);
      squares.set(i, column);
    },
    near: ([x, y], distance) => {
      if (!(distance >= 0)) return [];
      const from = [Math.floor((x - distance) / SIDE), Math.floor((y - distance) / SIDE)] as const;
      const to = [Math.floor((x + distance) / SIDE), Math.floor((y + distance) / SIDE)] as const;
      const found: number[] = [];
      for (let i = Math.max(from[0], minX); i <= Math.min(to[0], maxX); i++) {
        const column = squares.get(i);
        if (column === undefined) continue;
        for (let j = Math.max(from[1], minY); j <= Math.min(to[1], maxY); j++)
          for (const place of column.get(j) ?? []) found.push(place);
      }
      return found;
    },
  };
}
