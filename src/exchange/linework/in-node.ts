import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import type { Problem } from "#engine";
import { inKillableThread, type KillableOptions } from "../killable.ts";
import type { AnyPlanResult, PlanTask } from "./read-plan.ts";
import type { PlanChoice, PlanSurveyResult } from "./survey-plan.ts";

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
  return inThread<AnyPlanResult>(await taskOf(file, options), options);
}

/** The same, with rooms and doors found in the lines. */
export async function surveyPlanInWorker(
  file: string | { name: string; bytes: Uint8Array },
  options: ReadPlanOptions & { readonly choice?: PlanChoice } = {},
): Promise<PlanSurveyResult> {
  return inThread<PlanSurveyResult>(
    { ...(await taskOf(file, options)), choice: options.choice ?? {} },
    options,
  );
}

async function taskOf(
  file: string | { name: string; bytes: Uint8Array },
  options: ReadPlanOptions,
): Promise<PlanTask> {
  const { name, bytes } =
    typeof file === "string" ? { name: basename(file), bytes: new Uint8Array(await readFile(file)) } : file;
  return {
    bytes,
    fileName: name,
    limits: options.limits ?? {},
    ...(options.page === undefined ? {} : { page: options.page }),
  };
}

const inThread = <Result>(
  task: PlanTask & { readonly choice?: PlanChoice },
  options: ReadPlanOptions,
): Promise<Result | { readonly problems: readonly Problem[] }> =>
  inKillableThread<Result>(
    {
      worker: "linework/plan-worker",
      task,
      overTime: (seconds) => ({ code: "plan-time-over", values: { seconds } }),
      overMemory: (megabytes) => ({ code: "plan-memory-over", values: { megabytes } }),
    },
    options,
  );
