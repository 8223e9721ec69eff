import type { FoundAnswer, FoundQuestion } from "./found-protocol.ts";
import { type Line, newestLine } from "./line.ts";

/** Questions about what a walk test has found. */
export const foundLine = (): Line<FoundQuestion, FoundAnswer> =>
  newestLine({
    newWorker: () =>
      new Worker(new URL("./found-worker.ts", import.meta.url), { type: "module", name: "found" }),
  });
