import type { CoverModel } from "../contract.ts";
import { type Bits, bitsOf, hasBit, isWithin, keyOf } from "./bits.ts";
import { incidenceOf } from "./incidence.ts";

/** A smaller model with the same least cost, and the way back. */
export interface Reduced {
  /** The core: no fixed columns left; may be empty. */
  readonly core: CoverModel;
  /** Column of the full model behind each column of the core. */
  readonly columns: readonly number[];
  /** Row of the full model behind each row of the core. */
  readonly rows: readonly number[];
  /** Columns of the full model that every best choice may contain. */
  readonly taken: readonly number[];
  readonly takenCost: number;
  /** A row that nothing covers, where there is one: no solution. */
  readonly hopeless?: number;
}

/**
 * Makes a cover model smaller without changing its least cost: fixed and essential columns are taken, rows that another row
 * implies are dropped, and columns are dropped that cover no more than another one at the same or less cost with no more conflicts.
 *
 * row r goes if some row s has columns(s) ⊆ columns(r); column j goes if some k has rows(j) ⊆ rows(k), cost(k) ≤ cost(j), foes(k) ⊆ foes(j)
 *
 * @param model - Any cover model.
 * @returns The core and what was taken. Of equal columns or rows the first stays, so the result is repeatable.
 * @source DERIVED-HERE
 */
export function reduceCover(model: CoverModel): Reduced {
  const full = incidenceOf(model);
  const columnAlive = new Uint8Array(model.costs.length).fill(1);
  const rowAlive = new Uint8Array(model.rows.length).fill(1);
  const taken: number[] = [];
  const take = (column: number): void => {
    taken.push(column);
    columnAlive[column] = 0;
    for (const row of full.rowsOf[column]!) rowAlive[row] = 0;
    for (const foe of full.foesOf[column]!) columnAlive[foe] = 0;
  };
  for (const column of new Set(model.fixed)) take(column);
  const aliveColumns = (row: number): number[] =>
    Array.from(full.columnsOf[row]!).filter((column) => columnAlive[column] === 1);
  let hopeless: number | undefined;

  for (let changed = true; changed && hopeless === undefined; ) {
    changed = false;
    for (let row = 0; row < rowAlive.length && hopeless === undefined; row++) {
      if (rowAlive[row] === 0) continue;
      const left = aliveColumns(row);
      if (left.length === 0) hopeless = row;
      else if (left.length === 1) {
        take(left[0]!);
        changed = true;
      }
    }
    if (hopeless !== undefined) break;
    if (dropRows()) changed = true;
    if (dropColumns()) changed = true;
  }

  const rows = indices(rowAlive);
  const columns =
    rows.length === 0
      ? []
      : indices(columnAlive).filter((column) => full.rowsOf[column]!.some((row) => rowAlive[row] === 1));
  const place = new Map(columns.map((column, index) => [column, index]));
  const core: CoverModel = {
    costs: columns.map((column) => model.costs[column]!),
    rows: rows.map((row) => Array.from(full.columnsOf[row]!).flatMap((column) => place.get(column) ?? [])),
    conflicts: model.conflicts.flatMap(([one, other]) => {
      const a = place.get(one);
      const b = place.get(other);
      return a === undefined || b === undefined ? [] : [[a, b] as const];
    }),
    fixed: [],
  };
  const takenCost = taken.reduce((sum, column) => sum + model.costs[column]!, 0);
  return { core, columns, rows, taken, takenCost, ...(hopeless === undefined ? {} : { hopeless }) };

  function dropRows(): boolean {
    const live = indices(rowAlive);
    const size = model.costs.length;
    const sets = new Map<number, Bits>();
    const counts = new Map<number, number>();
    const live1 = new Uint8Array(size);
    for (const row of live) {
      const left = aliveColumns(row);
      sets.set(row, bitsOf(left, size));
      counts.set(row, left.length);
      for (const column of left) live1[column] = 1;
    }
    const rowCount = (column: number): number =>
      full.rowsOf[column]!.reduce((sum, row) => sum + rowAlive[row]!, 0);
    const sizes = new Int32Array(size);
    for (let column = 0; column < size; column++) if (live1[column] === 1) sizes[column] = rowCount(column);
    let dropped = false;
    // The row with the fewest columns implies the most others: begin there.
    for (const row of [...live].sort((a, b) => counts.get(a)! - counts.get(b)! || a - b)) {
      if (rowAlive[row] === 0) continue;
      const left = aliveColumns(row);
      // Its last column fell to a conflict just now: the next round calls it hopeless.
      if (left.length === 0) continue;
      const rarest = left.reduce((best, column) => (sizes[column]! < sizes[best]! ? column : best), left[0]!);
      const own = sets.get(row)!;
      for (const other of full.rowsOf[rarest]!) {
        if (other === row || rowAlive[other] === 0) continue;
        if (counts.get(other)! < left.length) continue;
        if (isWithin(own, sets.get(other)!)) {
          rowAlive[other] = 0;
          dropped = true;
        }
      }
    }
    return dropped;
  }

  function dropColumns(): boolean {
    const size = model.rows.length;
    const live = indices(columnAlive);
    const sets = new Map<number, Bits>();
    const counts = new Map<number, number>();
    let dropped = false;
    const seen = new Map<number, number[]>();
    for (const column of live) {
      const left = Array.from(full.rowsOf[column]!).filter((row) => rowAlive[row] === 1);
      if (left.length === 0) {
        columnAlive[column] = 0;
        continue;
      }
      const bits = bitsOf(left, size);
      sets.set(column, bits);
      counts.set(column, left.length);
      // Equal columns are common on a fine grid; the key finds them without comparing all pairs.
      const key = keyOf(bits);
      const twins = seen.get(key);
      if (twins === undefined) seen.set(key, [column]);
      else {
        const twin = twins.find(
          (other) => columnAlive[other] === 1 && beats(other, column, bits, sets.get(other)!),
        );
        if (twin !== undefined) {
          columnAlive[column] = 0;
          dropped = true;
        } else twins.push(column);
      }
    }
    const cover = new Map<number, number[]>();
    for (const row of indices(rowAlive)) cover.set(row, aliveColumns(row));
    for (const column of live
      .filter((one) => columnAlive[one] === 1)
      .sort((a, b) => counts.get(a)! - counts.get(b)! || b - a)) {
      const bits = sets.get(column)!;
      let rarest = -1;
      for (const row of full.rowsOf[column]!)
        if (rowAlive[row] === 1 && (rarest < 0 || cover.get(row)!.length < cover.get(rarest)!.length))
          rarest = row;
      for (const other of cover.get(rarest)!) {
        if (other === column || columnAlive[other] === 0 || counts.get(other)! < counts.get(column)!)
          continue;
        if (beats(other, column, bits, sets.get(other)!)) {
          columnAlive[column] = 0;
          dropped = true;
          break;
        }
      }
    }
    return dropped;
  }

  /** Whether `other` serves wherever `column` does, at no more cost; of equals the first wins. */
  function beats(other: number, column: number, bits: Bits, otherBits: Bits): boolean {
    const cheaper = model.costs[other]! - model.costs[column]!;
    if (cheaper > 0 || !isWithin(bits, otherBits)) return false;
    if (
      cheaper === 0 &&
      other > column &&
      isWithin(otherBits, bits) &&
      full.foesOf[column]!.length <= full.foesOf[other]!.length
    )
      return false;
    const foes = full.foesOf[other]!;
    if (foes.length === 0) return true;
    const mine = bitsOf(full.foesOf[column]!, model.costs.length);
    return foes.every((foe) => foe === column || columnAlive[foe] === 0 || hasBit(mine, foe));
  }
}

/**
 * Rows that no other row implies: covering these covers all.
 *
 * @param model - Any cover model. @returns Rows, ascending; of equal rows the first.
 * @source DERIVED-HERE
 * @example Rows {0} and {0, 1}: the first alone
 */
export function nonImpliedRows(model: CoverModel): readonly number[] {
  const size = model.costs.length;
  const sets = model.rows.map((row) => bitsOf(row, size));
  const byColumn: number[][] = Array.from({ length: size }, () => []);
  model.rows.forEach((row, index) => {
    for (const column of row) byColumn[column]!.push(index);
  });
  const alive = new Uint8Array(model.rows.length).fill(1);
  const order = model.rows
    .map((_, index) => index)
    .sort((a, b) => model.rows[a]!.length - model.rows[b]!.length || a - b);
  for (const row of order) {
    if (alive[row] === 0 || model.rows[row]!.length === 0) continue;
    const rarest = model.rows[row]!.reduce((best, column) =>
      byColumn[column]!.length < byColumn[best]!.length ? column : best,
    );
    for (const other of byColumn[rarest]!)
      if (
        other !== row &&
        alive[other] === 1 &&
        model.rows[other]!.length >= model.rows[row]!.length &&
        isWithin(sets[row]!, sets[other]!)
      )
        alive[other] = 0;
  }
  return indices(alive);
}

const indices = (alive: Uint8Array): number[] => {
  const list: number[] = [];
  for (let i = 0; i < alive.length; i++) if (alive[i] === 1) list.push(i);
  return list;
};
