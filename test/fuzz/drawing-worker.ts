import { parentPort, workerData } from "node:worker_threads";
import { readDxf } from "#exchange";
import { mutatedDrawing } from "./mutated-drawing.ts";

/** What became of one mutated file. */
export interface DrawingOutcome {
  readonly seed: number;
  readonly outcome: "read" | "refused" | "crashed" | "silently empty";
  /** Codes of the problems, or the message of the crash. */
  readonly detail: string;
}

const { from, to } = workerData as { from: number; to: number };
for (let seed = from; seed < to; seed++) {
  parentPort!.postMessage({ begin: seed });
  parentPort!.postMessage({ ...outcomeOf(seed), seed });
}

function outcomeOf(seed: number): Pick<DrawingOutcome, "outcome" | "detail"> {
  try {
    const result = readDxf(mutatedDrawing(seed), { fileName: `mutated-${seed}.dxf` });
    if ("problems" in result) {
      const codes = result.problems.map((problem) => problem.code);
      return { outcome: codes.length > 0 ? "refused" : "silently empty", detail: codes.join() };
    }
    const { linework, report } = result;
    const { lines, layerOf, arcOf, layers, arcs, texts, blocks, unit, parts } = linework;
    const numbers = JSON.stringify([arcs, texts, blocks, unit, parts]);
    if (!lines.every(Number.isFinite) || /null|NaN/.test(numbers))
      return {
        outcome: "crashed",
        detail: `a number that is not finite came out: ${/.{60}null/.exec(numbers)}`,
      };
    if (layerOf.some((layer) => layer >= layers.length) || arcOf.some((arc) => arc > arcs.length))
      return { outcome: "crashed", detail: "an index leads nowhere" };
    for (let i = 0; i < layerOf.length; i++)
      if (lines[4 * i] === lines[4 * i + 2] && lines[4 * i + 1] === lines[4 * i + 3])
        return { outcome: "crashed", detail: "a line of no length came out" };
    const something = layerOf.length > 0 && parts.length > 0 && report.lines === layerOf.length;
    return {
      outcome: something ? "read" : "silently empty",
      detail: report.notes.map(({ code }) => code).join(),
    };
  } catch (error) {
    return {
      outcome: "crashed",
      detail: error instanceof Error ? (error.stack ?? error.message).slice(0, 600) : String(error),
    };
  }
}
