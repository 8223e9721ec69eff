import { watchZone } from "../coverage/index.ts";
import {
  boundsOf,
  contains,
  distanceToRings,
  type Outline,
  type Point,
  type Region,
  ringsOf,
} from "../geometry/index.ts";
import type { Metres, Radians } from "../quantity/index.ts";
import type { Ceiling } from "./ceiling.ts";
import { turnsOf, watchOf } from "./columns.ts";
import type { CoverModel, PlacementWorld } from "./contract.ts";
import { solveCover } from "./cover/index.ts";
import { priceSearch } from "./cover/prices.ts";
import { costSums } from "./cover/steps.ts";
import type { DemandRow } from "./demand-rows.ts";
import type { RoomTask } from "./task.ts";

/** What the bound for any position needs. */
export interface AnywhereQuestion {
  readonly task: RoomTask;
  readonly ceiling: Ceiling;
  readonly base: Radians;
  /** Witnesses, the most telling first; shallow ones and those that may be heard are passed over. */
  readonly rows: readonly DemandRow[];
  /** Cost of the layout at hand: the bound stops there. */
  readonly cost: number;
  readonly world: PlacementWorld;
  readonly until: number;
  readonly seed: number;
}

/** Side of the first cells, and the least side. [m] */
const FIRST_CELL: Metres = 0.8;
const LEAST_CELL: Metres = 0.012;
const MOST_CELLS = 9_000;
const MOST_WITNESSES = 160;
/** Cells are taken this much larger than they are: more than any rounding of the polygons. [m] */
const SLACK: Metres = 1e-4;

interface Cell {
  readonly at: Point;
  readonly half: Metres;
  /** Witnesses that may be seen from somewhere in the cell, by kind of device. */
  readonly sees: readonly (readonly number[])[];
}

/**
 * Lower bound on the cost of any strict layout with devices anywhere on the allowed ceiling, round or at the listed turns.
 *
 * Why it holds. A strict layout leaves no disc of the skin uncovered, so some device sees a place within the skin of each witness (witnesses
 * lie that deep inside the demand). That device hangs in the witness's outward zone: positions that see it with reach + skin among solids
 * shrunk by the skin. The allowed ceiling is cut into square cells that cover it; a cell is given every witness whose outward zone it meets.
 * Each device of the layout lies in a cell, and that cell is given at least what the device sees; so the layout's cells cover all witnesses
 * at the layout's cost, and the least cover of the witnesses by cells costs no more. Cells too large only make the bound smaller: they are
 * quartered where they could still take part in a cheaper cover, shown by row prices.
 *
 * @param question - Room, witnesses, cost at hand, cut-off.
 * @returns The bound; undefined where floors of several heights leave no single mounting height.
 * @source TOZONI-2016
 * @source DERIVED-HERE
 * @example A room within the reach of one device: 1 device
 */
export async function boundAnywhere(question: AnywhereQuestion): Promise<number | undefined> {
  const { task, ceiling, base, cost, world, until } = question;
  const { look, room } = task.prepared;
  if (look.floorPiecesOf(room.id).length > 0) return undefined;
  const kinds = task.models.flatMap((model) => turnsOf(model, base).map((turn) => ({ model, turn })));
  const fixed = task.fixed.map((column) => ({
    column,
    watch: watchOf(column, { scenes: task.eroded, purpose: "outward" }),
  }));
  const rows = witnessesOf(question.rows);
  const zones = rows.map((row) =>
    kinds.map(({ model, turn }) => {
      const zone = watchZone(task.eroded(row.doors), {
        device: { model, at: row.at, height: room.ceilingHeight, turn, masks: [] },
        kind: row.kind === "walk" ? "towards" : "seated",
        sightHeight: row.sightHeight,
        purpose: "outward",
      });
      return measured(zone.region());
    }),
  );
  const allowed = measured(ceiling.allowed);
  const all = kinds.map(() => rows.map((_, index) => index));
  let cells = firstCells(allowed).flatMap((cell) => kept({ ...cell, sees: all }));
  const sums = costSums([
    ...task.models.map((model) => model.cost),
    ...fixed.map(({ column }) => column.cost),
  ]);
  let bound = 0;
  while (cells.length > 0 && !world.cancelled() && world.now() < until) {
    const { model, cellOf } = modelOf(cells);
    const prices = priceSearch(model);
    prices.steps(150, cost);
    await world.breathe();
    let proven = sums.up(prices.best().bound);
    if (proven < cost - 1e-9) {
      const answer = await solveCover(model, {
        ...question,
        now: world.now,
        cancelled: world.cancelled,
        breathe: world.breathe,
        solver: world.solver,
        aim: "prove",
      });
      proven = Math.max(proven, Math.min(answer.bound, cost));
    }
    bound = Math.max(bound, Math.min(proven, cost));
    const half = cells[0]!.half / 2;
    if (bound >= cost - 1e-9 || half * 2 < LEAST_CELL) break;
    // Only cells that a cheaper cover could hold are worth quartering; the others may go: no cheaper cover has them.
    const room = sums.below(cost) - prices.best().bound + sums.step * 1e-6;
    const useful = new Set<number>();
    prices.best().reduced.forEach((reduced, column) => {
      if (reduced <= room && cellOf[column]! >= 0) useful.add(cellOf[column]!);
    });
    const next = [...useful].flatMap((index) => quarters(cells[index]!).flatMap(kept));
    if (next.length > MOST_CELLS) break;
    // Without cells no cover is cheaper than the layout at hand.
    if (next.length === 0 && fixed.length === 0) return cost;
    cells = next;
    await world.breathe();
  }
  return bound;

  function kept(cell: Cell): Cell[] {
    if (!meets(cell, allowed)) return [];
    const sees = cell.sees.map((list, kind) => list.filter((row) => meets(cell, zones[row]![kind]!)));
    return sees.some((list) => list.length > 0) ? [{ ...cell, sees }] : [];
  }

  function modelOf(list: readonly Cell[]): {
    readonly model: CoverModel;
    readonly cellOf: readonly number[];
  } {
    const costs: number[] = [];
    const cellOf: number[] = [];
    const covering: number[][] = rows.map(() => []);
    const put = (price: number, seen: readonly number[], cell: number): void => {
      for (const row of seen) covering[row]!.push(costs.length);
      costs.push(price);
      cellOf.push(cell);
    };
    for (const { column, watch } of fixed)
      put(
        column.cost,
        rows.flatMap((row, index) => (watch.covers(row) ? [index] : [])),
        -1,
      );
    list.forEach((cell, index) => {
      cell.sees.forEach((seen, kind) => {
        if (seen.length > 0) put(kinds[kind]!.model.cost, seen, index);
      });
    });
    const coverable = covering.filter((row) => row.length > 0);
    return {
      model: { costs, rows: coverable, conflicts: [], fixed: fixed.map((_, index) => index) },
      cellOf,
    };
  }
}

/** Witnesses deep inside the demand, no two of a kind closer than a hand's breadth. */
function witnessesOf(rows: readonly DemandRow[]): readonly DemandRow[] {
  const kept: DemandRow[] = [];
  for (const row of rows) {
    if (!row.deep || row.sound || kept.length >= MOST_WITNESSES) continue;
    const near = kept.some(
      (other) =>
        other.kind === row.kind &&
        other.doors === row.doors &&
        Math.hypot(other.at[0] - row.at[0], other.at[1] - row.at[1]) < 0.15,
    );
    if (!near) kept.push(row);
  }
  return kept;
}

interface Measured {
  readonly region: Region;
  readonly rings: readonly Outline[];
  readonly bounds: ReturnType<typeof boundsOf>;
}

function measured(region: Region): Measured {
  const rings = ringsOf(region);
  return { region, rings, bounds: boundsOf(rings) };
}

/** Whether a square may meet a region: never "no" when it does. */
function meets(
  { at, half }: { readonly at: Point; readonly half: Metres },
  { region, rings, bounds }: Measured,
): boolean {
  const wide = half + SLACK;
  const [x, y] = at;
  if (x + wide < bounds.minX || x - wide > bounds.maxX || y + wide < bounds.minY || y - wide > bounds.maxY)
    return false;
  return contains(region, at) || distanceToRings(at, rings) <= wide * Math.SQRT2;
}

function firstCells({ rings, bounds }: Measured): { readonly at: Point; readonly half: Metres }[] {
  if (rings.length === 0) return [];
  const { minX, minY, maxX, maxY } = bounds;
  const area = (maxX - minX) * (maxY - minY);
  const side = Math.min(FIRST_CELL, Math.max(0.1, Math.sqrt(area / 400)));
  const cells: { at: Point; half: Metres }[] = [];
  for (let y = minY + side / 2; y - side / 2 <= maxY; y += side)
    for (let x = minX + side / 2; x - side / 2 <= maxX; x += side) cells.push({ at: [x, y], half: side / 2 });
  return cells;
}

function quarters({ at: [x, y], half, sees }: Cell): Cell[] {
  const quarter = half / 2;
  return (
    [
      [-1, -1],
      [1, -1],
      [-1, 1],
      [1, 1],
    ] as const
  ).map(
    ([dx, dy]): Cell => ({
      at: [x + dx * quarter, y + dy * quarter],
      half: quarter,
      sees,
    }),
  );
}
