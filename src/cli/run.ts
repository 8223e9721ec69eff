import { parseArgs } from "node:util";
import { check } from "./check.ts";
import {
  type Command,
  type ExitCode,
  exitCodes,
  isRefusal,
  type Refusal,
  refused,
  type World,
} from "./command.ts";
import { importModel } from "./import.ts";
import { pack } from "./pack.ts";
import { place } from "./place.ts";
import { replay } from "./replay.ts";
import { start } from "./start.ts";
import { programVersion } from "./version.ts";
import { inEnglish, problemJson, problemLines } from "./words.ts";
import { zone } from "./zone.ts";

const commands: readonly Command[] = [start, importModel, place, check, zone, replay, pack];

const everywhere = {
  json: { type: "boolean" },
  force: { type: "boolean" },
  help: { type: "boolean", short: "h" },
} as const;

/**
 * Runs one command line.
 *
 * @param words - What stands after the program's name.
 * @returns The exit code. With --json standard output holds one JSON value and nothing else, whatever happens.
 */
export async function run(words: readonly string[], world: World): Promise<ExitCode> {
  const json = words.includes("--json");
  try {
    const [name, ...rest] = words;
    if (name === "--version" || name === "-V") {
      const version = programVersion();
      world.print(`${json ? JSON.stringify({ version }) : version}\n`);
      return exitCodes.fine;
    }
    const about = name === "help" ? rest.find((word) => !word.startsWith("-")) : undefined;
    if (about !== undefined) {
      const command = commands.find((one) => one.name === about);
      if (!command)
        return refuse(refused({ code: "command-unknown", values: { command: about } }), { world, json });
      world.print(helpOf(command));
      return exitCodes.fine;
    }
    if (name === undefined || name === "help" || name === "--help" || name === "-h") {
      world.print(overview());
      return name === undefined ? exitCodes.badInput : exitCodes.fine;
    }
    const command = commands.find((one) => one.name === name);
    if (!command)
      return refuse(refused({ code: "command-unknown", values: { command: name } }), { world, json });
    return await runCommand(command, rest, { world, json });
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    if (error instanceof Error && error.stack && world.watched) world.note(`${error.stack}\n`);
    return refuse(
      { problems: [{ code: "program-fault", values: { reason } }], exit: exitCodes.internal },
      { world, json },
    );
  }
}

interface Setting {
  readonly world: World;
  readonly json: boolean;
}

async function runCommand(command: Command, words: readonly string[], setting: Setting): Promise<ExitCode> {
  const { world, json } = setting;
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({
      args: [...words],
      options: { ...everywhere, ...command.options },
      allowPositionals: true,
      strict: true,
    });
  } catch (error) {
    const reason = (error instanceof Error ? error.message : String(error))
      .split(/\.\s|\n/)[0]!
      .replace(/\.$/, "");
    return refuse(refused({ code: "command-wrong", values: { reason, command: command.name } }), setting);
  }
  if (parsed.values.help) {
    world.print(helpOf(command));
    return exitCodes.fine;
  }
  const answer = await command.run({ world, words: parsed.positionals, values: parsed.values });
  if (isRefusal(answer)) return refuse(answer, setting);
  // What a server had to say it said when it started.
  if (json && answer.json !== undefined) world.print(`${JSON.stringify(answer.json, inEnglish)}\n`);
  else if (!json && answer.text !== "") world.print(`${answer.text}\n`);
  return answer.exit;
}

function refuse(refusal: Refusal, { world, json }: Setting): ExitCode {
  if (json) world.print(`${JSON.stringify({ problems: refusal.problems.map(problemJson) })}\n`);
  else world.note(`${problemLines(refusal.problems)}\n`);
  return refusal.exit ?? exitCodes.badInput;
}

function overview(): string {
  return [
    "Roomwake plans ceiling presence and motion detectors: the fewest that miss nobody.",
    "",
    ...commands.map((command) => `  roomwake ${command.usage.padEnd(62)} ${command.summary}`),
    "",
    "Every command takes --json, --force and --help; roomwake help COMMAND, roomwake --version.",
    "JOB is a NAME.job.json or a NAME.job.zip, which travels with its pictures and its history.",
    "Exit: 0 nothing that must be mended, 1 some, 2 bad input, 3 internal, 130 stopped with the best so far kept.",
    "",
  ].join("\n");
}

function helpOf(command: Command): string {
  const lines = [
    ...command.help,
    ["--json", "answer as JSON on standard output"],
    ["--force", "replace files that are there already"],
    ["--help", "this text"],
  ];
  return [
    `roomwake ${command.usage}`,
    "",
    command.summary,
    "",
    ...lines.map(([option, meaning]) => `  ${option!.padEnd(34)}${meaning}`),
    "",
  ].join("\n");
}
