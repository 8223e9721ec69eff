export * from "./check.ts";
export * from "./problem.ts";
export { catalogue, type ProblemCode } from "./catalogue/index.ts";
