export type * from "./findings.ts";
