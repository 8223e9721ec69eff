import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import { inKillableThread, type KillableOptions } from "../killable.ts";
import type { ImportResult } from "../survey.ts";
import type { ReadLimits } from "./limits.ts";
import type { ReaderTask } from "./reader-worker.ts";

export interface ReadInWorkerOptions extends KillableOptions {
  readonly limits?: Partial<ReadLimits>;
}

/** Reads a building model in a thread of its own, which is killed when it takes too long or too much memory. */
export async function readIfcInWorker(
  file: string | { name: string; bytes: Uint8Array },
  options: ReadInWorkerOptions = {},
): Promise<ImportResult> {
  const { name, bytes } =
    typeof file === "string" ? { name: basename(file), bytes: new Uint8Array(await readFile(file)) } : file;
  const task: ReaderTask = { bytes, fileName: name, limits: options.limits ?? {} };
  return inKillableThread<ImportResult>(
    {
      worker: "ifc/reader-worker",
      task,
      overTime: (seconds) => ({ code: "ifc-time-over", values: { seconds } }),
      overMemory: (megabytes) => ({ code: "ifc-memory-over", values: { megabytes } }),
    },
    options,
  );
}
