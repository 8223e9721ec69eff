export { handoverOf } from "./collect.ts";
export type * from "./handover.ts";
