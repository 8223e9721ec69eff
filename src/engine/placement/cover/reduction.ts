import type { CoverModel } from "../contract.ts";
import { type Incidence, incidenceOf } from "./incidence.ts";

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
  const state = stateOf(model);
  for (const column of new Set(model.fixed)) take(state, column);
  for (let changed = true; changed && state.hopeless < 0; ) {
    changed = takeEssentials(state);
    if (state.hopeless >= 0) break;
    if (dropRows(state)) changed = true;
    if (dropColumns(state)) changed = true;
  }
  const rows = alive(state.rows);
  const columns = alive(state.columns).filter((column) => state.columns.count[column]! > 0);
  const place = new Int32Array(model.costs.length).fill(-1);
  columns.forEach((column, index) => {
    place[column] = index;
  });
  const core: CoverModel = {
    costs: columns.map((column) => model.costs[column]!),
    rows: rows.map((row) =>
      Array.from(state.full.columnsOf[row]!, (column) => place[column]!).filter((column) => column >= 0),
    ),
    conflicts: model.conflicts
      .map(([one, other]) => [place[one]!, place[other]!] as const)
      .filter(([one, other]) => one >= 0 && other >= 0),
    fixed: [],
  };
  const takenCost = state.taken.reduce((sum, column) => sum + model.costs[column]!, 0);
  const { hopeless } = state;
  return { core, columns, rows, taken: state.taken, takenCost, ...(hopeless < 0 ? {} : { hopeless }) };
}

/**
 * Rows that no other row implies: covering these covers all.
 *
 * @param model - Any cover model. @returns Rows, ascending; of equal rows the first.
 * @source DERIVED-HERE
 * @example Rows {0} and {0, 1}: the first alone
 */
export function nonImpliedRows(model: CoverModel): readonly number[] {
  const state = stateOf(model);
  dropRows(state);
  return alive(state.rows);
}

/** One side of the model: which of its members are left, how many partners each has left, and all partners as bits. */
interface Side {
  readonly alive: Uint8Array;
  readonly count: Int32Array;
  /** Bits of the partners, `words` for each member; partners that are gone stay in and are masked by `mask` of the other side. */
  readonly bits: Uint32Array;
  readonly words: number;
  /** The living members as bits. */
  readonly mask: Uint32Array;
}

/** Entries of the two tables of bits that a reduction fills, at most: a gigabit each, 125 MB. */
const MOST_BITS = 1e9;

/** Whether a model is small enough to be reduced. @param rows - How many rows. @param columns - How many columns. @returns False for a hall so large that the tables would not fit. @example A thousand by a thousand: true */
export const isReducible = (rows: number, columns: number): boolean => rows * columns <= MOST_BITS;

interface State {
  readonly model: CoverModel;
  readonly full: Incidence;
  readonly rows: Side;
  readonly columns: Side;
  readonly taken: number[];
  hopeless: number;
}

function stateOf(model: CoverModel): State {
  const full = incidenceOf(model);
  return {
    model,
    full,
    rows: sideOf(full.columnsOf, model.costs.length),
    columns: sideOf(full.rowsOf, model.rows.length),
    taken: [],
    hopeless: -1,
  };
}

function sideOf(partners: readonly Int32Array[], size: number): Side {
  const words = (size + 31) >>> 5;
  const bits = new Uint32Array(words * partners.length);
  const mask = new Uint32Array((partners.length + 31) >>> 5);
  partners.forEach((list, member) => {
    mask[member >>> 5]! |= 1 << (member & 31);
    for (let i = 0; i < list.length; i++) bits[member * words + (list[i]! >>> 5)]! |= 1 << (list[i]! & 31);
  });
  return {
    alive: new Uint8Array(partners.length).fill(1),
    count: Int32Array.from(partners, (list) => list.length),
    bits,
    words,
    mask,
  };
}

/** Whether all living partners of one member are partners of another. */
function isWithin(
  side: Side,
  mask: Uint32Array,
  { part, whole }: { readonly part: number; readonly whole: number },
): boolean {
  const { bits, words } = side;
  let p = part * words;
  let w = whole * words;
  for (let word = 0; word < words; word++, p++, w++)
    if ((bits[p]! & mask[word]! & ~bits[w]!) !== 0) return false;
  return true;
}

function kill(
  side: Side,
  member: number,
  partners: { readonly list: Int32Array; readonly count: Int32Array },
): void {
  side.alive[member] = 0;
  side.mask[member >>> 5]! &= ~(1 << (member & 31));
  for (let i = 0; i < partners.list.length; i++) partners.count[partners.list[i]!]! -= 1;
}

const killRow = (state: State, row: number): void =>
  kill(state.rows, row, { list: state.full.columnsOf[row]!, count: state.columns.count });
const killColumn = (state: State, column: number): void =>
  kill(state.columns, column, { list: state.full.rowsOf[column]!, count: state.rows.count });

function take(state: State, column: number): void {
  state.taken.push(column);
  if (state.columns.alive[column] === 1) killColumn(state, column);
  for (const row of state.full.rowsOf[column]!) if (state.rows.alive[row] === 1) killRow(state, row);
  for (const foe of state.full.foesOf[column]!) if (state.columns.alive[foe] === 1) killColumn(state, foe);
}

function takeEssentials(state: State): boolean {
  const { rows, columns, full } = state;
  let took = false;
  for (let row = 0; row < rows.alive.length; row++) {
    if (rows.alive[row] === 0) continue;
    if (rows.count[row] === 0) {
      state.hopeless = row;
      return took;
    }
    if (rows.count[row] === 1) {
      take(state, full.columnsOf[row]!.find((column) => columns.alive[column] === 1)!);
      took = true;
    }
  }
  return took;
}

/** The partner with the fewest partners of its own: whatever contains the member is among those. */
function rarest(list: Int32Array, side: Side): number {
  let best = -1;
  for (let i = 0; i < list.length; i++) {
    const one = list[i]!;
    if (side.alive[one] === 1 && (best < 0 || side.count[one]! < side.count[best]!)) best = one;
  }
  return best;
}

function dropRows(state: State): boolean {
  const { rows, columns, full } = state;
  let dropped = false;
  // The row with the fewest columns implies the most others: begin there.
  for (const row of alive(rows).sort((a, b) => rows.count[a]! - rows.count[b]! || a - b)) {
    if (rows.alive[row] === 0) continue;
    const column = rarest(full.columnsOf[row]!, columns);
    // Its last column fell to a conflict just now: the next round calls it hopeless.
    if (column < 0) continue;
    for (const other of full.rowsOf[column]!) {
      if (other === row || rows.alive[other] === 0 || rows.count[other]! < rows.count[row]!) continue;
      if (isWithin(rows, columns.mask, { part: row, whole: other })) {
        killRow(state, other);
        dropped = true;
      }
    }
  }
  return dropped;
}

function dropColumns(state: State): boolean {
  const { rows, columns, full } = state;
  let dropped = false;
  for (const column of alive(columns).sort((a, b) => columns.count[a]! - columns.count[b]! || b - a)) {
    const row = rarest(full.rowsOf[column]!, rows);
    if (row < 0) {
      killColumn(state, column);
      continue;
    }
    for (const other of full.columnsOf[row]!) {
      if (other === column || columns.alive[other] === 0 || columns.count[other]! < columns.count[column]!)
        continue;
      if (beats(state, { other, column })) {
        killColumn(state, column);
        dropped = true;
        break;
      }
    }
  }
  return dropped;
}

/** Whether `other` serves wherever `column` does, at no more cost; of equals the first wins. */
function beats(
  state: State,
  { other, column }: { readonly other: number; readonly column: number },
): boolean {
  const { columns, rows, full, model } = state;
  const dearer = model.costs[other]! - model.costs[column]!;
  if (dearer > 0 || !isWithin(columns, rows.mask, { part: column, whole: other })) return false;
  const [mine, foes] = [full.foesOf[column]!, full.foesOf[other]!];
  if (
    dearer === 0 &&
    other > column &&
    columns.count[other] === columns.count[column] &&
    mine.length <= foes.length
  )
    return false;
  return foes.every((foe) => foe === column || columns.alive[foe] === 0 || mine.includes(foe));
}

function alive(side: Side): number[] {
  const list: number[] = [];
  for (let member = 0; member < side.alive.length; member++) if (side.alive[member] === 1) list.push(member);
  return list;
}
