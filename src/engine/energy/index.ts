export { alwaysLit, type Consumption, consumption, litFor, saving } from "./consumption.ts";
export {
  compareDelays,
  type DelayResult,
  type DelayTask,
  type DelayWish,
  recommendedDelay,
} from "./delays.ts";
export { type ArrivalStudy, manualSwitchOn } from "./manual-on.ts";
export {
  type OccupancyControl,
  occupancyControlFactor,
  occupancyControlFactors,
  occupancyFactor,
} from "./occupancy-factor.ts";
export { drawnPresence, type PresenceStep, presenceStep } from "./presence.ts";
export { type AlternatingPresence, officePresence, type RenewalResult, renewal } from "./renewal.ts";
export { presenceOf, type ReplayCount, replayRows } from "./replay.ts";
export {
  type LoggedPresence,
  type LogReplay,
  type LogReplayTask,
  type ReplayedDelay,
  replayLog,
} from "./replay-log.ts";
