import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { basename } from "node:path";
import { Worker, type WorkerOptions } from "node:worker_threads";
import type { Problem, Seconds } from "#engine";
import type { ImportResult } from "../survey.ts";
import type { ReadLimits } from "./limits.ts";
import type { ReaderMessage, ReaderTask } from "./reader-worker.ts";

export interface ReadInWorkerOptions {
  /** Time after which the reading is killed. [s] */
  readonly seconds?: Seconds;
  /** Memory that the reading may take on top of what the process holds already. [MB] */
  readonly megabytes?: number;
  readonly limits?: Partial<ReadLimits>;
  readonly progress?: (step: string, share: number) => void;
  /** Kills the reading; the promise then rejects with the signal's reason. */
  readonly signal?: AbortSignal;
}

/**
 * Reads a building model in a thread of its own, which is killed when it takes too long or too much memory.
 *
 * A thread and not a process: it starts in a fraction of the time, and killing it stops WebAssembly loops too. Its heap is
 * capped by the engine; WebAssembly memory lies outside of that cap, so the growth of the whole process is watched as well.
 */
export async function readIfcInWorker(
  file: string | { name: string; bytes: Uint8Array },
  options: ReadInWorkerOptions = {},
): Promise<ImportResult> {
  const { name, bytes } =
    typeof file === "string" ? { name: basename(file), bytes: new Uint8Array(await readFile(file)) } : file;
  const seconds = options.seconds ?? 120;
  const megabytes = options.megabytes ?? 1500;
  const task: ReaderTask = { bytes, fileName: name, limits: options.limits ?? {} };
  const worker = readerThread({
    workerData: task,
    resourceLimits: { maxOldGenerationSizeMb: megabytes, maxYoungGenerationSizeMb: 64 },
  });
  try {
    return await resultOf(worker, { ...options, seconds, megabytes });
  } finally {
    await worker.terminate();
  }
}

const fromSource = import.meta.url.endsWith(".ts");

/** Beside this file in the source, by way of a loader; in the built package this file is part of the command line, one folder over. */
const readerThread = (options: WorkerOptions): Worker => {
  if (!fromSource) return new Worker(new URL("../exchange/ifc/reader-worker.mjs", import.meta.url), options);
  const loader = createRequire(import.meta.url)
    .resolve("tsx/esm/api")
    .replace(/\.cjs$/, ".mjs");
  const reader = new URL("./reader-worker.ts", import.meta.url).href;
  const start = `import(${JSON.stringify(loader)}).then((tsx) => tsx.tsImport(${JSON.stringify(reader)}, ${JSON.stringify(import.meta.url)}))`;
  return new Worker(start, { ...options, eval: true });
};

/** How often memory is looked at: a kernel grows by some hundred megabytes a second at most. [ms] */
const watchEvery = 50;

type Limited = ReadInWorkerOptions & { readonly seconds: Seconds; readonly megabytes: number };

const resultOf = (worker: Worker, options: Limited): Promise<ImportResult> => {
  const { seconds, megabytes, signal, progress } = options;
  const overMemory: Problem = { code: "ifc-memory-over", values: { megabytes } };
  const overTime: Problem = { code: "ifc-time-over", values: { seconds } };
  const before = process.memoryUsage.rss();
  return new Promise<ImportResult>((resolve, reject) => {
    const stops: (() => void)[] = [];
    const finish = (act: () => void): void => {
      for (const stop of stops) stop();
      act();
    };
    const timer = setTimeout(() => finish(() => resolve({ problems: [overTime] })), seconds * 1000);
    const watch = setInterval(() => {
      if (process.memoryUsage.rss() - before > megabytes * 1e6)
        finish(() => resolve({ problems: [overMemory] }));
    }, watchEvery);
    const abort = (): void => finish(() => reject(signal?.reason));
    signal?.addEventListener("abort", abort);
    stops.push(
      () => clearTimeout(timer),
      () => clearInterval(watch),
      () => signal?.removeEventListener("abort", abort),
    );
    worker.on("message", (message: ReaderMessage) => {
      if (message.kind === "progress") progress?.(message.step, message.share);
      else finish(() => resolve(message.result));
    });
    worker.on("error", (error: Error & { code?: string }) => {
      if (error.code === "ERR_WORKER_OUT_OF_MEMORY") finish(() => resolve({ problems: [overMemory] }));
      else finish(() => reject(error));
    });
    worker.on("exit", (code) =>
      finish(() => reject(new Error(`The reader stopped without a result (exit code ${code}).`))),
    );
    if (signal?.aborted) abort();
  });
};
