export { catalogue, type ProblemCode } from "./catalogue/index.ts";
export * from "./check.ts";
export { filled } from "./filled.ts";
export * from "./problem.ts";
