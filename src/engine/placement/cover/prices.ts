import type { CoverModel } from "../contract.ts";
import { type Incidence, incidenceOf } from "./incidence.ts";

/** A price for each row and what it proves. */
export interface Prices {
  readonly prices: Float64Array;
  /** Lower bound on the cost of any cover. */
  readonly bound: number;
  /** What each column costs beyond the prices of its rows; negative: it pays. */
  readonly reduced: Float64Array;
}

/**
 * Lower bound that given row prices prove, with a margin for rounding.
 *
 * L(u) = Σᵣ uᵣ + Σⱼ min(0, cⱼ − Σ_{r ∈ j} uᵣ), for any u ≥ 0: every cover with each column at most once costs at least that.
 *
 * @param incidence - The cover model by columns.
 * @param prices - Price of each row; negative ones count as 0.
 * @returns Bound and reduced costs.
 * @source DERIVED-HERE
 * @example Two rows without a common column, both at cost 1 and price 1: bound 2
 */
export function boundOf(incidence: Incidence, prices: ArrayLike<number>): Prices {
  const clean = Float64Array.from(prices, (price) => Math.max(0, price));
  const reduced = Float64Array.from(incidence.costs);
  let bound = 0;
  for (const price of clean) bound += price;
  let size = bound;
  for (let column = 0; column < reduced.length; column++) {
    const rows = incidence.rowsOf[column]!;
    let left = reduced[column]!;
    for (let i = 0; i < rows.length; i++) left -= clean[rows[i]!]!;
    reduced[column] = left;
    if (left < 0) {
      bound += left;
      size -= left;
    }
  }
  // Sums of a few thousand terms lose at most some thousands of units in the last place.
  return { prices: clean, bound: bound - size * 1e-11, reduced };
}

/** Best prices so far; carries on from where it stopped. */
export interface PriceSearch {
  readonly best: () => Prices;
  /** Does so many steps of the subgradient method towards the target. */
  readonly steps: (count: number, target: number) => void;
  /** Entries of the model: the work of a step. */
  readonly size: number;
}

/** Entries between two breaths: some hundredths of a second. */
const ENTRIES_A_BREATH = 1e7;

/**
 * Steps of a price search, with breaths between them where the model is large.
 *
 * @param search - The search. @param work.count - Steps. @param work.target - Cost to aim at. @param work.breathe - Lets the host breathe. @param work.over - Whether time is up.
 * @returns When all steps are done, or time is up.
 * @example A model of a million entries: a breath after every ten steps
 */
export async function pricesInSlices(
  search: PriceSearch,
  work: {
    readonly count: number;
    readonly target: number;
    readonly breathe: () => Promise<void>;
    readonly over: () => boolean;
  },
): Promise<void> {
  const slice = Math.max(1, Math.floor(ENTRIES_A_BREATH / Math.max(1, search.size)));
  for (let done = 0; done < work.count && !work.over(); done += slice) {
    search.steps(Math.min(slice, work.count - done), work.target);
    if (done + slice < work.count) await work.breathe();
  }
}

/**
 * Row prices by the subgradient method (Held and Karp), for a bound without a solver.
 *
 * u ← max(0, u + λ (target − L(u)) g / |g|²), with g = 1 − (columns that pay and cover the row)
 *
 * @param model - The cover model.
 * @param start - Prices to begin with; by default each row pays the least of cost(j) ÷ rows(j).
 * @returns The search; conflicts are left out, which keeps the bound valid.
 * @source FROM-MEMORY
 */
export function priceSearch(model: CoverModel, start?: ArrayLike<number>): PriceSearch {
  const incidence = incidenceOf(model);
  const rows = model.rows.length;
  const prices = Float64Array.from(
    start ??
      incidence.columnsOf.map((columns) => {
        let least = Number.POSITIVE_INFINITY;
        for (const column of columns)
          least = Math.min(least, incidence.costs[column]! / incidence.rowsOf[column]!.length);
        return Number.isFinite(least) ? least : 0;
      }),
  );
  let best = boundOf(incidence, prices);
  let lambda = 1;
  let stale = 0;
  const slope = new Float64Array(rows);
  return { best: () => best, steps, size: model.rows.reduce((sum, row) => sum + row.length, 0) };

  function steps(count: number, target: number): void {
    for (let step = 0; step < count && lambda > 1e-4; step++) {
      const now = boundOf(incidence, prices);
      if (now.bound > best.bound + 1e-9) {
        best = now;
        stale = 0;
      } else if (++stale >= 15) {
        stale = 0;
        lambda /= 2;
        prices.set(best.prices);
        continue;
      }
      slope.fill(1);
      for (let column = 0; column < now.reduced.length; column++)
        if (now.reduced[column]! < 0) for (const row of incidence.rowsOf[column]!) slope[row]! -= 1;
      let norm = 0;
      for (let row = 0; row < rows; row++) {
        // A row at price 0 that is covered too often cannot get cheaper.
        if (prices[row] === 0 && slope[row]! < 0) slope[row] = 0;
        norm += slope[row]! * slope[row]!;
      }
      if (norm === 0) break;
      const size = (lambda * Math.max(1e-6, target - now.bound)) / norm;
      for (let row = 0; row < rows; row++) prices[row] = Math.max(0, prices[row]! + size * slope[row]!);
    }
  }
}
