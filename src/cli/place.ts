import {
  entryOf,
  findingsOf,
  type Layout,
  type PlacementOptions,
  type PlacementResult,
  type Problem,
  roomTitle,
  type Site,
} from "#engine";
import type { JobFile } from "#job";
import {
  type Call,
  type Command,
  type ExitCode,
  exitCodes,
  exitOf,
  refused,
  textValue,
  textValues,
} from "./command.ts";
import { darkWalkJson, gapJson } from "./coverage-json.ts";
import { occupied } from "./files.ts";
import { findRooms } from "./find-records.ts";
import { type OpenedJob, openJob } from "./open-job.ts";
import { progressLine } from "./progress-line.ts";
import { aligned, findingLines, problemJson, rounded } from "./words.ts";
import { writeJob } from "./write-job.ts";

/** Enough for most rooms to be proved; a hall uses it up. [s] */
const usualSeconds = 10;
const mostSeconds = 24 * 3600;

export const place: Command = {
  name: "place",
  usage: "place JOB [-o OUT] [--room NAME|ID]… [--seconds S]",
  summary: "Put the fewest detectors where they miss nobody.",
  help: [
    ["-o, --output OUT", "job file to write, .job.json or .job.zip; without it nothing is written"],
    ["--room NAME|ID", "only this room; may be given several times"],
    ["--seconds S", `longest time for one room; ${usualSeconds} if absent`],
    ["--model ID", "only this model; may be given several times"],
    ["--bound KIND", "candidates, or any-position (slower): for what the bound holds"],
    ["--seed N", "another start of the search; 1 if absent"],
  ],
  options: {
    output: { type: "string", short: "o" },
    room: { type: "string", multiple: true },
    seconds: { type: "string" },
    model: { type: "string", multiple: true },
    bound: { type: "string" },
    seed: { type: "string" },
  },
  run: async (call) => {
    const { world, words, values } = call;
    const wish = wishOf(call);
    if (typeof wish === "string")
      return refused({ code: "command-wrong", values: { reason: wish, command: "place" } });
    const output = textValue(values, "output");
    if (output !== undefined) {
      const taken = await occupied(world.folder, [output], values.force ? "may-replace" : "keep");
      if (taken.length > 0) return refused(...taken);
    }
    const opened = await openJob(world, words[0]!);
    if ("problems" in opened) return opened;
    const { site } = opened;
    if (opened.readOnly && output !== undefined) return refused({ code: "job-read-only", values: {} });
    const found = findRooms(site, textValues(values, "room"));
    if ("problems" in found) return found;
    const unknown = wish.models.filter((id) => !site.models.some((model) => model.id === id));
    if (unknown.length > 0)
      return refused({
        code: "command-wrong",
        values: { reason: `the job has no model “${unknown[0]}”`, command: "place" },
      });

    const began = performance.now();
    const line = progressLine(world);
    let done = 0;
    const results = await world.placeRooms(site, {
      rooms: found.rooms.map(
        (room): PlacementOptions => ({
          room: room.id,
          ...(wish.models.length > 0 ? { models: wish.models } : {}),
          seconds: wish.seconds,
          seed: wish.seed,
          bound: wish.bound,
          alternatives: 0,
        }),
      ),
      cancelled: world.cancelled,
      progress: (step) => {
        const room = roomTitle(site.rooms.find((one) => one.id === step.room));
        line.show(
          `${done} of ${found.rooms.length} rooms · ${room}: ${step.phase}${step.best === undefined ? "" : `, ${step.best} found`}`,
        );
      },
      finished: () => {
        done += 1;
        line.show(`${done} of ${found.rooms.length} rooms`);
      },
    });
    line.clear();
    const taken = await takenLayouts(opened, results, world.newId);
    if (output !== undefined) {
      const failed = await writeJob(world, output, taken);
      if (failed) return refused(failed);
    }
    const seconds = (performance.now() - began) / 1000;
    const cancelled = world.cancelled.aborted;
    const problems = [
      ...results.flatMap((result) => result.problems),
      ...taken.problems,
      ...(cancelled
        ? [
            {
              code: "placing-cancelled",
              values: { done: results.filter((one) => !one.cancelled).length, rooms: found.rooms.length },
            } as const,
          ]
        : []),
    ];
    return {
      exit: exitFor(results, problems, cancelled),
      json: {
        rooms: results.map((result) => resultJson(result, { site, job: taken.job })),
        seconds: rounded(seconds, 2),
        problems: problems.map(problemJson),
        ...(cancelled ? { cancelled } : {}),
      },
      text: [
        resultTable(results, site),
        "",
        ...(problems.length > 0 ? [findingLines(findingsOf(problems)), ""] : []),
        output === undefined
          ? "Nothing was written; -o OUT keeps the layout."
          : `Written to ${output}, ${seconds.toFixed(1)} s.`,
      ].join("\n"),
    };
  },
};

interface Wish {
  readonly seconds: number;
  readonly seed: number;
  readonly bound: PlacementOptions["bound"];
  readonly models: readonly string[];
}

/** The options as values, or what is wrong with them. */
function wishOf({ words, values }: Call): Wish | string {
  if (words.length !== 1) return "it takes one job file";
  const seconds = Number(textValue(values, "seconds") ?? usualSeconds);
  if (!(seconds > 0 && seconds <= mostSeconds))
    return `--seconds is a number above 0 and at most ${mostSeconds}`;
  const seed = Number(textValue(values, "seed") ?? 1);
  if (!Number.isSafeInteger(seed) || seed < 0) return "--seed is a whole number";
  const bound = textValue(values, "bound") ?? "candidates";
  if (bound !== "any-position" && bound !== "candidates") return "--bound is any-position or candidates";
  return { seconds, seed, bound, models: textValues(values, "model") };
}

/** The job with the layouts in it: same tags where detectors stay, new ones where they are new. */
async function takenLayouts(
  opened: Pick<OpenedJob, "job" | "history">,
  results: readonly PlacementResult[],
  newId: () => string,
): Promise<Required<Pick<OpenedJob, "job" | "history">> & { readonly problems: readonly Problem[] }> {
  const { documentOfRead, historyOf, replaceDetectors } = await import("#job");
  const document = documentOfRead(opened, { newId });
  const problems: Problem[] = [];
  for (const result of results)
    if (result.best)
      problems.push(...document.run(replaceDetectors(result.room, result.best.devices)).problems);
  const placed = document.job();
  const history = historyOf(document);
  document.close();
  return { job: placed, history, problems };
}

function exitFor(
  results: readonly PlacementResult[],
  problems: readonly Problem[],
  cancelled: boolean,
): ExitCode {
  if (cancelled) return exitCodes.cancelled;
  const missed = results.some((result) => result.best?.gaps.some((gap) => !gap.tolerated));
  return missed ? exitCodes.mend : exitOf(problems.map(entryOf));
}

function resultJson(
  result: PlacementResult,
  placed: { readonly site: Site; readonly job: JobFile },
): unknown {
  const room = placed.site.rooms.find((one) => one.id === result.room)!;
  const devices = result.best ? placed.job.detectors.filter((one) => one.room === result.room) : [];
  return {
    id: room.id,
    name: room.name,
    devices: devices.map((device) => ({
      id: device.id,
      tag: device.tag,
      model: device.model,
      x: rounded(device.at[0]),
      y: rounded(device.at[1]),
      height: rounded(device.height),
      turn: rounded(device.turn),
    })),
    cost: result.best ? rounded(result.best.cost) : null,
    bound: rounded(result.bound),
    boundHolds: result.boundHolds,
    fewest: result.fewest,
    seconds: rounded(result.seconds, 2),
    gaps: (result.best?.gaps ?? []).map((gap) => gapJson(gap, placed.site)),
    darkWalk: (result.best?.darkWalks ?? []).map(darkWalkJson),
    ...(result.cancelled ? { cancelled: true } : {}),
  };
}

function resultTable(results: readonly PlacementResult[], site: Site): string {
  if (results.length === 0) return "No room was placed.";
  const rows = results.map((result) => [
    roomTitle(site.rooms.find((one) => one.id === result.room)),
    result.best ? String(result.best.devices.length) : "none",
    boundWords(result),
    worst(result.best),
    `${result.seconds.toFixed(1)} s`,
  ]);
  return aligned(["Room", "Detectors", "Measured against", "Dark walk", "Time"], rows, new Set([1, 3, 4]));
}

/** What may be said of the number: never more than was calculated. */
function boundWords(result: PlacementResult): string {
  if (!result.best) return "–";
  const where = result.boundHolds === "any-position" ? "any position" : "the candidates";
  if (result.fewest) return `fewest possible (calculated, ${where})`;
  if (result.best.gaps.some((gap) => !gap.tolerated)) return `gaps left, see below (${where})`;
  return `bound ${Number(result.bound.toFixed(2))}, cost ${Number(result.best.cost.toFixed(2))} (${where})`;
}

function worst(layout: Layout | undefined): string {
  if (!layout || layout.darkWalks.length === 0) return "–";
  if (layout.darkWalks.some((walk) => !walk.lit)) return "not lit";
  return `${Math.max(...layout.darkWalks.map((walk) => walk.metres)).toFixed(1)} m`;
}
