import { Worker } from "node:worker_threads";
import type { PlacementOptions, PlacementResult, Site } from "#engine";
import type { FromWorker, PlaceRooms, PlacingWork, ToWorker } from "./place-rooms.ts";

/** How long a worker gets to come to its best after it was told to stop, before it is ended and its room lost: a hall on a busy machine needs ten seconds and more; who cannot wait stops a second time. [ms] */
const graceful = 60_000;

/**
 * Places rooms in threads, the largest first so that none is left to the end alone; a room goes to the thread that is free.
 * Cancelled: the threads finish with the best they have, and rooms not begun are left out.
 */
export function placeInWorkers(threads: number, worker: URL): PlaceRooms {
  return async (site, work) => {
    const waiting = bySize(site, work.rooms);
    const results = new Map<string, PlacementResult>();
    const count = Math.max(1, Math.min(threads, waiting.length));
    await Promise.all(Array.from({ length: count }, () => thread(site, { work, waiting, results, worker })));
    return work.rooms.flatMap((options) => results.get(options.room) ?? []);
  };
}

function thread(
  site: Site,
  pool: {
    readonly work: PlacingWork;
    readonly waiting: PlacementOptions[];
    readonly results: Map<string, PlacementResult>;
    readonly worker: URL;
  },
): Promise<void> {
  const { work, waiting, results } = pool;
  return new Promise((resolve, reject) => {
    // The solver blocks its thread, which hears no message meanwhile; this it sees.
    const halt = new Int32Array(new SharedArrayBuffer(4));
    const worker = new Worker(pool.worker, { workerData: halt });
    const send = (message: ToWorker): void => worker.postMessage(message);
    let late: NodeJS.Timeout | undefined;
    const stop = (): void => {
      Atomics.store(halt, 0, 1);
      late = setTimeout(done, graceful);
    };
    const done = (error?: Error): void => {
      clearTimeout(late);
      work.cancelled.removeEventListener("abort", stop);
      void worker.terminate();
      if (error instanceof Error) reject(error);
      else resolve();
    };
    const next = (): void => {
      const options = work.cancelled.aborted ? undefined : waiting.shift();
      if (options) send({ kind: "place", options });
      else done();
    };
    worker.on("error", done);
    worker.on("message", (message: FromWorker) => {
      switch (message.kind) {
        case "ready":
          send({ kind: "site", site });
          next();
          return;
        case "progress":
          work.progress(message.step);
          return;
        case "placed":
          results.set(message.result.room, message.result);
          work.finished(message.result);
          next();
          return;
        case "fault":
          done(new Error(`Placing room ${message.room}: ${message.reason}`));
      }
    });
    work.cancelled.addEventListener("abort", stop, { once: true });
  });
}

/** Longest outlines first, a rough sign of the longest work. */
function bySize(site: Site, rooms: readonly PlacementOptions[]): PlacementOptions[] {
  const size = new Map(
    site.rooms.map((room) => {
      const xs = room.outline.map((point) => point[0]);
      const ys = room.outline.map((point) => point[1]);
      return [room.id, (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys))];
    }),
  );
  return [...rooms].sort((a, b) => (size.get(b.room) ?? 0) - (size.get(a.room) ?? 0));
}
