import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKernel, readIfc } from "#exchange";
import { realFiles } from "../test/real-files.ts";
import { bareReader } from "./bare-reader.mjs";
import type { BenchRow } from "./bench.ts";

const file = "office-institute-82rooms-ifc2x3.ifc";

/** Import of a whole building against the bare reader that opens it and streams the same entity types. */
export async function rows(): Promise<readonly BenchRow[]> {
  const folder = realFiles("ifc");
  if (!folder) return [];
  const path = `${folder}/${file}`;
  return [...asProcesses(path), await again(new Uint8Array(readFileSync(path)))];
}

/** As a person meets it: the command from start to the job on disk, against a process of nothing but the reader. */
function asProcesses(path: string): readonly BenchRow[] {
  const command = new URL("../dist/cli/main.mjs", import.meta.url).pathname;
  if (!existsSync(command)) return [];
  const folder = mkdtempSync(join(tmpdir(), "roomwake-bench-"));
  const bare = new URL("bare-reader.mjs", import.meta.url).pathname;
  const job = join(folder, "office.job.json");
  const [ours, theirs] = pairs(5, [
    () => run([command, "import", path, "-o", job, "--force", "--json"]),
    () => run([bare, path]),
  ]);
  rmSync(folder, { recursive: true });
  return [
    row(
      "Import of an office of 82 rooms, command to job file (other: a process with the bare reader)",
      ours,
      theirs,
    ),
  ];
}

const run = (command: readonly string[]): void => {
  const { status } = spawnSync(process.execPath, command, { stdio: "ignore" });
  // 1: read, and something in the building must be mended.
  if (status !== 0 && status !== 1) throw new Error(`${command.join(" ")} ended with ${status}`);
};

/** The same again and again in one process, when all code has been compiled. */
async function again(bytes: Uint8Array): Promise<BenchRow> {
  const kernel = await loadKernel();
  const bare = await bareReader();
  const both = [() => readIfc(bytes, { fileName: file, kernel }), () => bare(bytes)] as const;
  for (let i = 0; i < 20; i++) for (const each of both) await each();
  const times: [number[], number[]] = [[], []];
  for (let i = 0; i < 9; i++) {
    for (const k of [0, 1] as const) {
      const start = performance.now();
      await both[k]();
      times[k].push(performance.now() - start);
    }
  }
  return row("Import of the same office, read again in one process", median(times[0]), median(times[1]));
}

const pairs = (count: number, [a, b]: readonly [() => void, () => void]): readonly [number, number] => {
  const times: [number[], number[]] = [[], []];
  for (let i = 0; i < count; i++) {
    for (const [k, each] of [a, b].entries()) {
      const start = performance.now();
      each();
      times[k as 0 | 1].push(performance.now() - start);
    }
  }
  return [median(times[0]), median(times[1])];
};

const median = (list: number[]): number => list.sort((a, b) => a - b)[Math.floor(list.length / 2)]!;

const row = (what: string, ours: number, theirs: number): BenchRow => ({
  what,
  ours: `${ours.toFixed(0)} ms`,
  other: `${theirs.toFixed(0)} ms`,
  ratio: `${(ours / theirs).toFixed(2)} times`,
  goal: "at most 2 times",
});
