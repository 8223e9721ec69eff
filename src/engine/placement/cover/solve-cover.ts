import type { Seconds } from "../../quantity/index.ts";
import type { CoverModel, CoverSolver } from "../contract.ts";
import { checkedChoice, incidenceOf } from "./incidence.ts";
import { localSearch } from "./local-search.ts";
import { boundOf, priceSearch } from "./prices.ts";
import { reduceCover } from "./reduction.ts";
import { costStep, roundedUp } from "./steps.ts";

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
 * 1. reduce  2. search and prices in turns, until cost = bound rounded up to the step of costs  3. drop columns whose reduced cost
 * shows that no better cover holds them, reduce again  4. solver on what is left, begun from the incumbent
 *
 * @param model - Weighted set cover with conflicts and fixed columns.
 * @param effort - Seed, time and hosts. The answer depends on the seed alone unless the cut-off strikes.
 * @returns Choice, cost, bound; the choice is checked against the full model before it is returned.
 * @source DERIVED-HERE
 */
export async function solveCover(model: CoverModel, effort: CoverEffort): Promise<CoverAnswer> {
  const step = costStep(model.costs);
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
    return answer(model, { chosen: first.taken, bound: first.takenCost, step });

  const place = new Map(first.columns.map((column, index) => [column, index]));
  const start = effort.start?.flatMap((column) => place.get(column) ?? []);
  const core = await solveCore(first.core, { ...effort, ...(start === undefined ? {} : { start }) }, step);
  return answer(model, {
    chosen:
      core.chosen === undefined
        ? undefined
        : [...first.taken, ...core.chosen.map((column) => first.columns[column]!)],
    bound: core.bound + first.takenCost,
    step,
  });
}

interface Core {
  readonly chosen: readonly number[] | undefined;
  readonly bound: number;
}

async function solveCore(model: CoverModel, effort: CoverEffort, step: number): Promise<Core> {
  const search = localSearch(model, effort);
  const prices = priceSearch(model);
  const cost = (): number => search.best()?.cost ?? Number.POSITIVE_INFINITY;
  const bound = (): number => roundedUp(prices.best().bound, step);
  const over = (): boolean => effort.cancelled() || effort.now() >= effort.until;
  const size = model.rows.reduce((sum, row) => sum + row.length, 0);
  const budget = effort.exchanges ?? exchangesFor(size, effort.aim);
  const target = (): number => (Number.isFinite(cost()) ? cost() : model.costs.reduce((a, b) => a + b, 0));
  if (effort.aim === "prove") prices.steps(150, target());
  for (let done = 0; done < budget && cost() > bound() && !over(); ) {
    const slice = Math.max(50, Math.min(budget - done, Math.floor(4e6 / Math.max(size, 2000))));
    while (search.steps(slice) === "cover") {
      search.accept();
      if (cost() <= bound()) break;
    }
    done += slice;
    if (effort.aim === "prove") prices.steps(10, target());
    effort.found?.({ cost: cost(), bound: bound() });
    await effort.breathe();
  }
  if (effort.aim === "prove")
    for (let round = 0; round < 10 && cost() > bound() && !over(); round++) prices.steps(50, target());
  const incumbent = search.best();
  if (effort.aim === "find" || cost() <= bound() || over() || effort.solver === undefined)
    return { chosen: incumbent?.chosen, bound: Math.min(bound(), cost()) };
  return proveCore(model, {
    effort,
    solver: effort.solver,
    step,
    incumbent: incumbent?.chosen,
    cost: cost(),
    price: prices.best().prices,
  });
}

interface Proof {
  readonly effort: CoverEffort;
  readonly solver: CoverSolver;
  readonly step: number;
  readonly incumbent: readonly number[] | undefined;
  readonly cost: number;
  readonly price: Float64Array;
}

/** Solver on the part of the core that can still hold a cover cheaper by at least one step. */
async function proveCore(model: CoverModel, proof: Proof): Promise<Core> {
  const { effort, solver, step, incumbent, cost } = proof;
  const left = (): number => effort.until - effort.now();
  let known = boundOf(incidenceOf(model), proof.price);
  const relaxed = await solver.relax(model, { seconds: Math.max(0.1, left() / 3) });
  if (relaxed !== undefined) {
    // Recomputed from the prices: a bound is not taken on trust.
    const better = boundOf(incidenceOf(model), relaxed.prices);
    if (better.bound > known.bound) known = better;
  }
  const bound = roundedUp(known.bound, step);
  if (bound >= cost - 1e-9) return { chosen: incumbent, bound: Math.min(bound, cost) };
  if (effort.cancelled() || left() <= 0) return { chosen: incumbent, bound };
  // A cover of at most cost − step leaves room of that much above the bound.
  const room = cost - step - known.bound + step * 1e-6;
  const keep: number[] = [];
  const must: number[] = [];
  known.reduced.forEach((reduced, column) => {
    if (reduced <= room) keep.push(column);
    if (-reduced > room) must.push(column);
  });
  const place = new Map(keep.map((column, index) => [column, index]));
  const kept: CoverModel = {
    costs: keep.map((column) => model.costs[column]!),
    rows: model.rows.map((row) => row.flatMap((column) => place.get(column) ?? [])),
    conflicts: model.conflicts.flatMap(([one, other]) => {
      const a = place.get(one);
      const b = place.get(other);
      return a === undefined || b === undefined ? [] : [[a, b] as const];
    }),
    fixed: must.flatMap((column) => place.get(column) ?? []),
  };
  const inner = reduceCover(kept);
  // Nothing cheaper is left over: the incumbent is best.
  if (inner.hopeless !== undefined) return { chosen: incumbent, bound: cost };
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
    ...(begin === undefined ? {} : { start: begin }),
  });
  // No cover of the kept columns below its bound; and none with dropped columns below the incumbent.
  const proven = Math.max(bound, Math.min(cost, roundedUp(solved.bound + inner.takenCost, step)));
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

function answer(model: CoverModel, { chosen, bound, step }: Core & { readonly step: number }): CoverAnswer {
  if (chosen === undefined) return { chosen, cost: Number.POSITIVE_INFINITY, bound, optimal: false };
  const { valid, cost } = checkedChoice(model, chosen);
  if (!valid) throw new Error("The search returned a choice that does not cover the model.");
  return {
    chosen: [...chosen].sort((a, b) => a - b),
    cost,
    bound: Math.min(bound, cost),
    optimal: cost - bound <= Math.max(1e-9, step * 1e-6),
  };
}
