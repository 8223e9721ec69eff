import { parentPort, workerData } from "node:worker_threads";
import { type GeometryKernel, loadKernel, readIfc } from "#exchange";
import { mutated } from "./mutated.ts";
import { bytesOf, writtenBuilding } from "./written-building.ts";

/** What became of one mutated file. */
export interface FuzzOutcome {
  readonly seed: number;
  readonly outcome: "read" | "refused" | "crashed" | "silently empty";
  /** Codes of the problems, or the message of the crash. */
  readonly detail: string;
  /** Time that it took. [ms] */
  readonly time: number;
}

const { from, to } = workerData as { from: number; to: number };
const bases = [
  writtenBuilding({ schema: "IFC2X3", unit: "milli" }),
  writtenBuilding({ schema: "IFC4", unit: "metre", turn: 0.3 }),
];

let kernel: GeometryKernel | undefined;
for (let seed = from; seed < to; seed++) {
  parentPort!.postMessage({ begin: seed });
  const start = performance.now();
  const outcome = await outcomeOf(seed);
  parentPort!.postMessage({ ...outcome, seed, time: performance.now() - start });
}

async function outcomeOf(seed: number): Promise<Pick<FuzzOutcome, "outcome" | "detail">> {
  try {
    kernel ??= await loadKernel();
    const result = await readIfc(bytesOf(mutated(bases[seed % 2]!, seed)), {
      fileName: `mutated-${seed}.ifc`,
      kernel,
    });
    if ("problems" in result) {
      const codes = result.problems.map((problem) => problem.code);
      if (codes.includes("ifc-shape-reader-failed")) kernel = undefined;
      return { outcome: codes.length > 0 ? "refused" : "silently empty", detail: codes.join() };
    }
    const { survey, report } = result;
    const something = survey.rooms.length + survey.drawings.length + survey.looseLuminaires.length > 0;
    const finite = !/(null,null|\[null|NaN)/.test(
      JSON.stringify([survey.rooms, survey.openings, survey.obstacles]),
    );
    if (!finite) return { outcome: "crashed", detail: "a number that is not finite came out" };
    return {
      outcome: something ? "read" : "silently empty",
      detail: `${survey.rooms.length} rooms, ${report.notes.length} notes`,
    };
  } catch (error) {
    kernel = undefined;
    return {
      outcome: "crashed",
      detail: error instanceof Error ? (error.stack ?? error.message).slice(0, 600) : String(error),
    };
  }
}
