import { type Said, say } from "../check/index.ts";
import { readingRows } from "./reading.ts";
import type { StepName, WorkStage } from "./work-step.ts";

/** What steps are called, on screens and on papers alike: whoever fills in the page by hand finds the step of the screen. */
export const stepTitles: Readonly<Record<StepName, Said>> = {
  prepare: say`Prepare`,
  "shut-down": say`Shut down`,
  disconnect: say`Disconnect completely`,
  secure: say`Lock and tag`,
  "release-energy": say`Release stored energy`,
  "prove-dead": say`Prove dead`,
  earth: say`Earth and short-circuit`,
  adjacent: say`Cover live parts nearby`,
  "isolate-neutral": say`Isolate the neutral`,
  inspection: say`Inspection`,
  "link-in": say`Test link in`,
  continuity: readingRows.continuity.what,
  insulation: readingRows.insulation.what,
  polarity: say`Polarity`,
  "link-out": say`Test link out`,
  fitting: say`Fit the detector`,
  height: readingRows.height.what,
  "power-up": say`Power on`,
  "warm-up": say`Warm-up`,
  "loop-impedance": readingRows["loop-impedance"].what,
  "earth-resistance": readingRows["earth-resistance"].what,
  "rcd-time": readingRows["rcd-time"].what,
  "rcd-button": say`Test button of the RCD`,
  functional: say`Functional test`,
  "walk-test": say`Walk test`,
  brightness: say`Brightness`,
  delay: readingRows.delay.what,
  "empty-room": say`Empty room`,
  afterglow: say`No afterglow`,
  emergency: say`Emergency luminaire, breaker open`,
};

/** What stages of the work are called. */
export const stageTitles: Readonly<Record<WorkStage, Said>> = {
  isolation: say`Safe isolation`,
  inspection: say`Inspection`,
  "dead-tests": say`Dead tests`,
  fitting: say`Fitting`,
  "power-up": say`Power on`,
  "live-tests": say`Live tests`,
  functional: say`Functional tests`,
  "walk-test": say`Walk test`,
  readings: say`Readings`,
  emergency: say`Emergency luminaires`,
};

/** What parts of steps are called; a pair of conductors stands as it is. */
const partTitles: Readonly<Record<string, Said>> = {
  lock: say`Padlock`,
  tag: say`Warning tag`,
  "tester-before": say`Tester proved, before`,
  "tester-after": say`Tester proved, after`,
  cable: say`Cable`,
  "protective-conductor": say`Protective conductor`,
  colours: say`Colours of conductors`,
  box: say`Box`,
  cover: say`Cover of the box`,
  water: say`Water and dust`,
  label: say`Label`,
  device: say`Right device`,
  place: say`Place`,
  turn: say`Turn`,
  mask: say`Mask`,
  settings: say`Settings`,
  "on-at-entry": say`On at entry`,
  "off-in-test": say`Off in test mode`,
  button: say`Button`,
  "others-light-too": say`The others light too`,
  "breaker-open-light-on": say`Breaker open, light on`,
};

/** What a part of a step is called. @param part - Its name. @returns A pair of conductors as it is, all else in words. @example "L–PE" stays "L–PE" */
export const partTitle = (part: string): Said | string => partTitles[part] ?? part;
