import { areaOf } from "../geometry/index.ts";
import type { Column } from "./columns.ts";
import type { PlacementWorld } from "./contract.ts";
import type { DemandPart } from "./demand-rows.ts";
import type { Matrix } from "./matrix.ts";
import { holesOf } from "./strict.ts";

/** Rounds in which one device each is shifted. */
const ROUNDS = 6;

/**
 * Closes slivers that a layout leaves by shifting its devices a little off the grid.
 *
 * A layout on the grid may miss strictness by millimetres where edges of zones and shadows happen to meet. Then a device more would be
 * the answer to a question of the grid, not of the room.
 *
 * @param matrix - Columns that the layout is taken from; the shifted devices are put in.
 * @param question.chosen - The layout, as columns. @param question.parts - What must be covered.
 * @param question.beside - Places beside a column that are allowed for the same model. @param question.world - Hosts; `until` is the cut-off.
 * @returns The strict layout as columns, the new ones among them; undefined where no shift closes all holes.
 * @source DERIVED-HERE
 * @example A sliver 10 mm wide behind a column, the device free to move by 50 mm: the device moved
 */
export async function nudged(
  matrix: Matrix,
  question: {
    readonly chosen: readonly number[];
    readonly parts: readonly DemandPart[];
    readonly beside: (column: Column) => readonly Column[];
    readonly world: PlacementWorld;
    readonly until: number;
  },
): Promise<readonly number[] | undefined> {
  const { parts, beside, world, until } = question;
  const added = new Map<number, readonly number[]>();
  let chosen = [...question.chosen];
  let least = leftBy(matrix, parts, chosen);
  for (let round = 0; round < ROUNDS && least > 0; round++) {
    let better: number[] | undefined;
    for (const column of chosen) {
      if (matrix.columns[column]!.fixed !== undefined) continue;
      let places = added.get(column);
      if (places === undefined) {
        const first = matrix.columns.length;
        const columns = beside(matrix.columns[column]!);
        matrix.addColumns(columns);
        places = columns.map((_, index) => first + index);
        added.set(column, places);
      }
      for (const place of places) {
        const other = chosen.map((one) => (one === column ? place : one));
        const left = leftBy(matrix, parts, other);
        if (left < least) [least, better] = [left, other];
        await world.breathe();
        if (world.cancelled() || world.now() >= until) return undefined;
        if (least === 0) return other;
      }
    }
    if (better === undefined) return undefined;
    chosen = better;
  }
  return least === 0 ? chosen : undefined;
}

/** Area of the holes that a layout leaves. [m²] */
const leftBy = (matrix: Matrix, parts: readonly DemandPart[], chosen: readonly number[]): number =>
  holesOf(
    parts,
    chosen.map((column) => matrix.watches[column]!),
  ).reduce((sum, hole) => sum + areaOf(hole.region), 0);
