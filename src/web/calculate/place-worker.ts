import { placeRoom } from "#engine";
import { loadSolverInBrowser } from "#solver-in-browser";
import type { PlaceAnswer, PlaceQuestion } from "./protocol.ts";

/** Places one room and is ended after it. A stop is heard between two slices of work: the best so far is handed over. */
let stopped = false;

const tell = (answer: PlaceAnswer): void => postMessage(answer);

addEventListener("message", ({ data }: MessageEvent<PlaceQuestion>) => {
  if (data.ask === "stop") stopped = true;
  else void run(data);
});

async function run({ site, options }: Extract<PlaceQuestion, { ask: "place" }>): Promise<void> {
  try {
    const solver = await loadSolverInBrowser();
    const result = await placeRoom(site, options, {
      solver,
      now: () => performance.now() / 1000,
      cancelled: () => stopped,
      progress: (step) => tell({ tell: "progress", step }),
      breathe,
    });
    tell({ tell: "placed", result });
  } catch (trouble) {
    tell({ tell: "trouble", sentence: trouble instanceof Error ? trouble.message : String(trouble) });
  }
}

/** A turn of the event loop, so that a stop is heard. */
const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
