export { VerifyMark } from "./evidence.tsx";
export { FindingsList } from "./findings-list.tsx";
export type { Remedy } from "./remedy.ts";
export { remedyActions } from "./remedy-actions.ts";
