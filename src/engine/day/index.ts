export {
  delayWish,
  type ReplayedLoad,
  replayLoads,
  usualStill,
  usualWish,
} from "./replay-loads.ts";
export { controlParameters, type LoadDevice, type SwitchedLoad, switchedLoads } from "./switched-loads.ts";
