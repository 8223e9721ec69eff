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

/** Doors hang near one hinge by twos and fours; more are copies on top of one another. */
const mostAtHinge = 16;

/** Quarter circles of a drawing, and those among them that have a leaf. */
export function doorSwings(drawing: {
  readonly arcs: readonly LineArc[];
  readonly lines: Float64Array;
}): DoorSwings {
  const quarters = drawing.arcs
    .filter(({ from, to }) => to - from >= sweeps.least && to - from <= sweeps.most)
    .slice(0, mostSwings);
  const grids = hingeGrids(quarters);
  const found = new Set<LineArc>();
  const { lines } = drawing;
  for (let i = 0; grids.size > 0 && i < lines.length; i += 4) {
    const x1 = lines[i]!;
    const y1 = lines[i + 1]!;
    const x2 = lines[i + 2]!;
    const y2 = lines[i + 3]!;
    const length = Math.sqrt((x2 - x1) ** 2 + (y2 - y1) ** 2);
    // A line so short that its square is 0 has no power of two.
    if (!(length > 0)) continue;
    // The leaf's radius may fall in one of two neighbouring powers of two.
    const least = sizeClass(length / (1 + offLength));
    const most = sizeClass(length / (1 - offLength));
    for (let size = least; size <= most; size++) {
      const grid = grids.get(size);
      if (!grid) continue;
      mark(grid.get(keyOf(x1, y1, size)), { x: x1, y: y1, length, found });
      mark(grid.get(keyOf(x2, y2, size)), { x: x2, y: y2, length, found });
    }
  }
  return {
    quarters: quarters.map(({ radius }) => radius),
    withLeaf: [...found].map(({ radius }) => radius),
  };
}

type Grid = ReadonlyMap<number, readonly LineArc[]>;

/** Arcs by the cells round their centre: one grid for each power of two of the radius, cells as wide as what is looked for. */
const hingeGrids = (arcs: readonly LineArc[]): ReadonlyMap<number, Grid> => {
  const grids = new Map<number, Map<number, LineArc[]>>();
  for (const arc of arcs) {
    const size = sizeClass(arc.radius);
    const grid = grids.get(size) ?? new Map<number, LineArc[]>();
    grids.set(size, grid);
    const cell = cellSize(size);
    for (const dx of [-cell, 0, cell]) {
      for (const dy of [-cell, 0, cell]) {
        const key = keyOf(arc.centre[0] + dx, arc.centre[1] + dy, size);
        const list = grid.get(key) ?? [];
        grid.set(key, list);
        if (list.length < mostAtHinge) list.push(arc);
      }
    }
  }
  return grids;
};

const mark = (
  arcs: readonly LineArc[] | undefined,
  end: { readonly x: number; readonly y: number; readonly length: number; readonly found: Set<LineArc> },
): void => {
  for (const arc of arcs ?? []) {
    const off = Math.hypot(end.x - arc.centre[0], end.y - arc.centre[1]);
    if (off > offHinge * arc.radius || Math.abs(end.length - arc.radius) > offLength * arc.radius) continue;
    end.found.add(arc);
  }
};

const sizeClass = (radius: number): number => Math.floor(Math.log2(radius));

const cellSize = (size: number): number => 2 * offHinge * 2 ** size;

/** Cells far apart may share a key: what is found in one is measured anyway. */
const keyOf = (x: number, y: number, size: number): number => {
  const cell = cellSize(size);
  return (Math.imul(Math.floor(x / cell), 73856093) ^ Math.imul(Math.floor(y / cell), 19349663)) >>> 0;
};
