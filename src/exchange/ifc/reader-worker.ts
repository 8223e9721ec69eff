import { parentPort, workerData } from "node:worker_threads";
import type { ReaderMessage } from "../killable.ts";
import type { ImportResult } from "../survey.ts";
import type { ReadLimits } from "./limits.ts";
import { readIfc } from "./read-ifc.ts";

/** What the reader's worker thread is started with. */
export interface ReaderTask {
  readonly bytes: Uint8Array;
  readonly fileName: string;
  readonly limits: Partial<ReadLimits>;
}

const say = (message: ReaderMessage<ImportResult>): void => parentPort!.postMessage(message);

const task = workerData as ReaderTask;
const result = await readIfc(task.bytes, {
  fileName: task.fileName,
  limits: task.limits,
  progress: (step, share) => say({ kind: "progress", step, share }),
});
say({ kind: "result", result });
