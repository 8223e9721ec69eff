/** States of a controller, in the order of their codes in a track. */
export const controlStates = [
  "without-power",
  "warming-up",
  "idle",
  "armed",
  "held",
  "occupied",
  "delay",
  "grace",
  "manual-off",
  "test",
] as const;

/**
 * without-power · warming-up: sensors ignored · idle: nobody · armed: somebody, the button not yet pressed ·
 * held: somebody, bright enough · occupied: movement now · delay: lit, nobody moves · grace: just switched off, sound
 * brings the light back · manual-off: switched off by hand while somebody is there · test: output follows movement.
 */
export type ControlState = (typeof controlStates)[number];

/** What made a controller or a load change, in the order of their codes in a track. */
export const causes = [
  "power-off",
  "power-on",
  "daylight",
  "test-off",
  "test-on",
  "button",
  "movement",
  "extension",
  "sound",
  "warmed-up",
  "test-over",
  "test-pulse-over",
  "quiet",
  "bright",
  "delay-over",
  "dark",
  "grace-over",
  "stair-timer-over",
  "start",
] as const;

export type Cause = (typeof causes)[number];

/** Codes of the states, for the inner loop only. */
export const S = {
  withoutPower: 0,
  warmingUp: 1,
  idle: 2,
  armed: 3,
  held: 4,
  occupied: 5,
  delay: 6,
  grace: 7,
  manualOff: 8,
  test: 9,
} as const;

/** Code of a cause. At the same instant causes take effect in this order: what comes from outside before what runs out. */
export const causeCode = (cause: Cause): number => causes.indexOf(cause);

/** Codes of the causes, for the inner loop only. */
export const C = {
  powerOff: 0,
  powerOn: 1,
  daylight: 2,
  testOff: 3,
  testOn: 4,
  button: 5,
  movement: 6,
  extension: 7,
  sound: 8,
  warmedUp: 9,
  testOver: 10,
  testPulseOver: 11,
  quiet: 12,
  bright: 13,
  delayOver: 14,
  dark: 15,
  graceOver: 16,
  stairTimerOver: 17,
  start: 18,
} as const;
