import type { FaultAnswer, FaultQuestion } from "./fault-protocol.ts";
import { type Line, newestLine } from "./line.ts";

/** Questions about rooms with a complaint. */
export const faultLine = (): Line<FaultQuestion, FaultAnswer> =>
  newestLine({
    newWorker: () =>
      new Worker(new URL("./fault-worker.ts", import.meta.url), { type: "module", name: "fault" }),
  });
