import type { Column } from "./columns.ts";
import type { PlacementWorld } from "./contract.ts";
import { checkedChoice } from "./cover/incidence.ts";
import { solveCover } from "./cover/index.ts";
import { priceSearch, pricesInSlices } from "./cover/prices.ts";
import { isReducible, nonImpliedRows } from "./cover/reduction.ts";
import { costSums } from "./cover/steps.ts";
import { type DemandPart, rowAt } from "./demand-rows.ts";
import { coverable, type Found } from "./find-strict.ts";
import { type Matrix, matrixOf } from "./matrix.ts";
import { nudged } from "./nudge.ts";
import type { Scenes } from "./sight-book.ts";
import { holesOf } from "./strict.ts";

/** A strict layout with what is proven about it. */
export interface Proven {
  readonly found: Found;
  /** No strict layout of the candidates costs less. */
  readonly bound: number;
}

/** What the proof needs beside the matrix. */
export interface ProofQuestion {
  readonly found: Found;
  readonly parts: readonly DemandPart[];
  readonly eroded: Scenes;
  readonly world: PlacementWorld;
  readonly until: number;
  readonly seed: number;
  /** Places beside a column that are allowed for the same model; absent where only the given places count. */
  readonly beside?: (column: Column) => readonly Column[];
  readonly onBound?: (bound: number) => void;
}

/** Rounds of proof and better layouts at most. */
const ROUNDS = 60;

/** Covers that miss strictness by a hair and are tried with shifted devices, at most. */
const NUDGES = 3;

/**
 * Bound on every strict layout of the candidates, and a cheaper layout where there is one.
 *
 * A strict layout may leave a skin uncovered, so the bound's rows count as covered where any place within the skin round the witness is seen:
 * outward zones, solids shrunk by the skin. A cover of these rows that is cheaper than the layout at hand is checked exactly: either it is a
 * better layout, or its holes become rows.
 *
 * @param matrix - Columns and rows of the search; rows are added to it.
 * @param question - Layout at hand, parts, eroded scenes, cut-off.
 * @returns The best strict layout known and the bound; bound = cost: fewest among the candidates.
 * @source DERIVED-HERE
 * @example One device in a small room: bound 1 device
 */
export async function proveFewest(matrix: Matrix, question: ProofQuestion): Promise<Proven> {
  const { parts, eroded, world, until, seed, beside } = question;
  let { found } = question;
  let nudges = NUDGES;
  const outward = matrixOf({ scenes: eroded, purpose: "outward" });
  const over = (): boolean => world.cancelled() || world.now() >= until;
  for (let from = 0; from < matrix.columns.length; from += 64) {
    // Without some of the columns there is no bound.
    if (over()) return { found, bound: 0 };
    outward.addColumns(matrix.columns.slice(from, from + 64));
    await world.breathe();
  }
  const { model } = coverable(matrix);
  const reducible = isReducible(model.rows.length, model.costs.length);
  const rows = matrix.rows.filter((_, index) => matrix.covering(index).length > 0);
  for (const row of reducible ? nonImpliedRows(model) : rows.keys()) {
    if (rows[row]!.deep) outward.addRows([rows[row]!]);
    if (outward.rows.length % 8 === 0) await world.breathe();
    // Fewer rows bound from below as well; a last tenth of a second turns them into prices.
    if (world.cancelled() || world.now() >= until - 0.1) break;
  }
  const sums = costSums(model.costs);
  if (!reducible) {
    const prices = priceSearch(coverable(outward).model);
    await pricesInSlices(prices, { count: 300, target: found.cost, breathe: world.breathe, over });
    return { found, bound: Math.min(found.cost, Math.max(0, sums.up(prices.best().bound))) };
  }
  let bound = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const loose = outward.model();
    const answer = await solveCover(loose, {
      seed: seed + round,
      until,
      now: world.now,
      cancelled: world.cancelled,
      breathe: world.breathe,
      solver: world.solver,
      aim: "prove",
      start: found.chosen,
    });
    bound = Math.max(bound, Math.min(answer.bound, found.cost));
    question.onBound?.(bound);
    if (answer.chosen === undefined || answer.cost > found.cost - Math.max(1e-9, sums.step / 2)) break;
    const holes = holesOf(
      parts,
      answer.chosen.map((column) => matrix.watches[column]!),
    );
    if (holes.length === 0) {
      found = { chosen: answer.chosen, cost: checkedChoice(loose, answer.chosen).cost, holes };
      continue;
    }
    if (over()) break;
    const before = outward.rows.length;
    const news = holes.flatMap((hole) => hole.witnesses.slice(0, 1).map((at) => rowAt(hole.part, at)));
    matrix.addRows(holes.flatMap((hole) => hole.witnesses.map((at) => rowAt(hole.part, at))));
    outward.addRows(news.filter((row) => row.deep));
    const cut = Array.from({ length: outward.rows.length - before }, (_, index) =>
      outward.covering(before + index),
    );
    // Rows that the loose cover meets as well lie within the skin: the gap between bound and cost cannot be closed by more rows.
    if (cut.some((row) => row.length > 0 && !row.some((column) => answer.chosen?.includes(column)))) continue;
    const shifted =
      beside === undefined || nudges-- <= 0
        ? undefined
        : await nudged(matrix, { chosen: answer.chosen, parts, beside, world, until });
    // The shifted places are candidates from now on: the bound must hold for them as well.
    const grown = outward.columns.length < matrix.columns.length;
    for (let from = outward.columns.length; from < matrix.columns.length; from += 64) {
      outward.addColumns(matrix.columns.slice(from, from + 64));
      await world.breathe();
    }
    if (!grown || over()) break;
    if (shifted === undefined) nudges = 0;
    else found = { chosen: shifted, cost: answer.cost, holes: [] };
    bound = 0;
  }
  return { found, bound };
}
