import type { DayAnswer, DayQuestion } from "./day-protocol.ts";
import { type Line, newestLine } from "./line.ts";

/** Questions about simulated days. */
export type DayLine = Line<DayQuestion, DayAnswer>;

/** Longer than this a day that was changed meanwhile is not simulated to its end. [ms] */
const patience = 400;

export const dayLine = (): DayLine =>
  newestLine({
    newWorker: () => new Worker(new URL("./day-worker.ts", import.meta.url), { type: "module", name: "day" }),
    patience,
  });
