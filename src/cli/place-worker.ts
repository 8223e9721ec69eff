import { parentPort, workerData } from "node:worker_threads";
import { placeRoom, type Site } from "#engine";
import { loadSolver } from "#solver";
import type { FromWorker, ToWorker } from "./place-rooms.ts";

/** Thread that places one room after another, as it is told. */
const port = parentPort;
if (!port) throw new Error("Runs as a worker only");

const tell = (message: FromWorker): void => port.postMessage(message);
let site: Site | undefined;
/** Not 0: stop with the best so far. */
const halt = workerData as Int32Array;

const solver = loadSolver();

port.on("message", (message: ToWorker) => {
  switch (message.kind) {
    case "site":
      site = message.site;
      return;
    case "place":
      placed(message).catch((error: unknown) =>
        tell({
          kind: "fault",
          room: message.options.room,
          reason: error instanceof Error ? (error.stack ?? error.message) : String(error),
        }),
      );
  }
});

async function placed(message: Extract<ToWorker, { readonly kind: "place" }>): Promise<void> {
  if (!site) throw new Error("The site comes before the first room");
  const result = await placeRoom(site, message.options, {
    solver: await solver,
    now: () => performance.now() / 1000,
    cancelled: () => Atomics.load(halt, 0) !== 0,
    progress: (step) => tell({ kind: "progress", step }),
    breathe: () => new Promise((resolve) => setImmediate(resolve)),
  });
  tell({ kind: "placed", result });
}

tell({ kind: "ready" });
