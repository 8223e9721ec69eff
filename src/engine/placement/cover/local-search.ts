import type { CoverModel } from "../contract.ts";
import { greedyQueue } from "./greedy-queue.ts";
import { incidenceOf } from "./incidence.ts";
import { diceOf } from "./random.ts";

/** A search that can be done in slices, and whose model can grow between them. */
export interface LocalSearch {
  /** Best complete choice that was accepted; undefined while there is none. */
  readonly best: () => { readonly chosen: readonly number[]; readonly cost: number } | undefined;
  /** Does so many exchanges, or fewer if it comes upon a complete choice cheaper than the best accepted one: then "cover". */
  readonly steps: (count: number) => "cover" | "spent";
  /** What is chosen now. */
  readonly chosen: () => readonly number[];
  /** Takes what is chosen now as the best; from here on only cheaper choices count. */
  readonly accept: () => void;
  /** Only choices that cost less than this count from now on; more than the best accepted one costs is allowed. */
  readonly below: (limit: number) => void;
  /** Fills the open rows greedily, however many columns that takes. */
  readonly complete: () => void;
  /** A new row, and the columns that cover it. */
  readonly addRow: (columns: readonly number[]) => void;
  /** A new column, and the rows that it covers. */
  readonly addColumn: (cost: number, rows: readonly number[]) => void;
}

/** How a search begins. */
export interface LocalSearchOptions {
  readonly seed: number;
  readonly start?: readonly number[];
}

/**
 * Weighted set cover by exchange with row weights: take out the column that is missed least, put in the best one for a row that
 * was left uncovered, and let rows that stay uncovered weigh more and more. A column that just left or came in has to wait.
 *
 * score(j) = Σ weight(r) over rows that only j covers (if j is in) or that nothing covers (if it is out), ÷ cost(j)
 *
 * @param model - The cover model; fixed columns stay in, and a column whose foe is in is not taken.
 * @param options.seed - The same seed gives the same answer for the same number of steps.
 * @param options.start - Columns to begin with; missing rows are filled greedily.
 * @returns The search; its first complete choice comes from the greedy start.
 * @source GAO-2015
 */
export function localSearch(model: CoverModel, options: LocalSearchOptions): LocalSearch {
  const incidence = incidenceOf(model);
  const costs = Array.from(incidence.costs);
  const rowsOf = incidence.rowsOf.map(growing);
  const columnsOf = incidence.columnsOf.map(growing);
  const { foesOf } = incidence;
  const dice = diceOf(options.seed);
  const weight = columnsOf.map(() => 1);
  const covered = columnsOf.map(() => 0);
  const openPlace = columnsOf.map((_, row) => row);
  const open = columnsOf.map((_, row) => row);
  const inside = costs.map(() => false);
  const fixed = costs.map(() => false);
  const score = rowsOf.map((list) => list.length);
  const stamp = costs.map(() => 0);
  const ready = costs.map(() => true);
  const foesInside = costs.map(() => 0);
  const listPlace = costs.map(() => -1);
  const list: number[] = [];
  let cost = 0;
  let time = 1;
  let limit = Number.POSITIVE_INFINITY;
  let cheapest = costs.reduce(
    (least, one) => (one > 0 ? Math.min(least, one) : least),
    Number.POSITIVE_INFINITY,
  );
  let best: { readonly chosen: readonly number[]; readonly cost: number } | undefined;
  let lastAdded = -1;

  for (const column of model.fixed) {
    fixed[column] = true;
    if (!inside[column]) add(column);
  }
  for (const column of options.start ?? []) if (!inside[column] && foesInside[column] === 0) add(column);
  fill();
  return {
    best: () => best,
    steps,
    chosen: () => [...list].sort((a, b) => a - b),
    accept: () => {
      if (open.length > 0) throw new Error("Only a complete choice can be accepted.");
      best = { chosen: [...list].sort((a, b) => a - b), cost };
      limit = cost;
    },
    below: (most) => {
      limit = most;
    },
    complete: fill,
    addRow: (columns) => {
      const row = columnsOf.length;
      columnsOf.push([...columns]);
      weight.push(1);
      const within = columns.filter((column) => inside[column]);
      covered.push(within.length);
      openPlace.push(-1);
      for (const column of columns) rowsOf[column]!.push(row);
      if (within.length === 0) {
        opened(row);
        for (const column of columns) {
          score[column]! += 1;
          ready[column] = true;
        }
      } else if (within.length === 1) score[within[0]!]! += 1;
    },
    addColumn: (price, rows) => {
      const column = costs.length;
      costs.push(price);
      if (price > 0) cheapest = Math.min(cheapest, price);
      rowsOf.push([...rows]);
      inside.push(false);
      fixed.push(false);
      stamp.push(0);
      ready.push(true);
      foesInside.push(0);
      listPlace.push(-1);
      let own = 0;
      for (const row of rows) {
        columnsOf[row]!.push(column);
        if (covered[row] === 0) own += weight[row]!;
      }
      score.push(own);
    },
  };

  function steps(count: number): "cover" | "spent" {
    for (let step = 0; step < count; step++) {
      if (open.length === 0) {
        shed();
        if (cost < limit - 1e-9) return "cover";
        if (!dropWorst(-1)) return "spent";
        continue;
      }
      time++;
      // With room for one more column below the limit nothing has to leave first.
      if (cost + cheapest >= limit - 1e-9 && !dropWorst(lastAdded) && list.length > 0) dropWorst(-1);
      const row = open[dice.pick(open.length)];
      if (row === undefined) continue;
      const column = bestFor(row);
      if (column >= 0) {
        while (cost + costs[column]! >= limit - 1e-9 && dropWorst(-1)) {
          // Room must be made before a dearer column can come in.
        }
        if (cost + costs[column]! < limit - 1e-9) {
          add(column);
          lastAdded = column;
        }
      }
      for (let i = 0; i < open.length; i++) {
        const left = open[i]!;
        weight[left]! += 1;
        const covering = columnsOf[left]!;
        for (let k = 0; k < covering.length; k++) score[covering[k]!]! += 1;
      }
    }
    if (open.length > 0) return "spent";
    shed();
    return cost < limit - 1e-9 ? "cover" : "spent";
  }

  /** Columns that nothing would miss go. */
  function shed(): void {
    for (const column of [...list])
      if (score[column] === 0 && !fixed[column] && costs[column]! > 0) remove(column);
  }

  /** Greedy: as long as rows are open, the column with the most open weight for its cost, of equals the first. */
  function fill(): void {
    if (open.length === 0) return;
    const free: number[] = [];
    for (let column = 0; column < costs.length; column++)
      if (!inside[column] && foesInside[column] === 0) free.push(column);
    // What is taken only lowers the scores of the others: one that still has the score that it was put in with is the best.
    const queue = greedyQueue(free, { score, costs });
    while (open.length > 0) {
      const column = queue.next((one) => !inside[one] && foesInside[one] === 0);
      if (column < 0) return;
      add(column);
    }
  }

  /** Takes out the column that is missed least for its cost; of equals the one that is in longest. */
  function dropWorst(spare: number): boolean {
    let worst = -1;
    for (let i = 0; i < list.length; i++) {
      const column = list[i]!;
      if (fixed[column] || column === spare) continue;
      if (worst < 0) worst = column;
      else {
        const gap = score[column]! * costs[worst]! - score[worst]! * costs[column]!;
        if (gap < 0 || (gap === 0 && stamp[column]! < stamp[worst]!)) worst = column;
      }
    }
    if (worst < 0) return false;
    remove(worst);
    ready[worst] = false;
    return true;
  }

  function bestFor(row: number): number {
    let found = -1;
    const covering = columnsOf[row]!;
    for (let i = 0; i < covering.length; i++) {
      const column = covering[i]!;
      if (!ready[column] || foesInside[column]! > 0) continue;
      if (found < 0) found = column;
      else {
        const gap = score[column]! * costs[found]! - score[found]! * costs[column]!;
        if (gap > 0 || (gap === 0 && stamp[column]! < stamp[found]!)) found = column;
      }
    }
    return found;
  }

  function add(column: number): void {
    inside[column] = true;
    stamp[column] = time;
    cost += costs[column]!;
    listPlace[column] = list.length;
    list.push(column);
    for (const foe of foesOf[column] ?? []) foesInside[foe]! += 1;
    let own = 0;
    const rows = rowsOf[column]!;
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i]!;
      const count = covered[row]!;
      covered[row] = count + 1;
      if (count > 1) continue;
      const covering = columnsOf[row]!;
      const heavy = weight[row]!;
      if (count === 0) {
        closed(row);
        own += heavy;
        for (let k = 0; k < covering.length; k++) {
          const other = covering[k]!;
          score[other]! -= heavy;
          ready[other] = true;
        }
      } else {
        for (let k = 0; k < covering.length; k++) {
          const other = covering[k]!;
          if (inside[other] && other !== column) {
            score[other]! -= heavy;
            break;
          }
        }
      }
    }
    score[column] = own;
  }

  function remove(column: number): void {
    inside[column] = false;
    stamp[column] = time;
    cost -= costs[column]!;
    const place = listPlace[column]!;
    const last = list.pop()!;
    if (last !== column) {
      list[place] = last;
      listPlace[last] = place;
    }
    listPlace[column] = -1;
    for (const foe of foesOf[column] ?? []) foesInside[foe]! -= 1;
    let own = 0;
    const rows = rowsOf[column]!;
    for (let i = 0; i < rows.length; i++) {
      const row = rows[i]!;
      const count = covered[row]!;
      covered[row] = count - 1;
      if (count > 2) continue;
      const covering = columnsOf[row]!;
      const heavy = weight[row]!;
      if (count === 1) {
        opened(row);
        own += heavy;
        for (let k = 0; k < covering.length; k++) {
          const other = covering[k]!;
          score[other]! += heavy;
          ready[other] = true;
        }
      } else {
        for (let k = 0; k < covering.length; k++) {
          const other = covering[k]!;
          if (inside[other]) {
            score[other]! += heavy;
            break;
          }
        }
      }
    }
    score[column] = own;
  }

  function opened(row: number): void {
    openPlace[row] = open.length;
    open.push(row);
  }

  function closed(row: number): void {
    const place = openPlace[row]!;
    const last = open.pop()!;
    if (last !== row) {
      open[place] = last;
      openPlace[last] = place;
    }
    openPlace[row] = -1;
  }
}

/** A list that rows or columns can be added to. */
function growing(list: Int32Array): number[] {
  const copy = new Array<number>(list.length);
  for (let i = 0; i < list.length; i++) copy[i] = list[i]!;
  return copy;
}
