import { type Line, newestLine } from "./line.ts";
import type { PlannedWalk, WalkQuestion } from "./walk-protocol.ts";

/** Questions about walk tests. */
export type WalkLine = Line<WalkQuestion, PlannedWalk>;

export const walkLine = (): WalkLine =>
  newestLine({
    newWorker: () =>
      new Worker(new URL("./walk-worker.ts", import.meta.url), { type: "module", name: "walk" }),
  });
