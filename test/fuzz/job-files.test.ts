import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";
import { expect, test } from "vitest";
import type { JobOutcome } from "./job-worker.ts";

/** Mutated files that are read and calculated. */
const cases = 2000;

/** Longest that one file may take. [ms] */
const longest = 10_000;

const outcomes = (): Promise<readonly JobOutcome[]> =>
  new Promise((resolve, reject) => {
    const loader = createRequire(import.meta.url)
      .resolve("tsx/esm/api")
      .replace(/\.cjs$/, ".mjs");
    const file = new URL("./job-worker.ts", import.meta.url).href;
    const start = `import(${JSON.stringify(loader)}).then((tsx) => tsx.tsImport(${JSON.stringify(file)}, ${JSON.stringify(import.meta.url)}))`;
    const worker = new Worker(start, { eval: true, workerData: { from: 1, to: 1 + cases } });
    const list: JobOutcome[] = [];
    let silence: NodeJS.Timeout | undefined;
    worker.on("message", (message: JobOutcome | { begin: number }) => {
      clearTimeout(silence);
      if ("begin" in message) {
        silence = setTimeout(() => {
          void worker.terminate();
          reject(new Error(`Mutated job file ${message.begin} hung for ${longest / 1000} s.`));
        }, longest);
      } else list.push(message);
    });
    worker.on("error", reject);
    worker.on("exit", () => {
      clearTimeout(silence);
      resolve(list);
    });
  });

test(`${cases} mutated job files give a result or a problem, never a crash, a hang, a lost record or a number that is none`, async () => {
  const list = await outcomes();
  expect(list).toHaveLength(cases);
  expect(list.filter((each) => each.outcome !== "read" && each.outcome !== "refused")).toEqual([]);
  // The mutations must reach the calculation, or the test would prove little.
  expect(list.filter((each) => each.outcome === "read").length).toBeGreaterThan(cases / 5);
  expect(list.filter((each) => each.outcome === "refused").length).toBeGreaterThan(cases / 5);
  const codes = new Set(list.flatMap((each) => each.detail.split(",")));
  expect(codes.size).toBeGreaterThan(30);
}, 180_000);
