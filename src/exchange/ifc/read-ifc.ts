import { type Problem, say, type Words } from "#engine";
import type { ImportResult } from "../survey.ts";
import { type GeometryKernel, type KernelLocation, loadKernel, type OpenModel } from "./kernel.ts";
import { type ReadLimits, usualLimits } from "./limits.ts";
import { modelOf } from "./model.ts";
import { readBuilding } from "./read-building.ts";
import { loopIn } from "./step-loops.ts";
import { scanStep } from "./step-scan.ts";
import { withoutFacts } from "./step-shapes.ts";
import { isZip, unzipModel } from "./unzip.ts";

export interface ReadIfcOptions {
  readonly fileName: string;
  /** A kernel at hand, or where its WebAssembly file lies. Absent: the package finds its own. */
  readonly kernel?: GeometryKernel | KernelLocation;
  readonly limits?: Partial<ReadLimits>;
  /** Called now and then with the step's name and the share done, 0 … 1. */
  readonly progress?: (step: string, share: number) => void;
}

/**
 * Reads a building model (IFC 2x3 or IFC4 as STEP text, or zipped) into survey records with a report, or into the
 * problems that stopped it. Never an empty success: a file that gives neither rooms nor walls is a problem.
 *
 * The bytes are checked from end to end before the geometry kernel sees them, and whatever the kernel throws comes back
 * as a problem. It runs to its end in one go: call it where it can be killed, a worker with a time limit.
 *
 * @source ISO-16739 for what the records mean, ISO-10303-21 for how they are written
 */
export async function readIfc(bytes: Uint8Array, options: ReadIfcOptions): Promise<ImportResult> {
  const limits = { ...usualLimits, ...options.limits };
  const progress = options.progress ?? (() => {});
  progress("unpack", 0);
  const text = isZip(bytes) ? unzipModel(bytes, limits) : bytes;
  if ("code" in text) return { problems: [text] };
  if (text.length > limits.bytes)
    return stopped({ code: "ifc-too-large", values: { limit: `${Math.round(limits.bytes / 1e6)} MB` } });
  progress("check", 0.05);
  const file = scanStep(text, limits);
  if ("code" in file) return { problems: [file] };
  if (!readSchemas.test(file.schema))
    return stopped({ code: "ifc-schema-unknown", values: { schema: file.schema || say`none` } });
  const loop = loopIn(file);
  if (loop) return { problems: [loop] };
  progress("open", 0.15);
  const kernel =
    options.kernel && "open" in options.kernel ? options.kernel : await loadKernel(options.kernel);
  try {
    const open = guarded(() => kernel.open(withoutFacts(file)));
    if (!open) return stopped(failed(say`it cannot be opened`));
    const guardedOpen: OpenModel = {
      stream: (ids, each) => guarded(() => open.stream(ids, each)),
      close: () => open.close(),
    };
    const result = readBuilding(modelOf(file), {
      open: guardedOpen,
      limits,
      progress,
      fileName: options.fileName,
    });
    guarded(() => open.close());
    return result;
  } catch (error) {
    if (error instanceof KernelFailure) return stopped(failed(error.message));
    throw error;
  }
}

/** Whatever the kernel throws, an abort, a trap, a C++ value or a slip of its own wrapper, is the file's problem here. */
class KernelFailure extends Error {}

const guarded = <T>(call: () => T): T => {
  try {
    return call();
  } catch (error) {
    throw new KernelFailure((error instanceof Error ? error.message : String(error)).slice(0, 120));
  }
};

/** IFC 2x2 and 2x3 share the records that are read here; of IFC4 every addendum does. */
const readSchemas =
  /^IFC(2X2_FINAL|2X_FINAL|2X3|2X3_FINAL|2X3_TC1|4|4X[123](_\w+)?|4_ADD\d(_TC\d)?|4X3_ADD\d)$/;

const stopped = (problem: Problem): ImportResult => ({ problems: [problem] });
const failed = (reason: Words): Problem => ({ code: "ifc-shape-reader-failed", values: { reason } });
