import { parentPort, workerData } from "node:worker_threads";
import type { ReaderMessage } from "../killable.ts";
import { type AnyPlanResult, type PlanTask, readPlan } from "./read-plan.ts";
import { type PlanChoice, type PlanSurveyResult, surveyPlan } from "./survey-plan.ts";

const say = (message: ReaderMessage<AnyPlanResult | PlanSurveyResult>): void =>
  parentPort!.postMessage(message);

const { choice, ...task } = workerData as PlanTask & { readonly choice?: PlanChoice };
const progress = (step: string, share: number): void => say({ kind: "progress", step, share });
const result = choice ? await surveyPlan(task, choice, progress) : await readPlan(task, progress);
say({ kind: "result", result });
