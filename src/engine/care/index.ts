export { type Day, dayAfter, isDay } from "./days.ts";
export { careOccasions, isInSummer, type Occasion, type OccasionKind } from "./occasions.ts";
export {
  type CarePoint,
  type CarePointName,
  type CareQuestion,
  careOfJob,
  carePoints,
  type StoredReading,
} from "./points.ts";
export { type CareEntry, type CareState, careDue, careStates, INSPECTION_YEARS } from "./state.ts";
