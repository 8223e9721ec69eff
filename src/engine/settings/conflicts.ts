import type { Problem } from "../check/index.ts";
import { unknownFacts } from "./derive.ts";
import type { SetDevice } from "./device-settings.ts";
import { groupConflicts, inMinutes } from "./group-conflicts.ts";
import { asksForBackground, backgroundLevels, outputKindOf } from "./output.ts";

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
  const doubt = (setting: string, missing: string): void =>
    report("setting-not-proven", { setting, missing: missing.replace(/\.$/, "") });
  const threshold = settings.threshold.value;
  if (threshold !== "off" && daylight === false)
    report("threshold-without-daylight", { lux: Math.round(threshold) });
  if (threshold !== "off" && daylight === undefined) doubt("The threshold", unknownFacts.daylight);
  if (threshold !== "off" && settings.groupRole.value === "slave") report("threshold-on-slave");
  const listens = settings.soundSensitivity.value !== "off";
  if (listens && context.fanNear) report("sound-next-to-fan");
  if (listens && hears === false) report("sound-without-microphone");
  if (listens && hears === undefined) doubt("Sound", unknownFacts.hears);
  if (listens && settings.soundSensitivity.kind === "chosen" && context.fanNear === undefined)
    doubt("Sound", unknownFacts.fanNear);
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
    if (context.hasButton === undefined) doubt("Absence control", unknownFacts.button);
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
    readonly doubt: (setting: string, missing: string) => void;
  },
): void {
  const { value } = settings.output;
  const kind = outputKindOf(value);
  if (kind === "addressed-bus") {
    report("addressed-bus-not-covered");
    return;
  }
  const words = kind.replace("-", " ");
  // That a contact switches needs no declaration.
  if (kind !== "switch" && context.outputKinds === undefined)
    doubt("Its output", `whether its data sheet knows ${words}`);
  if (context.outputKinds && !context.outputKinds.includes(kind))
    report("output-not-declared", { output: words });
  if (typeof value === "object") {
    const { least, most } = backgroundLevels;
    if (value.background < least - 1e-9 || value.background > most + 1e-9)
      report("background-level-unusual", { percent: Math.round(value.background * 100) });
  } else if (settings.output.kind === "chosen" && asksForBackground(context)) report("way-goes-dark");
}
