import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import { inKillableThread, type KillableOptions } from "../killable.ts";
import type { AnyPlanResult, PlanTask } from "./read-plan.ts";

export interface ReadPlanOptions extends KillableOptions {
  readonly limits?: PlanTask["limits"];
  /** The page to read, from 1, where the file has pages. */
  readonly page?: number;
}

/**
 * Reads a plan as lines, whatever kind of plan it is, in a thread of its own, which is killed when it takes too long or too
 * much memory.
 */
export async function readPlanInWorker(
  file: string | { name: string; bytes: Uint8Array },
  options: ReadPlanOptions = {},
): Promise<AnyPlanResult> {
  const { name, bytes } =
    typeof file === "string" ? { name: basename(file), bytes: new Uint8Array(await readFile(file)) } : file;
  const task: PlanTask = {
    bytes,
    fileName: name,
    limits: options.limits ?? {},
    ...(options.page === undefined ? {} : { page: options.page }),
  };
  return inKillableThread<AnyPlanResult>(
    {
      worker: "linework/plan-worker",
      task,
      overTime: (seconds) => ({ code: "plan-time-over", values: { seconds } }),
      overMemory: (megabytes) => ({ code: "plan-memory-over", values: { megabytes } }),
    },
    options,
  );
}
