export type * from "./findings.ts";
export { findingsOf, orderedFindings, reviewPlan, reviewRoom, reviewSite } from "./review-room.ts";
