import { createRequire } from "node:module";
import { Worker, type WorkerOptions } from "node:worker_threads";
import type { Problem, Seconds } from "#engine";

export interface KillableOptions {
  /** Time after which the reading is killed. [s] */
  readonly seconds?: Seconds;
  /** Memory that the reading may take on top of what the process holds already. [MB] */
  readonly megabytes?: number;
  readonly progress?: (step: string, share: number) => void;
  /** Kills the reading; the promise then rejects with the signal's reason. */
  readonly signal?: AbortSignal;
}

/** What a reader's thread says: steps on the way, and the result at the end. */
export type ReaderMessage<Result> =
  | { readonly kind: "progress"; readonly step: string; readonly share: number }
  | { readonly kind: "result"; readonly result: Result };

/** What is read in a thread of its own. */
export interface Killable {
  /** The thread's file without its ending, from this folder: "ifc/reader-worker". */
  readonly worker: string;
  /** What the thread is started with. */
  readonly task: unknown;
  readonly overTime: (seconds: Seconds) => Problem;
  readonly overMemory: (megabytes: number) => Problem;
}

/**
 * Reads something in a thread of its own, which is killed when it takes too long or too much memory.
 *
 * A thread and not a process: it starts in a fraction of the time, and killing it stops WebAssembly loops too. Its heap is
 * capped by the engine; memory outside of that cap (WebAssembly, arrays of numbers) is seen by the growth of the whole
 * process, which is watched as well.
 */
export async function inKillableThread<Result>(
  reading: Killable,
  options: KillableOptions,
): Promise<Result | { readonly problems: readonly Problem[] }> {
  const seconds = options.seconds ?? 120;
  const megabytes = options.megabytes ?? 1500;
  const worker = readerThread(reading.worker, {
    workerData: reading.task,
    resourceLimits: { maxOldGenerationSizeMb: megabytes, maxYoungGenerationSizeMb: 64 },
  });
  try {
    return await resultOf<Result>(worker, { ...options, ...reading, seconds, megabytes });
  } finally {
    await worker.terminate();
  }
}

const fromSource = import.meta.url.endsWith(".ts");

/** Beside this file in the source, by way of a loader; in the built package this file is part of the command line, one folder over. */
const readerThread = (file: string, options: WorkerOptions): Worker => {
  if (!fromSource) return new Worker(new URL(`../exchange/${file}.mjs`, import.meta.url), options);
  const loader = createRequire(import.meta.url)
    .resolve("tsx/esm/api")
    .replace(/\.cjs$/, ".mjs");
  const reader = new URL(`./${file}.ts`, import.meta.url).href;
  const start = `import(${JSON.stringify(loader)}).then((tsx) => tsx.tsImport(${JSON.stringify(reader)}, ${JSON.stringify(import.meta.url)}))`;
  return new Worker(start, { ...options, eval: true });
};

/** How often memory is looked at: a kernel grows by some hundred megabytes a second at most. [ms] */
const watchEvery = 50;

type Limited = KillableOptions & Killable & { readonly seconds: Seconds; readonly megabytes: number };

const resultOf = <Result>(
  worker: Worker,
  options: Limited,
): Promise<Result | { readonly problems: readonly Problem[] }> => {
  const { seconds, megabytes, signal, progress } = options;
  const overMemory = options.overMemory(megabytes);
  const before = process.memoryUsage.rss();
  return new Promise((resolve, reject) => {
    const stops: (() => void)[] = [];
    const finish = (act: () => void): void => {
      for (const stop of stops) stop();
      act();
    };
    const timer = setTimeout(
      () => finish(() => resolve({ problems: [options.overTime(seconds)] })),
      seconds * 1000,
    );
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
    worker.on("message", (message: ReaderMessage<Result>) => {
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
