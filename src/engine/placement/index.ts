export type * from "./contract.ts";
export { type CoverAnswer, type CoverEffort, solveCover } from "./cover/index.ts";
