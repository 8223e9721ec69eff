import type { Lux, Seconds } from "../quantity/index.ts";
import type { ControlParameters } from "./parameters.ts";
import { C, S } from "./states.ts";

const NEVER = Number.POSITIVE_INFINITY;

/** How many switchings the learned part of the lamps is the median of: one that met a cloud does not count. */
const LEARNED_FROM = 5;

/** One controller while it runs: its state, its timers as the time at which they run out, and the light that it measures. */
export interface Automaton {
  readonly parameters: ControlParameters;
  readonly threshold: Lux;
  readonly enough: Lux;
  state: number;
  out: 0 | 1;
  warmAt: Seconds;
  quietAt: Seconds;
  delayAt: Seconds;
  graceAt: Seconds;
  darkAt: Seconds;
  brightAt: Seconds;
  testAt: Seconds;
  testPulseAt: Seconds;
  daylight: Lux;
  /** Light of the lamps at the sensor now. */
  lamps: Lux;
  /** What the controller believes its own lamps to add. */
  learned: Lux;
  readonly jumps: Lux[];
}

/** A controller at the start. @param parameters - Its settings @param start - Ready, or without power @returns The automaton */
export const automatonOf = (parameters: ControlParameters, start: "ready" | "without-power"): Automaton => ({
  parameters,
  threshold: parameters.threshold ?? NEVER,
  enough: (parameters.threshold ?? NEVER) * (1 + parameters.hysteresis),
  state: start === "ready" ? S.idle : S.withoutPower,
  out: 0,
  warmAt: NEVER,
  quietAt: NEVER,
  delayAt: NEVER,
  graceAt: NEVER,
  darkAt: NEVER,
  brightAt: NEVER,
  testAt: NEVER,
  testPulseAt: NEVER,
  daylight: 0,
  lamps: 0,
  learned: 0,
  jumps: [],
});

/**
 * Daylight as the controller believes it: E_day = E_meas − E_art, where E_art is taken off only while its own output is on.
 *
 * @param a - Controller
 * @returns [lx]
 * @source CONTROL-MACHINE
 * @example 550 lx measured, 400 lx learned, lamps on: 150 lx
 */
export const believedDaylight = (a: Automaton): Lux => a.daylight + a.lamps - (a.out === 1 ? a.learned : 0);

/** Remembers what the lamps added when this controller switched them: running median of the last five. */
export function learn(a: Automaton, jump: Lux): void {
  if (a.parameters.compensation !== "learned") return;
  a.jumps.push(Math.max(0, jump));
  if (a.jumps.length > LEARNED_FROM) a.jumps.shift();
  const sorted = a.jumps.toSorted((x, y) => x - y);
  a.learned = sorted[sorted.length >> 1]!;
}

/** When the next timer of a controller runs out. @param a - Controller @returns [s], infinite if none runs */
export function nextExpiry(a: Automaton): Seconds {
  // The timers that can run depend on the state: looking only at those is what makes a year fast.
  switch (a.state) {
    case S.occupied:
      return Math.min(a.quietAt, a.brightAt);
    case S.delay:
      return Math.min(a.delayAt, a.brightAt);
    case S.held:
      return Math.min(a.delayAt, a.darkAt);
    case S.armed:
    case S.manualOff:
      return a.delayAt;
    case S.grace:
      return a.graceAt;
    case S.warmingUp:
      return a.warmAt;
    case S.test:
      return Math.min(a.testAt, a.testPulseAt);
    default:
      return NEVER;
  }
}

/** Goes to a state; its output, and the timers that do not run in it, follow. */
function enter(a: Automaton, state: number, now: Seconds): void {
  a.state = state;
  a.out = state === S.occupied || state === S.delay ? 1 : 0;
  if (state !== S.occupied && state !== S.delay) {
    a.brightAt = NEVER;
    a.quietAt = NEVER;
  }
  a.darkAt = NEVER;
  if (state === S.idle) a.delayAt = NEVER;
  if (state === S.occupied) a.quietAt = now + a.parameters.movementHold;
}

/** Lights the lamps and starts the delay: somebody is there. */
function occupy(a: Automaton, now: Seconds): void {
  enter(a, S.occupied, now);
  a.delayAt = now + a.parameters.offDelay;
}

/** Movement, or the pulse of a slave. @param a - Controller @param now - [s] @param cause - Movement or extension */
export function presence(a: Automaton, now: Seconds, cause: number): void {
  switch (a.state) {
    case S.occupied:
      a.quietAt = now + a.parameters.movementHold;
      a.delayAt = now + a.parameters.offDelay;
      return;
    case S.delay:
    case S.grace:
      occupy(a, now);
      return;
    case S.idle: {
      if (a.parameters.mode === "semi-automatic") enter(a, S.armed, now);
      else if (believedDaylight(a) < a.threshold) enter(a, S.occupied, now);
      else enter(a, S.held, now);
      a.delayAt = now + a.parameters.offDelay;
      return;
    }
    case S.armed:
    case S.held:
    case S.manualOff:
      a.delayAt = now + a.parameters.offDelay;
      return;
    case S.test:
      if (cause === C.movement) {
        a.out = 1;
        a.testPulseAt = now + a.parameters.testPulse;
      }
      return;
    default: // Without power, or warming up: nothing is noticed.
  }
}

/** A sound: keeps light that is on or has just gone off, and never switches on from idle. @param a - Controller @param now - [s] */
export function sound(a: Automaton, now: Seconds): void {
  if (a.parameters.sound === undefined) return;
  if (a.state === S.occupied) {
    a.quietAt = now + a.parameters.movementHold;
    a.delayAt = now + a.parameters.offDelay;
  } else if (a.state === S.delay || a.state === S.grace) occupy(a, now);
}

/** The button. A press that switches on starts the delay anew, because somebody is there. @param a - Controller @param now - [s] */
export function button(a: Automaton, now: Seconds): void {
  switch (a.state) {
    case S.armed:
      if (!a.parameters.buttonNeedsDark || believedDaylight(a) < a.threshold) occupy(a, now);
      return;
    case S.idle:
    case S.manualOff:
      occupy(a, now);
      return;
    case S.occupied:
    case S.delay:
      if (a.parameters.button === "on-and-off") enter(a, S.manualOff, now);
      else occupy(a, now);
      return;
    case S.held:
    case S.grace:
      // Not listed, so it stays; unless whoever presses shall always get light.
      if (a.parameters.buttonAlwaysAnswers) occupy(a, now);
      return;
    default: // Test, warming up, without power: not listed, so it stays.
  }
}

/** Power comes or goes; with it goes all that was learned. @param a - Controller @param now - [s] @param on - Whether it comes */
export function power(a: Automaton, now: Seconds, on: boolean): void {
  if (on === (a.state !== S.withoutPower)) return;
  enter(a, on ? S.warmingUp : S.withoutPower, now);
  a.delayAt = NEVER;
  if (on) {
    a.warmAt = now + a.parameters.warmUp;
    a.out = a.parameters.litWhileWarmingUp ? 1 : 0;
  } else {
    a.learned = 0;
    a.jumps.length = 0;
  }
}

/** Test mode begins or ends. @param a - Controller @param now - [s] @param on - Whether it begins */
export function test(a: Automaton, now: Seconds, on: boolean): void {
  if (a.state === S.withoutPower || (!on && a.state !== S.test)) return;
  enter(a, on ? S.test : S.idle, now);
  a.delayAt = NEVER;
  a.testPulseAt = NEVER;
  a.testAt = on ? now + a.parameters.testTime : NEVER;
}

/** Light at the sensor changed, or the state did: starts and stops the two filters. @param a - Controller @param now - [s] */
export function lookAtLight(a: Automaton, now: Seconds): void {
  if (a.threshold === NEVER || a.parameters.mode !== "automatic") return;
  if (a.state === S.held) {
    if (!(believedDaylight(a) < a.threshold)) a.darkAt = NEVER;
    else if (a.darkAt === NEVER) a.darkAt = now + a.parameters.darkFilter;
  } else if (a.state === S.occupied || a.state === S.delay) {
    if (a.parameters.brightFilter === undefined || !(believedDaylight(a) > a.enough)) a.brightAt = NEVER;
    else if (a.brightAt === NEVER) a.brightAt = now + a.parameters.brightFilter;
  }
}

/**
 * Lets the one timer that runs out now take effect.
 *
 * @param a - Controller
 * @param now - Equal to nextExpiry(a) [s]
 * @returns Code of the cause
 */
export function expire(a: Automaton, now: Seconds): number {
  switch (a.state) {
    case S.warmingUp:
      enter(a, S.idle, now);
      return C.warmedUp;
    case S.occupied:
      if (a.quietAt <= now) {
        enter(a, S.delay, now);
        // The delay counts from the last presence; one shorter than a movement has already run out.
        if (a.delayAt < now) a.delayAt = now;
        return C.quiet;
      }
      enter(a, S.held, now);
      return C.bright;
    case S.delay:
      if (a.brightAt <= now) {
        enter(a, S.held, now);
        return C.bright;
      }
      endOfDelay(a, now);
      return C.delayOver;
    case S.held:
      if (a.delayAt <= now) {
        enter(a, S.idle, now);
        return C.delayOver;
      }
      // The delay keeps running: darkness is no presence.
      enter(a, S.occupied, now);
      return C.dark;
    case S.armed:
    case S.manualOff:
      enter(a, S.idle, now);
      return C.delayOver;
    case S.grace:
      enter(a, S.idle, now);
      return C.graceOver;
    default:
      return endOfTest(a, now);
  }
}

function endOfDelay(a: Automaton, now: Seconds): void {
  const grace = a.parameters.sound?.grace;
  enter(a, grace === undefined ? S.idle : S.grace, now);
  a.delayAt = NEVER;
  if (grace !== undefined) a.graceAt = now + grace;
}

function endOfTest(a: Automaton, now: Seconds): number {
  if (a.testAt <= now) {
    test(a, now, false);
    return C.testOver;
  }
  a.out = 0;
  a.testPulseAt = NEVER;
  return C.testPulseOver;
}
