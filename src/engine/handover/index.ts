export { type CareRecord, careRecord, type VisitRecord } from "./care-record.ts";
export { type HandoverInput, handoverOf } from "./collect.ts";
export { type Difference, differencesOf, type FactChange, isPlace, nameIn } from "./differences.ts";
export {
  type HandedFact,
  type HandedKind,
  type HandedRecord,
  type HandedState,
  handedKinds,
  handedState,
} from "./handed-state.ts";
export { handedName, handedWords } from "./handed-words.ts";
export type * from "./handover.ts";
export { handoverOfStorey } from "./of-storey.ts";
export { type HandedRevision, nextLetter, type RevisionRecord } from "./revisions.ts";
