import type { Lux, Seconds, Share } from "../quantity/index.ts";

/** What a controller is set to. Every number of the state machine has its name here. */
export interface ControlParameters {
  /** automatic: presence switches on; semi-automatic: the button switches on, absence switches off. */
  readonly mode: "automatic" | "semi-automatic";
  readonly button: "on-only" | "on-and-off";
  /** In semi-automatic mode the button switches on only when it is dark. */
  readonly buttonNeedsDark: boolean;
  /** The button switches on also while light is held back by day, and in the grace of sound. Off: these pairs stay as they are. */
  readonly buttonAlwaysAnswers: boolean;
  /** Sensors are ignored for so long after power returns, T_warm. */
  readonly warmUp: Seconds;
  readonly litWhileWarmingUp: boolean;
  /** A movement counts as going on for so long, T_move. */
  readonly movementHold: Seconds;
  /** From the last presence to off, T_off. */
  readonly offDelay: Seconds;
  /** Sound brings the light back for so long after it went off, T_grace. Absent: no microphone. */
  readonly sound?: { readonly grace: Seconds };
  /** Daylight below which presence switches on, E_on. Absent: light is not looked at. */
  readonly threshold?: Lux;
  /** Share above the threshold at which daylight is enough. */
  readonly hysteresis: Share;
  /** It must be dark for so long before held light comes on. */
  readonly darkFilter: Seconds;
  /** It must be bright for so long before the light goes off although somebody is there, T_bright. Absent: it stays on. */
  readonly brightFilter?: Seconds;
  /** learned: the controller takes off what its own lamps add; none: it takes what it measures for daylight. */
  readonly compensation: "learned" | "none";
  readonly testTime: Seconds;
  readonly testPulse: Seconds;
}

/**
 * Parameters that a data sheet or a person replaces; all of them are a choice of ours, none is a maker's.
 *
 * @source CONTROL-MACHINE
 */
export const usualParameters: ControlParameters = {
  mode: "automatic",
  button: "on-and-off",
  buttonNeedsDark: false,
  buttonAlwaysAnswers: false,
  warmUp: 45,
  litWhileWarmingUp: true,
  movementHold: 1,
  offDelay: 600,
  hysteresis: 0.1,
  darkFilter: 10,
  brightFilter: 600,
  compensation: "learned",
  testTime: 600,
  testPulse: 2,
};

/** Throws where a parameter cannot be: a filter of no length could switch endlessly at one instant. */
export function checkedParameters(parameters: ControlParameters, device: string): ControlParameters {
  const positive: Readonly<Record<string, number | undefined>> = {
    movementHold: parameters.movementHold,
    offDelay: parameters.offDelay,
    grace: parameters.sound?.grace,
    threshold: parameters.threshold,
    darkFilter: parameters.darkFilter,
    brightFilter: parameters.brightFilter,
    testTime: parameters.testTime,
    testPulse: parameters.testPulse,
  };
  for (const [name, value] of Object.entries(positive)) {
    if (value !== undefined && !(value > 0 && value < Number.POSITIVE_INFINITY))
      throw new RangeError(`${name} of ${device} must be greater than 0, not ${value}`);
  }
  for (const name of ["warmUp", "hysteresis"] as const) {
    if (!(parameters[name] >= 0 && parameters[name] < Number.POSITIVE_INFINITY))
      throw new RangeError(`${name} of ${device} must not be negative, but is ${parameters[name]}`);
  }
  return parameters;
}
