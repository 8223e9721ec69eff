import runtime from "highs/runtime?url";
import { loadSolver } from "./highs.ts";

/** The solver in a browser's worker, where the bundler says at which address its WebAssembly lies. */
export const loadSolverInBrowser = (): ReturnType<typeof loadSolver> =>
  loadSolver({ wasm: new URL(runtime, import.meta.url).href });
