export { allowanceOf } from "./choose-stations.ts";
export { boundaryAsked } from "./edge-stations.ts";
export { type Combination, furtherTests, type SamplePlan, samplePlan, sampleSize } from "./sampling.ts";
export { type CodeCheck, type SamplingRule, samplingRules } from "./sampling-rules.ts";
export type * from "./station.ts";
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
