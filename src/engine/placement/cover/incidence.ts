import type { CoverModel } from "../contract.ts";

/** A cover model with both directions at hand: the rows of each column and the columns of each row. */
export interface Incidence {
  readonly costs: Float64Array;
  readonly rowsOf: readonly Int32Array[];
  readonly columnsOf: readonly Int32Array[];
  /** Columns that may not be taken together with a column; symmetric. */
  readonly foesOf: readonly Int32Array[];
}

/**
 * Both directions of a cover model.
 *
 * @param model - Rows with the columns that cover them.
 * @returns The same model as lists by column and by row, in ascending order.
 * @throws RangeError where a row names a column that does not exist.
 */
export function incidenceOf(model: CoverModel): Incidence {
  const columns = model.costs.length;
  const ends = new Int32Array(columns + 1);
  model.rows.forEach((row, index) => {
    for (let i = 0; i < row.length; i++) {
      const column = row[i]!;
      if (!(column >= 0 && column < columns))
        throw new RangeError(`Row ${index} names column ${column} of ${columns}.`);
      ends[column + 1]! += 1;
    }
  });
  for (let column = 0; column < columns; column++) ends[column + 1]! += ends[column]!;
  const entries = new Int32Array(ends[columns]!);
  const next = ends.slice();
  model.rows.forEach((row, index) => {
    for (let i = 0; i < row.length; i++) entries[next[row[i]!]!++] = index;
  });
  const foes: Set<number>[] = Array.from({ length: columns }, () => new Set());
  for (const [one, other] of model.conflicts) {
    foes[one]!.add(other);
    foes[other]!.add(one);
  }
  return {
    costs: Float64Array.from(model.costs),
    rowsOf: Array.from({ length: columns }, (_, column) => entries.subarray(ends[column], ends[column + 1])),
    columnsOf: model.rows.map(ascending),
    foesOf: foes.map((set) => (set.size === 0 ? none : Int32Array.from(set).sort())),
  };
}

const none = new Int32Array();

/** Mostly the columns of a row stand in order already. */
function ascending(row: readonly number[]): Int32Array {
  const list = new Int32Array(row);
  for (let i = 1; i < list.length; i++) if (list[i]! < list[i - 1]!) return list.sort();
  return list;
}

/**
 * Checks a choice of columns against the model with code that knows nothing of any solver.
 *
 * @param model - The cover model.
 * @param chosen - Columns taken.
 * @returns Whether every row is covered, no conflict is broken and every fixed column is taken; and the cost.
 */
export function checkedChoice(
  model: CoverModel,
  chosen: readonly number[],
): { readonly valid: boolean; readonly cost: number } {
  const taken = new Set(chosen);
  const valid =
    model.rows.every((row) => row.some((column) => taken.has(column))) &&
    model.conflicts.every(([one, other]) => !(taken.has(one) && taken.has(other))) &&
    model.fixed.every((column) => taken.has(column));
  return { valid, cost: [...taken].reduce((sum, column) => sum + model.costs[column]!, 0) };
}
