import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";
import { expect, test } from "vitest";
import type { PlanOutcome } from "./plan-worker.ts";

/** Mutated files that are read. */
const cases = 1200;

/** Longest that one file may take. [ms] */
const longest = 10_000;
/** Kinds of files take turns: by this many each has come once. */
const kinds = 6;

const outcomes = (): Promise<readonly PlanOutcome[]> =>
  new Promise((resolve, reject) => {
    const loader = createRequire(import.meta.url)
      .resolve("tsx/esm/api")
      .replace(/\.cjs$/, ".mjs");
    const file = new URL("./plan-worker.ts", import.meta.url).href;
    const start = `import(${JSON.stringify(loader)}).then((tsx) => tsx.tsImport(${JSON.stringify(file)}, ${JSON.stringify(import.meta.url)}))`;
    const worker = new Worker(start, { eval: true, workerData: { from: 1, to: 1 + cases } });
    const list: PlanOutcome[] = [];
    let silence: NodeJS.Timeout | undefined;
    worker.on("message", (message: PlanOutcome | { begin: number }) => {
      clearTimeout(silence);
      if ("begin" in message) {
        // The first one of each kind loads its reader, too.
        const patience = message.begin <= kinds ? 6 * longest : longest;
        silence = setTimeout(() => {
          void worker.terminate();
          reject(new Error(`Mutated plan ${message.begin} hung for ${patience / 1000} s.`));
        }, patience);
      } else list.push(message);
    });
    worker.on("error", reject);
    worker.on("exit", () => {
      clearTimeout(silence);
      resolve(list);
    });
  });

test(`${cases} mutated PDF files, scanned pages, SVG drawings and pictures give a result or a problem, never a crash, a hang or silent emptiness`, async () => {
  const list = await outcomes();
  expect(list).toHaveLength(cases);
  expect(list.filter((each) => each.outcome === "crashed" || each.outcome === "silently empty")).toEqual([]);
  // The mutations must reach every layer of every reader, or the test would prove little.
  for (const kind of ["pdf", "svg", "picture", "scan"] as const) {
    const own = list.filter((each) => each.kind === kind);
    for (const outcome of ["read", "refused"] as const)
      expect(own.filter((each) => each.outcome === outcome).length, `${kind} ${outcome}`).toBeGreaterThan(
        own.length / 10,
      );
  }
}, 180_000);
