export type * from "./arrangement.ts";
export {
  busTimer,
  type OccupancyEvent,
  occupancyEventCode,
  occupancyInputValue,
} from "./event-codes.ts";
export { type ControlFault, type Hold, type Simulation, simulate } from "./faults.ts";
export { bridged } from "./intervals.ts";
export { type ControlParameters, usualParameters } from "./parameters.ts";
export { pressesInTheDark } from "./presses.ts";
export { type ControlRun, runControl } from "./simulate.ts";
export { type Cause, type ControlState, causes, controlStates } from "./states.ts";
export { cutLoad, type LoadTrack, rowAt, type StateChange, type StateTrack, stateChanges } from "./track.ts";
