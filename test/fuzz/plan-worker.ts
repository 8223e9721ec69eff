import { parentPort, workerData } from "node:worker_threads";
import { type Linework, readPdf, readPicture, readScan, readSvg } from "#exchange";
import { type FuzzedKind, mutatedPlan, soundPlans } from "./mutated-plan.ts";

/** What became of one mutated plan. */
export interface PlanOutcome {
  readonly seed: number;
  readonly kind: FuzzedKind;
  readonly outcome: "read" | "refused" | "crashed" | "silently empty";
  /** Codes of the problems, or the message of the crash. */
  readonly detail: string;
}

const { from, to } = workerData as { from: number; to: number };
const kinds: readonly FuzzedKind[] = ["pdf", "svg", "picture", "pdf", "svg", "scan"];
const plans = await soundPlans();

for (let seed = from; seed < to; seed++) {
  parentPort!.postMessage({ begin: seed });
  const kind = kinds[seed % kinds.length]!;
  const bytes = mutatedPlan(plans[kind][seed % plans[kind].length]!, kind, seed);
  parentPort!.postMessage({ seed, kind, ...(await outcomeOf(kind, bytes, seed)) });
}

async function outcomeOf(
  kind: FuzzedKind,
  bytes: Uint8Array,
  seed: number,
): Promise<Pick<PlanOutcome, "outcome" | "detail">> {
  try {
    const options = { fileName: `mutated-${seed}.${kind}` };
    if (kind === "picture") {
      const result = readPicture(bytes);
      if ("problems" in result) return refused(result.problems);
      const { width, height, bytes: copy } = result.picture;
      return { outcome: width > 0 && height > 0 && copy.length > 0 ? "read" : "silently empty", detail: "" };
    }
    if (kind === "scan") {
      const result = await readScan(bytes, { page: 1, longest: 200 });
      if ("problems" in result) return refused(result.problems);
      const { width, height, pixels } = result.scan;
      const isWhole = width > 0 && height > 0 && Math.max(width, height) <= 200;
      return {
        outcome: isWhole && pixels.length === 4 * width * height ? "read" : "silently empty",
        detail: `${width} × ${height}`,
      };
    }
    const result = await (kind === "pdf" ? readPdf(bytes, options) : readSvg(bytes, options));
    return "problems" in result ? refused(result.problems) : soundnessOf(result.linework);
  } catch (error) {
    return {
      outcome: "crashed",
      detail: error instanceof Error ? (error.stack ?? error.message).slice(0, 600) : String(error),
    };
  }
}

function refused(problems: readonly { readonly code: string }[]): Pick<PlanOutcome, "outcome" | "detail"> {
  const detail = problems.map(({ code }) => code).join();
  return { outcome: problems.length > 0 ? "refused" : "silently empty", detail };
}

/** A result must hold lines, and no number in it that is none. */
function soundnessOf(linework: Linework): Pick<PlanOutcome, "outcome" | "detail"> {
  const { lines, layerOf, arcOf, layers, arcs, texts, blocks, unit, parts } = linework;
  if (lines.length === 0) return { outcome: "silently empty", detail: "" };
  const rest = JSON.stringify([arcs, texts, blocks, unit, parts]);
  const whole =
    lines.every(Number.isFinite) &&
    !rest.includes("null") &&
    lines.length === 4 * layerOf.length &&
    layerOf.every((layer) => layer < layers.length) &&
    arcOf.every((arc) => arc <= arcs.length) &&
    layers.reduce((sum, layer) => sum + layer.lines, 0) === layerOf.length &&
    unit.metres > 0;
  return whole
    ? { outcome: "read", detail: `${layerOf.length} lines` }
    : { outcome: "crashed", detail: `a result that does not hold together: ${rest.slice(0, 300)}` };
}
