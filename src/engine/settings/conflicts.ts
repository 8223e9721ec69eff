import { type Problem, type Said, say } from "../check/index.ts";
import type { OutputKind } from "../detector/index.ts";
import type { SetDevice } from "./device-settings.ts";
import { groupConflicts, inMinutes } from "./group-conflicts.ts";
import { asksForBackground, backgroundLevels, outputKindOf } from "./output.ts";
import { missingFacts } from "./unknown-facts.ts";

/**
 * Settings that contradict the room, the group, a rule, or each other; and what was chosen where nobody knows whether it fits.
 *
 * @param devices - All devices of the job, or of one group
 * @returns Findings device by device, then group by group
 * @source SETTING-CHOICE
 */
export function settingConflicts(devices: readonly SetDevice[]): Problem[] {
  return [...devices.flatMap(deviceConflicts), ...groupConflicts(devices)];
}

function deviceConflicts({ context, settings }: SetDevice): Problem[] {
  const { tag, room, device, place, longestDelay, stairTimer, daylight, hears } = context;
  const found: Problem[] = [];
  const report = (code: Problem["code"], values: Problem["values"] = {}): void => {
    found.push({
      code,
      values: { tag, room, ...values },
      records: [device],
      ...(place && { room: place.room, at: place.at }),
    });
  };
  const doubt = (setting: Said, missing: Said): void => report("setting-not-proven", { setting, missing });
  const threshold = settings.threshold.value;
  if (threshold !== "off" && daylight === false)
    report("threshold-without-daylight", { lux: Math.round(threshold) });
  if (threshold !== "off" && daylight === undefined) doubt(say`The threshold`, missingFacts.daylight);
  if (threshold !== "off" && settings.groupRole.value === "slave") report("threshold-on-slave");
  const listens = settings.soundSensitivity.value !== "off";
  if (listens && context.fanNear) report("sound-next-to-fan");
  if (listens && hears === false) report("sound-without-microphone");
  if (listens && hears === undefined) doubt(say`Sound`, missingFacts.hears);
  if (listens && settings.soundSensitivity.kind === "chosen" && context.fanNear === undefined)
    doubt(say`Sound`, missingFacts.fanNear);
  if (longestDelay && settings.offDelay.value > longestDelay.delay) {
    report("delay-above-rule", {
      minutes: inMinutes(settings.offDelay.value),
      limit: inMinutes(longestDelay.delay),
      rule: longestDelay.rule,
    });
  }
  if (settings.mode.value === "semi-automatic") {
    const way = context.use === "passing" || context.use === "stair" || context.escapeRoute === true;
    if (way && daylight === false) report("absence-control-in-dark-way");
    if (way && daylight === undefined) report("absence-control-maybe-dark");
    if (context.hasButton === false) report("absence-control-without-button");
    if (context.hasButton === undefined) doubt(say`Absence control`, missingFacts.button);
  }
  outputConflicts({ context, settings }, { report, doubt });
  if (settings.testMode.value === "on") report("left-in-test-mode");
  if (settings.impulse.value !== "none" && stairTimer) {
    const { pulse, pause } = settings.impulse.value;
    if (pulse + pause >= stairTimer.time)
      report("impulse-slower-than-timer", { every: pulse + pause, time: stairTimer.time });
  }
  if (settings.impulse.value !== "none" && !stairTimer) report("impulse-without-timer");
  if (context.masks > 0 && settings.mask.value === "none") report("mask-left-out");
  return found;
}

/** An output that the data sheet does not declare, a background level that is no background, and what is not covered. */
function outputConflicts(
  { context, settings }: SetDevice,
  {
    report,
    doubt,
  }: {
    readonly report: (code: Problem["code"], values?: Problem["values"]) => void;
    readonly doubt: (setting: Said, missing: Said) => void;
  },
): void {
  const { value } = settings.output;
  const kind = outputKindOf(value);
  if (kind === "addressed-bus") {
    report("addressed-bus-not-covered");
    return;
  }
  // That a contact switches needs no declaration.
  if (kind !== "switch" && context.outputKinds === undefined) doubt(say`Its output`, dataSheetKnows[kind]);
  if (context.outputKinds && !context.outputKinds.includes(kind))
    report("output-not-declared", { output: outputNames[kind] });
  if (typeof value === "object") {
    const { least, most } = backgroundLevels;
    if (value.background < least - 1e-9 || value.background > most + 1e-9)
      report("background-level-unusual", { percent: Math.round(value.background * 100) });
  } else if (settings.output.kind === "chosen" && asksForBackground(context)) report("way-goes-dark");
}

type ToBeDeclared = Exclude<OutputKind, "addressed-bus">;

const outputNames: Readonly<Record<ToBeDeclared, Said>> = {
  switch: say`switch`,
  "two-level": say`two level`,
  "dimming-broadcast": say`dimming broadcast`,
};

/** What is not known of a data sheet that nobody entered. */
const dataSheetKnows: Readonly<Record<Exclude<ToBeDeclared, "switch">, Said>> = {
  "two-level": say`whether its data sheet knows two level`,
  "dimming-broadcast": say`whether its data sheet knows dimming broadcast`,
};
