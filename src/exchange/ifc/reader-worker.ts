import { parentPort, workerData } from "node:worker_threads";
import type { ImportResult } from "../survey.ts";
import type { ReadLimits } from "./limits.ts";
import { readIfc } from "./read-ifc.ts";

/** What the reader's worker thread is started with. */
export interface ReaderTask {
  readonly bytes: Uint8Array;
  readonly fileName: string;
  readonly limits: Partial<ReadLimits>;
}

/** What it says back: steps on the way, and the result at the end. */
export type ReaderMessage =
  | { readonly kind: "progress"; readonly step: string; readonly share: number }
  | { readonly kind: "result"; readonly result: ImportResult };

const say = (message: ReaderMessage): void => parentPort!.postMessage(message);

const task = workerData as ReaderTask;
const result = await readIfc(task.bytes, {
  fileName: task.fileName,
  limits: task.limits,
  progress: (step, share) => say({ kind: "progress", step, share }),
});
say({ kind: "result", result });
