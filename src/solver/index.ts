export { loadSolver, type SolverPlace } from "./highs.ts";
