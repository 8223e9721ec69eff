import { placeRoom } from "#engine";
import { loadSolverInBrowser } from "#solver-in-browser";
import { breath } from "../breath.ts";
import type { PlaceAnswer, PlaceQuestion } from "./protocol.ts";

/** Places one room and is ended after it. A stop is heard between two slices of work: the best so far is handed over. */
let stopped = false;

const tell = (answer: PlaceAnswer): void => postMessage(answer);

addEventListener("message", ({ data }: MessageEvent<PlaceQuestion>) => {
  if (data.ask === "stop") stopped = true;
  else void run(data);
});

async function run({ site, options, halt }: Extract<PlaceQuestion, { ask: "place" }>): Promise<void> {
  try {
    const solver = await loadSolverInBrowser();
    const result = await placeRoom(site, options, {
      solver,
      now: () => performance.now() / 1000,
      cancelled: () => stopped || (halt !== undefined && Atomics.load(halt, 0) !== 0),
      progress: (step) => tell({ tell: "progress", step }),
      breathe: breath,
    });
    tell({ tell: "placed", result });
  } catch (trouble) {
    tell({ tell: "trouble", sentence: trouble instanceof Error ? trouble.message : String(trouble) });
  }
}
