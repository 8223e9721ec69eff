import type { Problem } from "../check/index.ts";
import { areaOf } from "../geometry/index.ts";
import { roomTitle, rounded, type Site } from "../site/index.ts";
import { candidatesOf, longestWall } from "./candidates.ts";
import { ceilingOf } from "./ceiling.ts";
import { columnsOf } from "./columns.ts";
import type { PlacementOptions, PlacementProgress, PlacementResult, PlacementWorld } from "./contract.ts";
import { sampledRows } from "./demand-rows.ts";
import { findStrict } from "./find-strict.ts";
import { judgedLayout } from "./layout.ts";
import { addInSlices, type Matrix, matrixOf } from "./matrix.ts";
import { proveFewest } from "./prove.ts";
import { type RoomTask, roomTask } from "./task.ts";

/**
 * Places detectors in a room: kinds and places at least cost so that all that must be seen is seen, with a bound.
 *
 * 1. candidates  2. covers of samples, holes added until the layout is strict  3. bound  4. the layout judged
 *
 * @param site - Snapshot of the job. Detectors of the room that are not pinned are replaced.
 * @param options - Room, models, time, seed.
 * @param world - Solver, clock, cancel and progress.
 * @returns Best layout, bound and for what it holds; problems where something cannot be done, with the place named.
 * @source DERIVED-HERE
 */
export async function placeRoom(
  site: Site,
  options: PlacementOptions,
  world: PlacementWorld,
): Promise<PlacementResult> {
  const started = world.now();
  const until = started + options.seconds;
  const task = roomTask(site, options);
  const say = (
    phase: PlacementProgress["phase"],
    share: number,
    more: { readonly best?: number; readonly bound?: number } = {},
  ): void => world.progress({ room: options.room, phase, share, ...more });
  const nothing = (problems: readonly Problem[]): PlacementResult => ({
    room: options.room,
    best: undefined,
    alternatives: [],
    bound: 0,
    boundHolds: "candidates",
    fewest: false,
    cancelled: world.cancelled(),
    seconds: world.now() - started,
    problems,
  });
  if (task.models.length === 0 || task.parts.length === 0) return nothing(task.problems);
  say("candidates", 0);
  const { room, look } = task.prepared;
  const ceiling = ceilingOf(look, { room, walls: "clear" });
  const { points, refused } = candidatesOf(ceiling, { spacing: site.defaults.spacing });
  if (points.length === 0) {
    const reasons = [...refused].map(([why, count]) => `${count} ${why}`).join(", ");
    return nothing([
      ...task.problems,
      { code: "no-place-on-ceiling", values: { room: roomTitle(room), reasons }, room: room.id },
    ]);
  }
  const columns = columnsOf(ceiling, { points, models: task.models, base: longestWall(room).turn });
  const matrix = matrixOf({ scenes: task.scenes, purpose: "coverage" });
  matrix.addRows(task.parts.flatMap((part) => sampledRows(part, sampleSpacing(task))));
  await addInSlices(matrix, { columns: [...task.fixed, ...columns], world, until });
  say("search", 0.2);
  const answer = await findStrict(matrix, {
    parts: task.parts,
    world,
    until,
    seed: options.seed,
    onRound: (best) => say("search", 0.3, { best }),
  });
  if (answer.best === undefined) return nothing([...task.problems, stoppedProblem(task)]);
  say("bound", 0.6, { best: answer.best.chosen.length });
  const proof = await proveFewest(matrix, {
    found: answer.best,
    parts: task.parts,
    eroded: task.eroded,
    world,
    until,
    seed: options.seed,
    onBound: (bound) => say("bound", 0.7, { bound }),
  });
  const { layout, coverage } = judgedLayout(task, {
    columns: proof.found.chosen.map((column) => matrix.columns[column]!),
    leastMargin: 0,
  });
  const strict = coverage.gaps.length === 0;
  say("done", 1, { best: layout.devices.length, bound: proof.bound });
  return {
    room: options.room,
    best: layout,
    alternatives: [],
    bound: proof.bound,
    boundHolds: "candidates",
    fewest: strict && layout.cost - proof.bound <= 1e-6,
    cancelled: world.cancelled(),
    seconds: world.now() - started,
    problems: [...task.problems, ...(strict ? [] : [uncoveredProblem(task, coverage.gaps)])],
  };
}

/** Samples of a small room lie closer: about this many in all. */
const SAMPLES = 300;

function sampleSpacing(task: RoomTask): number {
  const area = task.parts.reduce((sum, part) => sum + areaOf(part.region), 0);
  return Math.min(task.prepared.look.site.defaults.spacing * 1.5, Math.max(0.15, Math.sqrt(area / SAMPLES)));
}

const stoppedProblem = (task: RoomTask): Problem => ({
  code: "placing-stopped",
  values: { room: roomTitle(task.prepared.room) },
  room: task.prepared.room.id,
});

function uncoveredProblem(
  task: RoomTask,
  gaps: readonly { readonly area: number; readonly at: readonly [number, number] }[],
): Problem {
  const largest = gaps.toSorted((a, b) => b.area - a.area)[0]!;
  const area = gaps.reduce((sum, gap) => sum + gap.area, 0);
  return {
    code: "cannot-be-watched",
    values: { room: roomTitle(task.prepared.room), area: rounded(area, 2) },
    room: task.prepared.room.id,
    at: [largest.at[0], largest.at[1]],
  };
}

export type { Matrix };
