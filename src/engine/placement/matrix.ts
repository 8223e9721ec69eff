import { type Column, type Watch, watchOf } from "./columns.ts";
import type { CoverModel, PlacementWorld } from "./contract.ts";
import type { DemandRow } from "./demand-rows.ts";
import { placeField } from "./place-field.ts";
import { rowField } from "./row-field.ts";
import { type Scenes, sightBook } from "./sight-book.ts";

/** Which column covers which row; grows by rows and columns. */
export interface Matrix {
  readonly columns: readonly Column[];
  readonly rows: readonly DemandRow[];
  readonly watches: readonly Watch[];
  readonly addRows: (rows: readonly DemandRow[]) => void;
  readonly addColumns: (columns: readonly Column[]) => void;
  /** Columns that cover a row. */
  readonly covering: (row: number) => readonly number[];
  /** The set cover; fixed devices are its fixed columns. */
  readonly model: () => CoverModel;
}

/**
 * An empty matrix for a room.
 *
 * @param options.scenes - Scenes round the room. @param options.purpose - "coverage" to find, "outward" with eroded scenes to bound.
 * @returns The matrix; put columns and rows in.
 * @example Two columns and three rows: a model of two costs and three lists
 */
export function matrixOf(options: {
  readonly scenes: Scenes;
  readonly purpose: "coverage" | "outward";
}): Matrix {
  const book = sightBook(options);
  const columns: Column[] = [];
  const rows: DemandRow[] = [];
  const watches: Watch[] = [];
  const covering: number[][] = [];
  const hung = placeField();
  const asked = rowField();
  /** The farthest that any column reaches. [m] */
  let reach = -1;
  return {
    columns,
    rows,
    watches,
    addRows: (more) => {
      for (const row of more) {
        rows.push(row);
        // A new sort of row may be seen from farther away than all before.
        if (asked.add(row)) for (const watch of watches) reach = Math.max(reach, watch.farthest(row));
        const near = hung.near(row.at, reach).filter((column) => watches[column]!.covers(row));
        covering.push(near.sort((a, b) => a - b));
      }
    },
    addColumns: (more) => {
      for (const column of more) {
        const watch = watchOf(column, { ...options, book });
        const { farthest, near } = asked.near(column, watch);
        for (const row of near) if (watch.covers(rows[row]!)) covering[row]!.push(columns.length);
        reach = Math.max(reach, farthest);
        columns.push(column);
        watches.push(watch);
        hung.add(column.device.at);
      }
    },
    covering: (row) => covering[row]!,
    model: () => ({
      costs: columns.map((column) => column.cost),
      rows: covering.map((list) => [...list]),
      conflicts: [],
      fixed: columns.flatMap((column, index) => (column.fixed === undefined ? [] : [index])),
    }),
  };
}

/**
 * Puts columns in by slices, so that the host can breathe and a person can cancel.
 *
 * @param matrix - The matrix. @param columns - More columns. @param may - Which of them; absent: all. @param world - Hosts of the work; `until` is the cut-off, a moment of `now`.
 * @returns "stopped" if it was cancelled or time ran out; the columns put in so far stay.
 * @example 500 columns with the clock at the cut-off: the first slice only, and "stopped"
 */
export async function addInSlices(
  matrix: Matrix,
  {
    columns,
    may,
    world,
    until,
  }: {
    readonly columns: readonly Column[];
    readonly may?: (column: Column) => boolean;
    readonly world: PlacementWorld;
    readonly until: number;
  },
): Promise<"all" | "stopped"> {
  const order = coarseFirst(columns);
  const before = matrix.columns.length;
  // Where the first places may all not be used, half of the time more is given to find one that may.
  const latest = until + Math.max(0, until - world.now()) / 2;
  for (let from = 0; from < columns.length; from += SLICE) {
    const slice = order.slice(from, from + SLICE);
    matrix.addColumns(may === undefined ? slice : slice.filter(may));
    await world.breathe();
    const end = matrix.columns.length > before ? until : latest;
    if (world.cancelled() || world.now() >= end) return from + SLICE >= columns.length ? "all" : "stopped";
  }
  return "all";
}

/** Devices that stay, then every 16th column, those halfway between, and so on: what is in when time runs out lies all over the room. */
function coarseFirst(columns: readonly Column[]): readonly Column[] {
  const order = columns.filter((column) => column.fixed !== undefined);
  const free = columns.filter((column) => column.fixed === undefined);
  for (let step = 16; step >= 1; step /= 2)
    for (let index = step === 16 ? 0 : step; index < free.length; index += step === 16 ? 16 : 2 * step)
      order.push(free[index]!);
  return order;
}

/** Columns between two breaths: some milliseconds each in a crowded room. */
const SLICE = 16;
