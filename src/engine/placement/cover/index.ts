export { type CoverAnswer, type CoverEffort, solveCover } from "./solve-cover.ts";
