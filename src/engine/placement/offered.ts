import type { Point } from "../geometry/index.ts";
import { type Choice, seesHeat } from "./choose-columns.ts";
import { type Column, fitsHeight } from "./columns.ts";
import type { PlacementOptions, PlacementWorld } from "./contract.ts";
import type { DemandRow } from "./demand-rows.ts";
import type { Found } from "./find-strict.ts";
import { type Judged, judgedLayout } from "./layout.ts";
import { leastInHand, measureOf } from "./measure.ts";
import { refined } from "./quality.ts";
import { rowsAtHand } from "./row-field.ts";
import type { RoomTask } from "./task.ts";

/** What the offer needs beside the room. */
export interface OfferQuestion {
  readonly choice: Choice;
  readonly rows: readonly DemandRow[];
  readonly found: Found;
  readonly options: PlacementOptions;
  readonly world: PlacementWorld;
  readonly until: number;
}

/** Layouts of so many devices are judged in next to no time. */
const QUICKLY_JUDGED = 60;

/**
 * The layout found, refined and judged, and its alternatives; each of them is strict by the coverage calculation.
 *
 * @param task - The room. @param question - The layout found, where devices may hang, how many alternatives.
 * @returns At least one; a layout that leaves holes is judged as it is, without alternatives.
 * @source DERIVED-HERE
 * @example A room that one device sees from many places: the one in the middle, and one with less spill through the door
 */
export async function offeredLayouts(
  task: RoomTask,
  question: OfferQuestion,
): Promise<readonly [Judged, ...Judged[]]> {
  const { choice, rows, found, options, world, until } = question;
  const { ceiling, candidates, matrix, strictness } = choice;
  const columns = found.chosen.map((column) => matrix.columns[column]!);
  const at = rowsAtHand(rows);
  const measures = found.chosen.map((column) =>
    measureOf(task, { column: matrix.columns[column]!, watch: matrix.watches[column]!, at }),
  );
  await world.breathe();
  const plain = (): Judged =>
    judgedLayout(task, { columns, leastMargin: leastInHand(measures, rows.length) });
  if (found.holes.length > 0 || world.cancelled() || world.now() >= until) return [plain()];
  let end = until;
  if (columns.length > QUICKLY_JUDGED) {
    // To judge a hall takes its time, which has to be kept for what refining brings.
    const begun = world.now();
    const judged = plain();
    await world.breathe();
    end = until - 1.5 * (world.now() - begun);
    if (world.cancelled() || world.now() >= end) return [judged];
  }
  const moved = (column: Column, at: Point): Column | undefined => {
    if (ceiling.refusal(at) !== undefined) return undefined;
    const height = ceiling.heightAt(at);
    if (!fitsHeight(column.device.model, height)) return undefined;
    const there: Column = { device: { ...column.device, at, height }, cost: column.cost };
    return strictness.heat === "unseen" && seesHeat(task, there) ? undefined : there;
  };
  const layouts = await refined(task, {
    measures,
    rows: at,
    places: candidates.points,
    hang: candidates.from === "free-grid" ? "free" : "places",
    moved,
    alternatives: options.alternatives,
    world,
    until: end,
  });
  const strict = layouts
    .map((layout) => judgedLayout(task, layout))
    .filter(({ coverage }) => coverage.gaps.length === 0);
  const [best, ...others] = strict;
  return best === undefined ? [plain()] : [best, ...others];
}
