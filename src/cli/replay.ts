import {
  findingsOf,
  replayLoads,
  settingsOfSite,
  switchedLoads,
  usualStill,
  valuesOfSettings,
} from "#engine";
import { settingsOfJob } from "#job";
import { type Call, type Command, exitOf, refused, textValue } from "./command.ts";
import { readBytes } from "./files.ts";
import { findDetector } from "./find-records.ts";
import { openJob } from "./open-job.ts";
import { jsonOf, textOf } from "./replay-words.ts";

export const replay: Command = {
  name: "replay",
  usage: "replay JOB --log FILE [--device ID] [--still MIN]",
  summary: "What each off delay would have cost, from a log of presence.",
  help: [
    ["--log FILE", "log of presence as CSV: a time and whether somebody was there, row by row"],
    ["--device ID", "id or tag of one detector; all of them if absent"],
    [
      "--still MIN",
      `a pause of up to so long is somebody sitting still; ${usualStill / 60} if absent, 0 for none`,
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
    // As the detectors are set: chosen, and derived where nobody chose.
    const { devices } = settingsOfSite(site, settingsOfJob(job).choices);
    const settings = new Map(devices.map((device) => [device.context.device, device.settings]));
    const values = new Map([...settings].map(([id, one]) => [id, valuesOfSettings(one)]));
    const loads = replayLoads(switchedLoads(site, values, only?.id), read.log, wish.still);
    const notes = findingsOf([...opened.notes, ...read.log.notes]);
    const findings = [...notes, ...findingsOf([...new Set(loads.map((load) => load.recommended.reason))])];
    const about = { file: wish.file, log: read.log, site, settings, notes, still: wish.still };
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
  const text = textValue(values, "still") ?? String(usualStill / 60);
  const still = Number(text);
  if (text.trim() === "" || !(still >= 0 && still <= 24 * 60))
    return "--still is a number of minutes, 0 to a day";
  return { file, device: textValue(values, "device"), still: still * 60 };
}
