import type { Seconds } from "../../quantity/index.ts";
import type { CoverModel, CoverSolver } from "../contract.ts";
import { checkedChoice, incidenceOf } from "./incidence.ts";
import { localSearch } from "./local-search.ts";
import { boundOf, type Prices, priceSearch } from "./prices.ts";
import { type Reduced, reduceCover } from "./reduction.ts";
import { type CostSums, costSums } from "./steps.ts";

/** How hard to try, and who may stop it. */
export interface CoverEffort {
  readonly seed: number;
  /** Cut-off, as a moment of `now`. */
  readonly until: Seconds;
  readonly now: () => Seconds;
  readonly cancelled: () => boolean;
  readonly breathe: () => Promise<void>;
  /** Absent: own bound only. */
  readonly solver?: CoverSolver;
  readonly start?: readonly number[];
  /** "find": a good cover quickly; "prove": until cost and bound meet or time is up. */
  readonly aim: "find" | "prove";
  /** Exchanges of the search at most; by default as many as suit the size. */
  readonly exchanges?: number;
  readonly found?: (answer: { readonly cost: number; readonly bound: number }) => void;
}

export interface CoverAnswer {
  /** Best choice found; undefined: none (or none exists, see `hopeless`). */
  readonly chosen: readonly number[] | undefined;
  readonly cost: number;
  /** No cover costs less. */
  readonly bound: number;
  /** Row that no column covers. */
  readonly hopeless?: number;
  readonly optimal: boolean;
}

/**
 * Least-cost cover: reduction by dominance, own exchange search for the incumbent, row prices and the MILP solver for the bound.
 *
 * 1. reduce  2. search and prices in turns, until cost = bound brought up to the next sum of costs  3. relaxation  4. drop columns
 * whose reduced cost shows that no better cover holds them, reduce again; more of 2 if much is left  5. solver on what is left, begun
 * from the incumbent
 *
 * @param model - Weighted set cover with conflicts and fixed columns.
 * @param effort - Seed, time and hosts. The answer depends on the seed alone unless the cut-off strikes.
 * @returns Choice, cost, bound; the choice is checked against the full model before it is returned.
 * @source DERIVED-HERE
 */
export async function solveCover(model: CoverModel, effort: CoverEffort): Promise<CoverAnswer> {
  const sums = costSums(model.costs);
  const first = reduceCover(model);
  if (first.hopeless !== undefined)
    return {
      chosen: undefined,
      cost: Number.POSITIVE_INFINITY,
      bound: Number.POSITIVE_INFINITY,
      hopeless: first.hopeless,
      optimal: false,
    };
  if (first.core.rows.length === 0)
    return answer(model, { chosen: first.taken, bound: first.takenCost, sums });

  const place = new Map(first.columns.map((column, index) => [column, index]));
  const start = effort.start?.flatMap((column) => place.get(column) ?? []);
  const core = await solveCore(first.core, { ...effort, ...(start === undefined ? {} : { start }) }, sums);
  return answer(model, {
    chosen:
      core.chosen === undefined
        ? undefined
        : [...first.taken, ...core.chosen.map((column) => first.columns[column]!)],
    bound: core.bound + first.takenCost,
    sums,
  });
}

interface Core {
  readonly chosen: readonly number[] | undefined;
  readonly bound: number;
}

async function solveCore(model: CoverModel, effort: CoverEffort, sums: CostSums): Promise<Core> {
  const search = localSearch(model, effort);
  const prices = priceSearch(model);
  const { solver } = effort;
  const proving = effort.aim === "prove";
  let relaxed: Prices | undefined;
  /** What the relaxation comes to when it is rounded. */
  let begun: ReturnType<typeof search.best>;
  const best = (): typeof begun =>
    begun !== undefined && begun.cost < (search.best()?.cost ?? Number.POSITIVE_INFINITY)
      ? begun
      : search.best();
  const known = (): Prices =>
    relaxed !== undefined && relaxed.bound > prices.best().bound ? relaxed : prices.best();
  const cost = (): number => best()?.cost ?? Number.POSITIVE_INFINITY;
  const bound = (): number => sums.up(known().bound);
  const over = (): boolean => effort.cancelled() || effort.now() >= effort.until;
  const left = (): number => effort.until - effort.now();
  const size = model.rows.reduce((sum, row) => sum + row.length, 0);
  const target = (): number => (Number.isFinite(cost()) ? cost() : model.costs.reduce((a, b) => a + b, 0));
  const searched = async (exchanges: number): Promise<void> => {
    for (let done = 0; done < exchanges && cost() > bound() && !over(); ) {
      const slice = Math.max(50, Math.min(exchanges - done, Math.floor(4e6 / Math.max(size, 2000))));
      while (search.steps(slice) === "cover") {
        search.accept();
        if (cost() <= bound()) break;
      }
      done += slice;
      if (proving && relaxed === undefined) prices.steps(10, target());
      effort.found?.({ cost: cost(), bound: bound() });
      await effort.breathe();
    }
  };
  const found = (): Core => ({ chosen: best()?.chosen, bound: Math.min(bound(), cost()) });
  const budget = effort.exchanges ?? exchangesFor(size, effort.aim);
  if (proving) prices.steps(150, target());
  if (!proving || solver === undefined) {
    await searched(budget);
    if (proving)
      for (let round = 0; round < 10 && cost() > bound() && !over(); round++) prices.steps(50, target());
    return found();
  }
  // The relaxation bounds better than prices that were searched for; a small part of the search may make it unnecessary.
  await searched(Math.ceil(budget * BEFORE_RELAXATION));
  if (cost() <= bound() || over()) return found();
  const dual = await solver.relax(model, { seconds: Math.max(0.1, left() / 3) });
  // Recomputed from the prices: a bound is not taken on trust.
  if (dual !== undefined) {
    relaxed = boundOf(incidenceOf(model), dual.prices);
    const rounded = localSearch(model, { seed: effort.seed, start: dual.most });
    if (rounded.steps(1) === "cover") {
      rounded.accept();
      begun = rounded.best();
      search.below(cost());
    }
  }
  const proof = (): Proof => ({ sums, incumbent: best()?.chosen, cost: cost(), known: known() });
  let rest = leftOver(model, proof());
  if (rest !== undefined && rest.inner.core.rows.length * rest.inner.core.costs.length > SMALL) {
    await searched(Math.floor(budget * (1 - BEFORE_RELAXATION)));
    rest = leftOver(model, proof());
  }
  if (cost() <= bound() || over()) return found();
  // Nothing cheaper is left over: the incumbent is best.
  if (rest === undefined) return { chosen: best()?.chosen, bound: cost() };
  return solvedRest(model, { ...proof(), rest, solver, effort });
}

/** Part of the search that comes before the relaxation. */
const BEFORE_RELAXATION = 0.2;

/** Rows times columns of what the solver is through with sooner than the search. */
const SMALL = 10_000;

interface Proof {
  readonly sums: CostSums;
  readonly incumbent: readonly number[] | undefined;
  readonly cost: number;
  readonly known: Prices;
}

/** The part of the core that can still hold a cheaper cover. */
interface Rest {
  readonly inner: Reduced;
  /** Column of the core behind each column before the reduction. */
  readonly keep: readonly number[];
}

/** What reduced costs leave of the core; undefined: no cheaper cover exists. */
function leftOver(model: CoverModel, { sums, cost, known }: Proof): Rest | undefined {
  // A cheaper cover leaves room of that much above the bound.
  const room = sums.below(cost) - known.bound + Math.max(1e-9, sums.step * 1e-6);
  if (room < 0) return undefined;
  const keep: number[] = [];
  const must: number[] = [];
  known.reduced.forEach((reduced, column) => {
    if (reduced <= room) keep.push(column);
    if (-reduced > room) must.push(column);
  });
  const place = new Map(keep.map((column, index) => [column, index]));
  const inner = reduceCover({
    costs: keep.map((column) => model.costs[column]!),
    rows: model.rows.map((row) => row.flatMap((column) => place.get(column) ?? [])),
    conflicts: model.conflicts.flatMap(([one, other]) => {
      const a = place.get(one);
      const b = place.get(other);
      return a === undefined || b === undefined ? [] : [[a, b] as const];
    }),
    fixed: must.flatMap((column) => place.get(column) ?? []),
  });
  return inner.hopeless === undefined ? { inner, keep } : undefined;
}

/** Solver on what is left of the core. */
async function solvedRest(
  model: CoverModel,
  {
    sums,
    incumbent,
    cost,
    known,
    rest: { inner, keep },
    solver,
    effort,
  }: Proof & { readonly rest: Rest; readonly solver: CoverSolver; readonly effort: CoverEffort },
): Promise<Core> {
  const bound = sums.up(known.bound);
  const left = (): number => effort.until - effort.now();
  const toFull = (columns: readonly number[]): number[] =>
    [...inner.taken, ...columns.map((column) => inner.columns[column]!)].map((column) => keep[column]!);
  if (inner.core.rows.length === 0) {
    const chosen = toFull([]);
    const found = checkedChoice(model, chosen);
    return found.valid && found.cost < cost
      ? { chosen, bound: found.cost }
      : { chosen: incumbent, bound: cost };
  }
  const back = new Map(inner.columns.map((column, index) => [keep[column]!, index]));
  const begin = incumbent?.every(
    (column) => back.has(column) || inner.taken.some((one) => keep[one] === column),
  )
    ? incumbent.flatMap((column) => back.get(column) ?? [])
    : undefined;
  const solved = await solver.solve(inner.core, {
    seconds: left(),
    stop: () => effort.cancelled() || left() <= 0,
    gap: sums.gap(bound, cost),
    ...(begin === undefined ? {} : { start: begin }),
  });
  // No cover of the kept columns below its bound; and none with dropped columns below the incumbent.
  const proven = Math.max(bound, Math.min(cost, sums.up(solved.bound + inner.takenCost)));
  if (solved.chosen !== undefined) {
    const chosen = toFull(solved.chosen);
    const found = checkedChoice(model, chosen);
    if (found.valid && found.cost < cost - 1e-9) return { chosen, bound: Math.min(found.cost, proven) };
  }
  return { chosen: incumbent, bound: proven };
}

/** More exchanges for what is small, so that both take seconds at most. */
const exchangesFor = (size: number, aim: CoverEffort["aim"]): number =>
  Math.round((aim === "find" ? 0.25 : 1) * Math.min(60_000, Math.max(2_000, 40 * Math.sqrt(size))));

function answer(model: CoverModel, { chosen, bound, sums }: Core & { readonly sums: CostSums }): CoverAnswer {
  if (chosen === undefined) return { chosen, cost: Number.POSITIVE_INFINITY, bound, optimal: false };
  const { valid, cost } = checkedChoice(model, chosen);
  if (!valid) throw new Error("The search returned a choice that does not cover the model.");
  return {
    chosen: [...chosen].sort((a, b) => a - b),
    cost,
    bound: Math.min(bound, cost),
    optimal: cost - bound <= Math.max(1e-9, sums.step * 1e-6),
  };
}
