export { catalogue, type ProblemCode } from "./catalogue/index.ts";
export * from "./check.ts";
export * from "./problem.ts";
export * from "./said.ts";
export { shortSourceTitle, sourceTitle } from "./source-titles.ts";
