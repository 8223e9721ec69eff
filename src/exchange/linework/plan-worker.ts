import { parentPort, workerData } from "node:worker_threads";
import type { ReaderMessage } from "../killable.ts";
import { type AnyPlanResult, type PlanTask, readPlan } from "./read-plan.ts";

const say = (message: ReaderMessage<AnyPlanResult>): void => parentPort!.postMessage(message);

const result = await readPlan(workerData as PlanTask, (step, share) =>
  say({ kind: "progress", step, share }),
);
say({ kind: "result", result });
