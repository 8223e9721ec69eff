export { adviceFor } from "./advice.ts";
export type { Advice, AdviceQuestion, Remedy } from "./advice-case.ts";
export { allowanceOf } from "./choose-stations.ts";
export { USUAL_WARM_UP } from "./circuit-steps.ts";
export { combinationsOf } from "./combinations.ts";
export { countedFactor, type Found, withFoundReach } from "./corrected-site.ts";
export { boundaryAsked } from "./edge-stations.ts";
export * from "./faults/index.ts";
export {
  ENOUGH_READINGS,
  type FoundKind,
  type FoundReach,
  foundReach,
  LARGEST_FACTOR,
  type ReachObservation,
} from "./found-reach.ts";
export {
  deadPairs,
  type IsolationGroup,
  isolationGroups,
  isolationSteps,
  TESTER_AFTER,
  TESTER_BEFORE,
  UNASSIGNED,
} from "./isolation.ts";
export { logNormal, studentScore } from "./normal.ts";
export { observationsOf } from "./observations.ts";
export {
  checkReading,
  delayLimit,
  type InstrumentRange,
  type ReadingKind,
  type ReadingLimit,
  readingRows,
} from "./reading.ts";
export type { SetForTest } from "./room-steps.ts";
export { type Combination, furtherTests, type SamplePlan, samplePlan, sampleSize } from "./sampling.ts";
export { type CodeCheck, type SamplingRule, samplingRules } from "./sampling-rules.ts";
export { type DeviceResult, resultOfDevice, type SampleState, sampleStates } from "./sampling-state.ts";
export { countedEntries, momentOf, type SiteEntry, type StepSubject } from "./site-entry.ts";
export type * from "./station.ts";
export { partTitle, stageTitles, stepTitles } from "./step-titles.ts";
export { type DeviceSwap, partedBySwaps } from "./swap.ts";
export { shortestTour, type Tour, type TourLengths, tourLength } from "./tour.ts";
export {
  type RoomVerdict,
  roomVerdict,
  type StationReading,
  type StationVerdict,
  stationVerdict,
} from "./verdict.ts";
export { basisOf } from "./walk-context.ts";
export { type WalkTestOptions, walkTest } from "./walk-test.ts";
export { stagesOf, type WorkOrder, type WorkOrderOptions, workOrder } from "./work-order.ts";
export {
  checkStepReading,
  mayEnter,
  mayPowerUp,
  needsJudgement,
  type Permission,
  type StepState,
  type StepStatus,
  type WorkState,
  workState,
} from "./work-state.ts";
export {
  type Caution,
  type StepName,
  type StepResult,
  stepId,
  type WorkStage,
  type WorkStep,
  workStages,
} from "./work-step.ts";
