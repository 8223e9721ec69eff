import type { PlacementWorld } from "./contract.ts";
import { type LocalSearch, localSearch } from "./cover/local-search.ts";
import { priceSearch, pricesInSlices } from "./cover/prices.ts";
import { costSums } from "./cover/steps.ts";
import { type DemandPart, type DemandRow, rowAt } from "./demand-rows.ts";
import type { Matrix } from "./matrix.ts";
import { type Hole, holesOf } from "./strict.ts";

/** A layout as columns of a matrix. */
export interface Found {
  readonly chosen: readonly number[];
  readonly cost: number;
  /** What it leaves uncovered; nothing: it is strict. */
  readonly holes: readonly Hole[];
}

/** How far the search for a strict layout came. */
export interface FindAnswer {
  /** Strict, or with holes where time ran out or nothing sees a place. */
  readonly best: Found;
  /** Rows that no column covers; they were left out. */
  readonly hopeless: readonly DemandRow[];
  readonly stopped: "no" | "yes";
}

/** What the search needs beside the matrix. */
export interface FindQuestion {
  readonly parts: readonly DemandPart[];
  readonly world: PlacementWorld;
  readonly until: number;
  readonly seed: number;
  readonly start?: readonly number[];
  /** Exchanges after the last better layout; by default few: a proof follows. */
  readonly patience?: number;
  /** A bound that is known: a layout at it cannot be beaten. */
  readonly enough?: number;
  readonly onRound?: (count: number) => void;
}

/**
 * A layout that covers every part to the skin: greedily first, so that there is one early; then the exchange search on the sampled rows,
 * with the holes of each complete choice added as rows until it has none.
 *
 * @param matrix - Columns and sampled rows; rows are added to it.
 * @param question - Parts, cut-off, seed.
 * @returns The cheapest strict layout found. Where some demand cannot be seen from anywhere, the cheapest that leaves only that; where time ran out, the greedy one as far as it came.
 * @source DERIVED-HERE
 * @example A room within the reach of one device: that device, no holes
 */
export async function findStrict(matrix: Matrix, question: FindQuestion): Promise<FindAnswer> {
  const { parts, world, until, seed } = question;
  const hopeless: DemandRow[] = [];
  const { model } = coverable(matrix);
  await world.breathe();
  for (const [index, row] of matrix.rows.entries())
    if (matrix.covering(index).length === 0) hopeless.push(row);
  const search = localSearch(model, {
    seed,
    ...(question.start === undefined ? {} : { start: question.start }),
  });
  const size = model.rows.reduce((sum, row) => sum + row.length, 0);
  await world.breathe();
  const slice = Math.max(20, Math.round(3e6 / (size + 3e4)));
  const over = (): boolean => world.cancelled() || world.now() >= until;
  const cheapest = Math.min(...model.costs.filter((cost) => cost > 0), Number.MAX_VALUE);
  const found = (chosen: readonly number[], holes: readonly Hole[]): Found => ({
    chosen,
    cost: chosen.reduce((sum, column) => sum + model.costs[column]!, 0),
    holes,
  });
  // Somebody waits for what there is: how it does is looked at once, when it is judged.
  if (world.cancelled()) return { best: found(search.chosen(), []), hopeless, stopped: "yes" };
  // Prices of the samples: a layout at their bound cannot be beaten, and the search may stop there.
  const prices = priceSearch(model);
  await world.breathe();
  const target = search.best()?.cost ?? found(search.chosen(), []).cost;
  await pricesInSlices(prices, { count: 150, target, breathe: world.breathe, over });
  const least = Math.max(question.enough ?? 0, costSums(model.costs).up(prices.best().bound));
  await world.breathe();
  const patienceNow = (): number =>
    question.patience ?? ((search.best()?.chosen.length ?? 0) > PROVABLE ? PATIENT : QUICK * slice);
  // Samples first: no strict layout costs less than their cover, so that is where to begin.
  for (
    let stale = 0;
    stale < patienceNow() / 4 && !over() && (search.best()?.cost ?? least + 1) > least + 1e-9;
  ) {
    if (search.steps(slice) === "cover") {
      search.accept();
      stale = 0;
    } else stale += slice;
    await world.breathe();
  }
  const base = search.best();
  const patience = patienceNow();
  // Something to show early: holes filled greedily until there is none. It may take a device too many.
  let best = found(search.chosen(), []);
  for (let round = 0; ; round++) {
    search.complete();
    const chosen = search.chosen();
    if (world.cancelled()) return { best: found(chosen, []), hopeless, stopped: "yes" };
    const holes = holesOf(
      parts,
      chosen.map((column) => matrix.watches[column]!),
    );
    best = found(chosen, holes);
    await world.breathe();
    if (over()) return { best, hopeless, stopped: "yes" };
    const more = holes.length > 0 && addWitnesses({ holes, matrix, search, hopeless });
    if (!more || round >= GREEDY_ROUNDS) break;
  }
  question.onRound?.(best.chosen.length);
  // Then from the cost of the samples' cover upwards, one device more each time that no layout turns up.
  let limit = Math.min((base?.cost ?? 0) + cheapest / 2, best.cost);
  search.below(limit);
  for (let stale = 0; best.cost > least + 1e-9; ) {
    if (search.steps(slice) === "cover") {
      const chosen = search.chosen();
      const holes = holesOf(
        parts,
        chosen.map((column) => matrix.watches[column]!),
      );
      if (holes.length === 0 || !addWitnesses({ holes, matrix, search, hopeless })) {
        search.accept();
        best = found(chosen, holes);
        limit = best.cost;
        stale = 0;
        question.onRound?.(chosen.length);
      }
    }
    stale += slice;
    await world.breathe();
    if (over()) return { best, hopeless, stopped: "yes" };
    if (stale < patience / 2) continue;
    if (limit >= best.cost - 1e-9) break;
    // Room for one more: the samples were too kind.
    limit = Math.min(limit + cheapest, best.cost);
    search.below(limit);
    stale = 0;
  }
  return { best, hopeless, stopped: "no" };
}

/** Rounds of greedy filling at most; each closes what the last left open, so that few are needed. */
const GREEDY_ROUNDS = 40;

/** Slices of exchanges after the last better layout in a first search: the solver then proves, or finds the better layout, in less time than more take. */
const QUICK = 6;

/** Layouts of more devices are seldom proven fewest within the time that a person waits: there the search gets the patience at once. */
const PROVABLE = 10;

/** Exchanges of a search that is left with all the time there is. */
export const PATIENT = 20_000;

interface Witnesses {
  readonly holes: readonly Hole[];
  readonly matrix: Matrix;
  readonly search: LocalSearch;
  readonly hopeless: DemandRow[];
}

/** Puts the witnesses of holes in as rows; whether any of them is open now, so that the search has something to close. */
function addWitnesses({ holes, matrix, search, hopeless }: Witnesses): boolean {
  const chosen = new Set(search.chosen());
  let open = false;
  for (const hole of holes) {
    for (const at of hole.witnesses) {
      const row = rowAt(hole.part, at);
      const index = matrix.rows.length;
      matrix.addRows([row]);
      const covering = matrix.covering(index);
      if (covering.length === 0) hopeless.push(row);
      else {
        search.addRow(covering);
        if (!covering.some((column) => chosen.has(column))) open = true;
      }
    }
  }
  return open;
}

/** The model of a matrix without the rows that no column covers. @param matrix - The matrix. @returns The model. */
export function coverable(matrix: Matrix) {
  const model = matrix.model();
  return { model: { ...model, rows: model.rows.filter((row) => row.length > 0) } };
}
