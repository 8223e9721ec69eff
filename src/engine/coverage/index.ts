export type * from "./results.ts";
