export { allowanceOf } from "./choose-stations.ts";
export { boundaryAsked } from "./edge-stations.ts";
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
