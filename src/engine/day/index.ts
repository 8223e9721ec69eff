export { type ChanceModel, staysByChance, usualMobility } from "./by-chance.ts";
export { type DayInput, daySeconds, dayTask, slaveInterval } from "./day-task.ts";
export { type DayCurve, daylightAt, usualDayCurve } from "./daylight.ts";
export { type DayPattern, dayPattern, dayProfile } from "./patterns.ts";
export {
  delayWish,
  type ReplayedLoad,
  replayLoads,
  usualStill,
  usualWish,
} from "./replay-loads.ts";
export {
  compareDayDelays,
  type DayDelays,
  type DayFault,
  type DayRun,
  type LitStretch,
  type StateStretch,
  simulateDay,
} from "./simulate-day.ts";
export { movementsOf, peopleOf, type Stay, tidyStays } from "./stays.ts";
export { controlParameters, type LoadDevice, type SwitchedLoad, switchedLoads } from "./switched-loads.ts";
