import type { PlacementWorld } from "./contract.ts";
import { solveCover } from "./cover/index.ts";
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
  readonly best: Found | undefined;
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
  readonly onRound?: (count: number) => void;
}

/** Rounds of looking for holes at most: each adds the witnesses of every hole, and some ten are usual. */
const ROUNDS = 400;

/**
 * A layout that covers every part to the skin: covers of the rows, with the holes of each layout added as rows until there are none.
 *
 * @param matrix - Columns and sampled rows; rows are added to it.
 * @param question - Parts, cut-off, seed.
 * @returns The last layout; strict unless it was stopped or some demand is hopeless.
 * @source DERIVED-HERE
 * @example A room within the reach of one device: that device, no holes
 */
export async function findStrict(matrix: Matrix, question: FindQuestion): Promise<FindAnswer> {
  const { parts, world, until, seed } = question;
  let start = question.start;
  let best: Found | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const { model, hopeless } = coverable(matrix);
    const answer = await solveCover(model, {
      seed: seed + round,
      until,
      now: world.now,
      cancelled: world.cancelled,
      breathe: world.breathe,
      aim: "find",
      ...(start === undefined ? {} : { start }),
    });
    if (answer.chosen === undefined) return { best, hopeless, stopped: "yes" };
    const holes = holesOf(
      parts,
      answer.chosen.map((column) => matrix.watches[column]!),
    );
    best = { chosen: answer.chosen, cost: answer.cost, holes };
    const news = holes.flatMap((hole) => hole.witnesses.map((at) => rowAt(hole.part, at)));
    const before = matrix.rows.length;
    matrix.addRows(news);
    // A hole whose witnesses nobody sees, or all of which the layout already sees, cannot be closed by choosing.
    const closable = matrix
      .model()
      .rows.slice(before)
      .some((row) => row.length > 0 && !row.some((column) => answer.chosen?.includes(column)));
    if (holes.length === 0 || !closable) return { best, hopeless: coverable(matrix).hopeless, stopped: "no" };
    if (world.cancelled() || world.now() >= until) return { best, hopeless, stopped: "yes" };
    start = answer.chosen;
    question.onRound?.(answer.chosen.length);
    await world.breathe();
  }
  return { best, hopeless: coverable(matrix).hopeless, stopped: "yes" };
}

/** The model of a matrix without the rows that no column covers. @param matrix - The matrix. @returns The model, and those rows. */
export function coverable(matrix: Matrix) {
  const model = matrix.model();
  return {
    model: { ...model, rows: model.rows.filter((row) => row.length > 0) },
    hopeless: matrix.rows.filter((_, index) => model.rows[index]!.length === 0),
  };
}
