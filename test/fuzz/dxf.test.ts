import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";
import { expect, test } from "vitest";
import type { DrawingOutcome } from "./drawing-worker.ts";

/** Mutated files that are read. */
const cases = 1000;

/** Longest that one file may take. [ms] */
const longest = 10_000;

const outcomes = (): Promise<readonly DrawingOutcome[]> =>
  new Promise((resolve, reject) => {
    const loader = createRequire(import.meta.url)
      .resolve("tsx/esm/api")
      .replace(/\.cjs$/, ".mjs");
    const file = new URL("./drawing-worker.ts", import.meta.url).href;
    const start = `import(${JSON.stringify(loader)}).then((tsx) => tsx.tsImport(${JSON.stringify(file)}, ${JSON.stringify(import.meta.url)}))`;
    const worker = new Worker(start, { eval: true, workerData: { from: 1, to: 1 + cases } });
    const list: DrawingOutcome[] = [];
    let silence: NodeJS.Timeout | undefined;
    worker.on("message", (message: DrawingOutcome | { begin: number }) => {
      clearTimeout(silence);
      if ("begin" in message) {
        silence = setTimeout(() => {
          void worker.terminate();
          reject(new Error(`Mutated drawing ${message.begin} hung for ${longest / 1000} s.`));
        }, longest);
      } else list.push(message);
    });
    worker.on("error", reject);
    worker.on("exit", () => {
      clearTimeout(silence);
      resolve(list);
    });
  });

test(`${cases} mutated drawings give lines or a problem, never a crash, a hang or silent emptiness`, async () => {
  const list = await outcomes();
  expect(list).toHaveLength(cases);
  expect(list.filter((each) => each.outcome === "crashed" || each.outcome === "silently empty")).toEqual([]);
  // The mutations must reach every layer, or the test would prove little.
  expect(list.filter((each) => each.outcome === "read").length).toBeGreaterThan(cases / 5);
  expect(list.filter((each) => each.outcome === "refused").length).toBeGreaterThan(cases / 5);
  const codes = new Set(list.flatMap((each) => each.detail.split(",")));
  expect([...codes]).toEqual(
    expect.arrayContaining(["dxf-truncated", "dxf-broken-place", "dxf-without-place", "dxf-block-missing"]),
  );
}, 180_000);
