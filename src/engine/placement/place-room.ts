import type { Problem } from "../check/index.ts";
import { areaOf } from "../geometry/index.ts";
import { openingInSentence, roomTitle, rounded, type Site } from "../site/index.ts";
import { boundAnywhere } from "./any-position.ts";
import { longestWall } from "./candidates.ts";
import { whyNoPlace } from "./ceiling.ts";
import { type Choice, chooseColumns } from "./choose-columns.ts";
import type {
  Layout,
  PlacementOptions,
  PlacementProgress,
  PlacementResult,
  PlacementWorld,
} from "./contract.ts";
import { sampledRows } from "./demand-rows.ts";
import { type FindAnswer, type Found, findStrict, PATIENT } from "./find-strict.ts";
import { offeredLayouts } from "./offered.ts";
import { type Proven, proveFewest } from "./prove.ts";
import { crowdedPairs } from "./quality.ts";
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
  const end = started + options.seconds;
  // The last tenth is kept for moving the devices of the layout found.
  const until = started + options.seconds * 0.9;
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
  const rows = task.parts.flatMap((part) => sampledRows(part, sampleSpacing(task)));
  const choice = await chooseColumns(task, {
    rows,
    world,
    // With the other half a layout can still be found among the places at hand.
    until: started + (until - started) / 2,
    ...(options.points === undefined ? {} : { points: options.points }),
  });
  const { matrix, candidates, strictness } = choice;
  // What was not tried must not be called impossible.
  if (choice.tried === "some" && matrix.columns.length === 0)
    return nothing([...task.problems, stoppedProblem(task)]);
  if (matrix.columns.length === 0) {
    return nothing([
      ...task.problems,
      {
        code: "no-place-on-ceiling",
        values: { room: roomTitle(room), reasons: whyNoPlace(candidates.refused) },
        room: room.id,
      },
    ]);
  }
  const given: Problem[] = [
    ...(strictness.walls === "least"
      ? [
          {
            code: "clearance-of-walls-reduced" as const,
            values: { room: roomTitle(room), clearance: look.site.defaults.clearances.wall },
            room: room.id,
          },
        ]
      : []),
    ...(strictness.heat === "seen"
      ? [{ code: "source-cannot-be-avoided" as const, values: { room: roomTitle(room) }, room: room.id }]
      : []),
  ];
  say("search", 0.2);
  const { answer, proof } = await searchAndProve(choice, { task, world, until, seed: options.seed, say });
  // Places left out for want of time might hold a cheaper layout.
  let bound = choice.tried === "all" ? proof.bound : 0;
  let boundHolds: PlacementResult["boundHolds"] = "candidates";
  if (options.bound === "any-position" && candidates.from === "free-grid" && proof.found.holes.length === 0) {
    // The rows with the fewest columns tell the most about where devices are needed.
    const order = matrix.rows
      .map((_, index) => index)
      .sort((p, q) => matrix.covering(p).length - matrix.covering(q).length || p - q);
    const anywhere = await boundAnywhere({
      task,
      ceiling: choice.ceiling,
      base: longestWall(room).turn,
      rows: order.map((index) => matrix.rows[index]!),
      cost: proof.found.cost,
      world,
      until,
      seed: options.seed,
    });
    // The stronger claim where it is as tight; else both cannot be printed as one, and the one for the candidates stands.
    if (anywhere !== undefined && (anywhere >= bound - 1e-9 || bound < proof.found.cost - 1e-9)) {
      bound = anywhere;
      boundHolds = "any-position";
    }
  }
  say("quality", 0.9, { best: proof.found.chosen.length, bound });
  const offers = await offeredLayouts(task, { choice, rows, found: proof.found, options, world, until: end });
  const [{ layout, coverage }] = offers;
  const strict = coverage.gaps.length === 0;
  const crowded =
    crowdedPairs(layout.devices.filter((device) => device.room === room.id).map((device) => device.at)) > 0;
  say("done", 1, { best: layout.devices.length, bound });
  return {
    room: options.room,
    best: layout,
    alternatives: offers.slice(1).map((offer) => offer.layout),
    bound,
    boundHolds,
    fewest: strict && !crowded && proof.found.cost - bound <= 1e-6,
    cancelled: world.cancelled(),
    seconds: world.now() - started,
    problems: [
      ...task.problems,
      ...given,
      ...(strict
        ? []
        : answer.stopped === "yes" || choice.tried === "some"
          ? [stoppedProblem(task)]
          : [uncoveredProblem(task, coverage.gaps)]),
      ...(crowded
        ? [{ code: "devices-at-one-place" as const, values: { room: roomTitle(room) }, room: room.id }]
        : []),
      ...darkWalkProblems(task, layout),
    ],
  };
}

/**
 * A quick search, then the proof, which often finds the better layout itself; where cost and bound stay apart, the search again with all
 * the patience there is time for, from where it was left.
 */
async function searchAndProve(
  { matrix, beside }: Choice,
  question: {
    readonly task: RoomTask;
    readonly world: PlacementWorld;
    readonly until: number;
    readonly seed: number;
    readonly say: (
      phase: PlacementProgress["phase"],
      share: number,
      more?: { readonly best?: number; readonly bound?: number },
    ) => void;
  },
): Promise<{ readonly answer: FindAnswer; readonly proof: Proven }> {
  const { task, world, until, seed, say } = question;
  const host = { parts: task.parts, world };
  const onRound = (best: number): void => say("search", 0.3, { best });
  const prove = (found: Found): Promise<Proven> => {
    say("bound", 0.6, { best: found.chosen.length });
    return proveFewest(matrix, {
      ...host,
      until,
      found,
      eroded: task.eroded,
      ...(beside === undefined ? {} : { beside }),
      seed,
      onBound: (bound) => say("bound", 0.7, { bound }),
    });
  };
  const patiently = async (found: Found, more: { readonly until: number; readonly enough: number }) => {
    const again = await findStrict(matrix, {
      ...host,
      ...more,
      seed: seed + 1,
      start: found.chosen,
      patience: PATIENT,
      onRound,
    });
    const better = again.best.holes.length < found.holes.length || again.best.cost < found.cost - 1e-9;
    return better && again.best.holes.length <= found.holes.length ? again.best : found;
  };
  const answer = await findStrict(matrix, { ...host, until, seed, onRound });
  const proof = await prove(answer.best);
  const met = proof.found.cost - proof.bound <= 1e-6;
  // Holes that no place sees stay whatever is tried; the rest may still be had for less.
  const unfinished = proof.found.holes.length > 0 && answer.stopped === "yes";
  if (met || unfinished || world.cancelled() || world.now() >= until) return { answer, proof };
  say("search", 0.75, { best: proof.found.chosen.length, bound: proof.bound });
  const better = await patiently(proof.found, { until, enough: proof.bound });
  if (better === proof.found) return { answer, proof };
  const places = matrix.columns.length;
  const second = await prove(better);
  // A bound that was proven before places were added does not hold for those.
  const bound = matrix.columns.length > places ? second.bound : Math.max(proof.bound, second.bound);
  return { answer, proof: { ...second, bound } };
}

/** Samples of a small room lie closer: about this many in all. */
const SAMPLES = 300;

/** Distance of the samples of a room. @param task - The room. @returns The spacing. [m] @example A large hall: one and a half spacings of the grid */
export function sampleSpacing(task: RoomTask): number {
  const area = task.parts.reduce((sum, part) => sum + areaOf(part.region), 0);
  return Math.min(task.prepared.look.site.defaults.spacing * 1.5, Math.max(0.15, Math.sqrt(area / SAMPLES)));
}

function darkWalkProblems(task: RoomTask, layout: Layout): Problem[] {
  const { look, room, demand } = task.prepared;
  const limit = look.site.defaults.darkWalkLimit;
  if (!demand.asked.catch) return [];
  return layout.darkWalks
    .filter((walk) => walk.metres > limit + 1e-6)
    .map((walk): Problem => {
      const opening = look.openingById.get(walk.opening);
      return {
        code: "dark-walk-not-kept",
        values: {
          count: layout.devices.length,
          room: roomTitle(room),
          opening: opening === undefined ? walk.opening : openingInSentence(opening, look),
          metres: rounded(walk.metres, 1),
          limit,
        },
        room: room.id,
        records: [walk.opening],
      };
    });
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
