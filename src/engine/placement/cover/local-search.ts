import type { CoverModel } from "../contract.ts";
import { incidenceOf } from "./incidence.ts";
import { diceOf } from "./random.ts";

/** A search that can be done in slices. */
export interface LocalSearch {
  /** Best complete choice so far; undefined while none was found. */
  readonly best: () => { readonly chosen: readonly number[]; readonly cost: number } | undefined;
  /** Does so many exchanges, or fewer where the cost cannot fall below `floor`. */
  readonly steps: (count: number, floor: number) => void;
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
 * @returns The search.
 * @source GAO-2015
 */
export function localSearch(
  model: CoverModel,
  options: { readonly seed: number; readonly start?: readonly number[] },
): LocalSearch {
  const { costs, rowsOf, columnsOf, foesOf } = incidenceOf(model);
  const dice = diceOf(options.seed);
  const columns = costs.length;
  const rows = model.rows.length;
  const weight = new Float64Array(rows).fill(1);
  const covered = new Int32Array(rows);
  const inside = new Uint8Array(columns);
  const fixed = new Uint8Array(columns);
  const score = new Float64Array(columns);
  const stamp = new Int32Array(columns);
  const ready = new Uint8Array(columns).fill(1);
  const foesInside = new Int32Array(columns);
  const list: number[] = [];
  const listPlace = new Int32Array(columns).fill(-1);
  const open: number[] = [];
  const openPlace = new Int32Array(rows).fill(-1);
  let cost = 0;
  let time = 1;
  let bestCost = Number.POSITIVE_INFINITY;
  let bestChosen: readonly number[] | undefined;
  let lastAdded = -1;

  for (let row = 0; row < rows; row++) opened(row);
  for (let column = 0; column < columns; column++) score[column] = rowsOf[column]!.length;
  for (const column of model.fixed) {
    fixed[column] = 1;
    if (inside[column] === 0) add(column);
  }
  for (const column of options.start ?? []) if (inside[column] === 0 && foesInside[column] === 0) add(column);
  fill();
  record();
  return {
    best: () => (bestChosen === undefined ? undefined : { chosen: bestChosen, cost: bestCost }),
    steps,
  };

  function steps(count: number, floor: number): void {
    for (let step = 0; step < count; step++) {
      if (bestCost <= floor + 1e-9) return;
      time++;
      while (open.length === 0) {
        record();
        if (bestCost <= floor + 1e-9 || !dropWorst(-1)) return;
      }
      if (!dropWorst(lastAdded) && list.length > 0) dropWorst(-1);
      const row = open[dice.pick(open.length)];
      if (row === undefined) continue;
      const column = bestFor(row);
      if (column >= 0) {
        while (cost + costs[column]! >= bestCost - 1e-9 && dropWorst(-1)) {
          // Room must be made before a dearer column can come in.
        }
        if (cost + costs[column]! < bestCost - 1e-9) {
          add(column);
          lastAdded = column;
        }
      }
      for (const left of open) {
        weight[left]! += 1;
        for (const candidate of columnsOf[left]!) score[candidate]! += 1;
      }
    }
  }

  function record(): void {
    if (open.length > 0) return;
    for (const column of [...list]) if (score[column] === 0 && fixed[column] === 0) remove(column);
    if (cost < bestCost - 1e-9) {
      bestCost = cost;
      bestChosen = [...list].sort((a, b) => a - b);
    }
  }

  /** Greedy: as long as rows are open, the column with the most open weight for its cost. */
  function fill(): void {
    while (open.length > 0) {
      let best = -1;
      for (let column = 0; column < columns; column++) {
        if (inside[column] === 1 || foesInside[column]! > 0 || score[column] === 0) continue;
        if (best < 0 || score[column]! * costs[best]! > score[best]! * costs[column]!) best = column;
      }
      if (best < 0) return;
      add(best);
    }
  }

  /** Takes out the column that is missed least for its cost; of equals the one that is in longest. */
  function dropWorst(spare: number): boolean {
    let worst = -1;
    for (const column of list) {
      if (fixed[column] === 1 || column === spare) continue;
      if (worst < 0) worst = column;
      else {
        const gap = score[column]! * costs[worst]! - score[worst]! * costs[column]!;
        if (gap < 0 || (gap === 0 && stamp[column]! < stamp[worst]!)) worst = column;
      }
    }
    if (worst < 0) return false;
    remove(worst);
    ready[worst] = 0;
    return true;
  }

  function bestFor(row: number): number {
    let best = -1;
    for (const column of columnsOf[row]!) {
      if (ready[column] === 0 || foesInside[column]! > 0) continue;
      if (best < 0) best = column;
      else {
        const gap = score[column]! * costs[best]! - score[best]! * costs[column]!;
        if (gap > 0 || (gap === 0 && stamp[column]! < stamp[best]!)) best = column;
      }
    }
    return best;
  }

  function add(column: number): void {
    inside[column] = 1;
    stamp[column] = time;
    cost += costs[column]!;
    listPlace[column] = list.length;
    list.push(column);
    for (const foe of foesOf[column]!) foesInside[foe]! += 1;
    let own = 0;
    for (const row of rowsOf[column]!) {
      const count = covered[row]!;
      covered[row] = count + 1;
      if (count === 0) {
        closed(row);
        own += weight[row]!;
        for (const other of columnsOf[row]!) {
          if (other === column) continue;
          score[other]! -= weight[row]!;
          ready[other] = 1;
        }
      } else if (count === 1) {
        for (const other of columnsOf[row]!) {
          if (inside[other] === 1 && other !== column) {
            score[other]! -= weight[row]!;
            break;
          }
        }
      }
    }
    score[column] = own;
  }

  function remove(column: number): void {
    inside[column] = 0;
    stamp[column] = time;
    cost -= costs[column]!;
    const place = listPlace[column]!;
    const last = list.pop()!;
    if (last !== column) {
      list[place] = last;
      listPlace[last] = place;
    }
    listPlace[column] = -1;
    for (const foe of foesOf[column]!) foesInside[foe]! -= 1;
    let own = 0;
    for (const row of rowsOf[column]!) {
      const count = covered[row]!;
      covered[row] = count - 1;
      if (count === 1) {
        opened(row);
        own += weight[row]!;
        for (const other of columnsOf[row]!) {
          if (other === column) continue;
          score[other]! += weight[row]!;
          ready[other] = 1;
        }
      } else if (count === 2) {
        for (const other of columnsOf[row]!) {
          if (inside[other] === 1) {
            score[other]! += weight[row]!;
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
