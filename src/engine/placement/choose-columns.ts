import { seesSource } from "../coverage/index.ts";
import { nearestIn } from "../coverage/room-ways.ts";
import type { Point } from "../geometry/index.ts";
import { type Candidates, candidatesOf, longestWall } from "./candidates.ts";
import { type Ceiling, ceilingOf } from "./ceiling.ts";
import { type Column, columnsOf } from "./columns.ts";
import type { PlacementWorld } from "./contract.ts";
import type { DemandRow } from "./demand-rows.ts";
import { addInSlices, type Matrix, matrixOf } from "./matrix.ts";
import type { RoomTask } from "./task.ts";

/** How strictly places are chosen; what a room does not allow is given up step by step, and said. */
export interface Strictness {
  readonly walls: "clear" | "least";
  /** Whether devices may look at heaters and air curtains. */
  readonly heat: "unseen" | "seen";
}

/** Columns of a room with the samples that they cover. */
export interface Choice {
  readonly matrix: Matrix;
  readonly ceiling: Ceiling;
  readonly candidates: Candidates;
  readonly strictness: Strictness;
  /** Whether time was enough for every place. */
  readonly tried: "all" | "some";
  /** Samples that no column covers. */
  readonly hopeless: readonly DemandRow[];
  /** The same device at allowed places a little off the free grid; absent where tiles or given places decide. */
  readonly beside?: (column: Column) => readonly Column[];
}

/**
 * Columns for a room: as strict as the demand can still be covered, else those that leave the fewest samples unseen.
 *
 * Order: clear of walls and heaters unseen; nearer to walls; heaters in view; both.
 *
 * @param task - The room. @param question - Samples, given points, hosts.
 * @returns The matrix with fixed devices and candidates; no candidates where the ceiling has no free place.
 * @source COMMON-PRACTICE
 * @example A room 4 × 3 m without heaters: the first try
 */
export async function chooseColumns(
  task: RoomTask,
  question: {
    readonly rows: readonly DemandRow[];
    readonly points?: readonly Point[];
    readonly world: PlacementWorld;
    readonly until: number;
  },
): Promise<Choice> {
  const { look, room } = task.prepared;
  const hot = look
    .interferenceOf(room.id)
    .some((source) => source.kind === "heater" || source.kind === "door-curtain");
  const tries: readonly Strictness[] = [
    { walls: "clear", heat: "unseen" },
    { walls: "least", heat: "unseen" },
    ...(hot
      ? ([
          { walls: "clear", heat: "seen" },
          { walls: "least", heat: "seen" },
        ] as const)
      : []),
  ];
  let best: Choice | undefined;
  for (const strictness of tries) {
    const choice = await tryColumns(task, { ...question, strictness });
    if (best === undefined || choice.hopeless.length < best.hopeless.length) best = choice;
    if (best.hopeless.length === 0 || question.world.cancelled() || question.world.now() >= question.until)
      break;
  }
  return best!;
}

async function tryColumns(
  task: RoomTask,
  question: Parameters<typeof chooseColumns>[1] & { readonly strictness: Strictness },
): Promise<Choice> {
  const { strictness, world, until } = question;
  const { look, room } = task.prepared;
  const ceiling = ceilingOf(look, { room, walls: strictness.walls });
  const candidates = candidatesOf(ceiling, {
    spacing: look.site.defaults.spacing,
    ...(question.points === undefined ? {} : { points: question.points }),
  });
  const matrix = matrixOf({ scenes: task.scenes, purpose: "coverage" });
  matrix.addRows(question.rows);
  const base = longestWall(room).turn;
  const columnsAt = (points: readonly Point[]): readonly Column[] =>
    columnsOf(ceiling, { points, models: task.models, base });
  const may = (column: Column): boolean =>
    column.fixed !== undefined || strictness.heat === "seen" || !seesHeat(task, column);
  const columns = [...task.fixed, ...columnsAt(candidates.points)];
  await world.breathe();
  let tried = await addInSlices(matrix, { columns, may, world, until });
  let hopeless = unseen(matrix);
  if (
    hopeless.length > 0 &&
    tried === "all" &&
    candidates.from === "free-grid" &&
    ceiling.allowed.length > 0
  ) {
    // A free grid may miss a nook: the allowed places nearest to what nobody sees are tried as well.
    const near: Point[] = [];
    for (const row of hopeless) {
      if (near.length % 64 === 63) await world.breathe();
      if (world.cancelled() || world.now() >= until) break;
      const at = nearestIn(ceiling.allowed, row.at);
      if (at !== undefined && ceiling.refusal(at) === undefined) near.push(at);
    }
    const added = await addInSlices(matrix, { columns: columnsAt(thinned(near)), may, world, until });
    if (added === "stopped") tried = added;
    hopeless = unseen(matrix);
  }
  const beside = (column: Column): readonly Column[] =>
    columnsAt(placesBeside(column.device.at).filter((at) => ceiling.refusal(at) === undefined)).filter(
      (other) =>
        other.device.model === column.device.model && other.device.turn === column.device.turn && may(other),
    );
  return {
    matrix,
    ceiling,
    candidates,
    strictness,
    tried: tried === "all" ? "all" : "some",
    hopeless,
    ...(candidates.from === "free-grid" ? { beside } : {}),
  };
}

const unseen = (matrix: Matrix): DemandRow[] =>
  matrix.rows.filter((_, index) => matrix.covering(index).length === 0);

/** Eight directions at two distances that a person still measures with a tape. [m] */
const placesBeside = ([x, y]: Point): Point[] =>
  [0.05, 0.1].flatMap((step) =>
    [-1, 0, 1].flatMap((i) =>
      [-1, 0, 1].flatMap((j): Point[] => (i === 0 && j === 0 ? [] : [[x + i * step, y + j * step]])),
    ),
  );

/** Places at least a hand's breadth apart. */
function thinned(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const at of points)
    if (kept.every((other) => Math.hypot(other[0] - at[0], other[1] - at[1]) > 0.1)) kept.push(at);
  return kept;
}

/** Whether a device would look at a heater or an air curtain of the room, doors open. @param task - The room. @param column - The device. @returns True if one is in sight and within reach. @example A fan heater 1 m away: true */
export function seesHeat(task: RoomTask, column: Column): boolean {
  const { look, room } = task.prepared;
  return look
    .interferenceOf(room.id)
    .filter((source) => source.kind === "heater" || source.kind === "door-curtain")
    .some((source) => seesSource(task.prepared.open(), { device: column.device, source }) !== undefined);
}
