import { type DelayWish, findingsOf, type LogReplay, recommendedDelay, replayLog } from "#engine";
import type { PresenceLog } from "#exchange";
import { type Call, type Command, exitOf, refused, textValue } from "./command.ts";
import { readBytes } from "./files.ts";
import { findDetector } from "./find-records.ts";
import { openJob } from "./open-job.ts";
import { type ReplayLoad, replayLoads } from "./replay-loads.ts";
import { jsonOf, type ReplayedLoad, textOf } from "./replay-words.ts";

/** Delays that are tried beside those that are set. [min] */
const usualMinutes = [0, 1, 5, 10, 15, 20, 30];

/** Ours, each printed as an assumption: a pause of somebody who sits still, what people bear, how long contacts last. */
const usualStill = 10;
const mostOffPerDay = 0.2;
const usualCyclesPerYear = 10_000;
const yearsOfService = 10;

export const replay: Command = {
  name: "replay",
  usage: "replay JOB --log FILE [--device ID] [--still MIN]",
  summary: "What each off delay would have cost, from a log of presence.",
  help: [
    ["--log FILE", "log of presence as CSV: a time and whether somebody was there, row by row"],
    ["--device ID", "id or tag of one detector; all of them if absent"],
    [
      "--still MIN",
      `a pause of up to so long is somebody sitting still; ${usualStill} if absent, 0 for none`,
    ],
  ],
  options: { log: { type: "string" }, device: { type: "string" }, still: { type: "string" } },
  run: async (call) => {
    const { world, words } = call;
    const wish = wishOf(call);
    if (typeof wish === "string")
      return refused({ code: "command-wrong", values: { reason: wish, command: "replay" } });
    const opened = await openJob(world, words[0]!);
    if ("problems" in opened) return opened;
    const { site, job } = opened;
    const only = wish.device === undefined ? undefined : findDetector(site, wish.device);
    if (only && "code" in only) return refused(only);
    if (site.detectors.length === 0) return refused({ code: "replay-without-detector", values: {} });
    const bytes = await readBytes(world.folder, wish.file);
    if ("problem" in bytes) return refused(bytes.problem);
    // Loaded once there is a log to read: the help of a command needs no reader.
    const { readLog } = await import("#exchange");
    const read = readLog(new TextDecoder().decode(bytes.bytes));
    if ("problems" in read) return refused(...read.problems);
    const settings = new Map(job.detectors.map((one) => [one.id, one.settings]));
    const loads = replayed(replayLoads(site, settings, only), read.log, wish.still);
    const notes = findingsOf([...opened.notes, ...read.log.notes]);
    const findings = [...notes, ...findingsOf([...new Set(loads.map((load) => load.recommended.reason))])];
    const about = { file: wish.file, log: read.log, site, notes };
    return { exit: exitOf(findings), json: jsonOf(loads, about), text: textOf(loads, about) };
  },
};

interface Wish {
  readonly file: string;
  readonly device: string | undefined;
  /** [s] */
  readonly still: number;
}

/** The options as values, or what is wrong with them. */
function wishOf({ words, values }: Call): Wish | string {
  if (words.length !== 1) return "it takes one job file";
  const file = textValue(values, "log");
  if (file === undefined) return "--log names the log";
  const text = textValue(values, "still") ?? String(usualStill);
  const still = Number(text);
  if (text.trim() === "" || !(still >= 0 && still <= 24 * 60))
    return "--still is a number of minutes, 0 to a day";
  return { file, device: textValue(values, "device"), still: still * 60 };
}

/** Loads of the same settings do the same with the same log: each kind is run once. */
function replayed(loads: readonly ReplayLoad[], log: PresenceLog, still: number): readonly ReplayedLoad[] {
  const known = new Map<string, LogReplay>();
  return loads.map((load) => {
    const set = load.devices.flatMap(({ offDelay }) => (offDelay === undefined ? [] : [offDelay]));
    const delays = [...new Set([...usualMinutes.map((minutes) => minutes * 60), ...set])].sort(
      (a, b) => a - b,
    );
    const kinds = new Set(load.devices.map(({ parameters }) => JSON.stringify(parameters)));
    const key = JSON.stringify([[...kinds].sort(), delays]);
    const run =
      known.get(key) ??
      replayLog({
        log,
        // Two of the same kind on one load do what one does.
        devices: [...kinds].map((kind, i) => ({ id: String(i), parameters: JSON.parse(kind) })),
        delays,
        still,
      });
    known.set(key, run);
    const wish: DelayWish = {
      offPerDay: mostOffPerDay,
      cyclesPerYear: load.life === undefined ? usualCyclesPerYear : Math.round(load.life / yearsOfService),
    };
    return {
      ...load,
      assumptions: [...load.assumptions, ...assumedOf(load, wish, still)],
      run,
      recommended: recommendedDelay(run.results, wish),
    };
  });
}

function assumedOf({ life }: ReplayLoad, { offPerDay, cyclesPerYear }: DelayWish, still: number): string[] {
  return [
    still > 0
      ? `a pause of up to ${still / 60} min between two records is somebody sitting still`
      : "the log is taken at its word: an empty row is an empty room",
    "whoever the log records, the detector sees all the while",
    `people bear one switch-off on somebody in ${1 / offPerDay} days`,
    life === undefined
      ? `lamps and contacts bear ${cyclesPerYear} cycles a year; the data sheet does not say`
      : `contacts that bear ${life} cycles serve for ${yearsOfService} years`,
  ];
}
