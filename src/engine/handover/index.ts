export { type HandoverInput, handoverOf } from "./collect.ts";
export type * from "./handover.ts";
