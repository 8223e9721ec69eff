import type { LineArc } from "./linework.ts";

/** Radii of quarter circles that could be the swings of doors. [drawing units] */
export interface DoorSwings {
  readonly quarters: readonly number[];
  /** Those from whose centre a line as long as their radius starts: the leaf itself. */
  readonly withLeaf: readonly number[];
}

/** A swing may be drawn a little short or long of a right angle. [rad] */
const sweeps = { least: 1.36, most: 1.78 } as const;
/** A leaf may start this far from the hinge, and be this much shorter or longer than the radius. [share of the radius] */
const offHinge = 0.12;
const offLength = 0.15;
/** Swings looked at; no plan has more doors. */
const mostSwings = 20_000;

/** Quarter circles of a drawing, and those among them that have a leaf. */
export function doorSwings(drawing: {
  readonly arcs: readonly LineArc[];
  readonly lines: Float64Array;
}): DoorSwings {
  const quarters = drawing.arcs
    .filter(({ from, to }) => to - from >= sweeps.least && to - from <= sweeps.most)
    .slice(0, mostSwings);
  // Centres on grids, one for each power of two of the radius, with cells no smaller than the distance that is looked for.
  const grids = new Map<number, Map<string, LineArc[]>>();
  for (const arc of quarters) {
    const size = sizeClass(arc.radius);
    const grid = grids.get(size) ?? new Map<string, LineArc[]>();
    grids.set(size, grid);
    const key = cellOf(arc.centre[0], arc.centre[1], size).join();
    grid.set(key, [...(grid.get(key) ?? []), arc]);
  }
  const found = new Set<LineArc>();
  const { lines } = drawing;
  for (let i = 0; grids.size > 0 && i < lines.length; i += 4) {
    const [x1, y1, x2, y2] = [lines[i]!, lines[i + 1]!, lines[i + 2]!, lines[i + 3]!];
    const length = Math.hypot(x2 - x1, y2 - y1);
    const sizes = new Set([length / (1 + offLength), length / (1 - offLength)].map(sizeClass));
    for (const size of sizes) {
      const grid = grids.get(size);
      if (!grid) continue;
      for (const arc of [...around(grid, x1, y1, size), ...around(grid, x2, y2, size)]) {
        const near = (x: number, y: number): boolean =>
          Math.hypot(x - arc.centre[0], y - arc.centre[1]) <= offHinge * arc.radius;
        const alike = Math.abs(length - arc.radius) <= offLength * arc.radius;
        if (alike && (near(x1, y1) || near(x2, y2))) found.add(arc);
      }
    }
  }
  return {
    quarters: quarters.map(({ radius }) => radius),
    withLeaf: [...found].map(({ radius }) => radius),
  };
}

const sizeClass = (radius: number): number => Math.floor(Math.log2(radius));

const cellOf = (x: number, y: number, size: number): readonly [number, number] => {
  const cell = 2 * offHinge * 2 ** size;
  return [Math.floor(x / cell), Math.floor(y / cell)];
};

const around = (grid: ReadonlyMap<string, LineArc[]>, x: number, y: number, size: number): LineArc[] => {
  const [column, row] = cellOf(x, y, size);
  return [-1, 0, 1].flatMap((dx) => [-1, 0, 1].flatMap((dy) => grid.get(`${column + dx},${row + dy}`) ?? []));
};
