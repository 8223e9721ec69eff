import type { Problem } from "../check/index.ts";
import type { DeviceSettings, SettingContext } from "./device-settings.ts";

/** A device with its settings and what is known of its place. */
export interface SetDevice {
  readonly context: SettingContext;
  readonly settings: DeviceSettings;
}

/**
 * Settings that contradict the room, the group, a rule, or each other.
 *
 * @param devices - All devices of the job, or of one group
 * @returns Findings device by device, then group by group
 * @source SETTING-CHOICE
 */
export function settingConflicts(devices: readonly SetDevice[]): Problem[] {
  return [...devices.flatMap(deviceConflicts), ...groupConflicts(devices)];
}

const minutes = (seconds: number): number => Math.round((seconds / 60) * 10) / 10;

function deviceConflicts({ context, settings }: SetDevice): Problem[] {
  const { tag, room, device, longestDelay, stairTimer } = context;
  const found: Problem[] = [];
  const report = (code: Problem["code"], values: Problem["values"] = {}): void => {
    found.push({ code, values: { tag, room, ...values }, records: [device] });
  };
  const threshold = settings.threshold.value;
  if (threshold !== "off" && !context.daylight)
    report("threshold-without-daylight", { lux: Math.round(threshold) });
  if (threshold !== "off" && context.group.role === "slave") report("threshold-on-slave");
  if (settings.soundSensitivity.value !== "off" && context.fanNear) report("sound-next-to-fan");
  if (settings.soundSensitivity.value !== "off" && !context.hears) report("sound-without-microphone");
  if (longestDelay && settings.offDelay.value > longestDelay.delay) {
    report("delay-above-rule", {
      minutes: minutes(settings.offDelay.value),
      limit: minutes(longestDelay.delay),
      rule: longestDelay.rule,
    });
  }
  const semi = settings.mode.value === "semi-automatic";
  if (
    semi &&
    !context.daylight &&
    (context.use === "passing" || context.use === "stair" || context.escapeRoute)
  )
    report("absence-control-in-dark-way");
  if (semi && !context.hasButton) report("absence-control-without-button");
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

function groupConflicts(devices: readonly SetDevice[]): Problem[] {
  const groups = new Map<string, SetDevice[]>();
  for (const device of devices) {
    const { id } = device.context.group;
    groups.set(id, [...(groups.get(id) ?? []), device]);
  }
  return [...groups.values()].flatMap((members) => {
    const joined = members.filter(({ settings }) => settings.groupRole.value === "parallel");
    if (joined.length < 2) return [];
    const values = {
      tags: joined.map(({ context }) => context.tag).join(", "),
      room: joined[0]!.context.room,
    };
    const records = joined.map(({ context }) => context.device);
    const found: Problem[] = [];
    const delays = joined.map(({ settings }) => settings.offDelay.value);
    const [shortest, longest] = [Math.min(...delays), Math.max(...delays)];
    if (shortest !== longest)
      found.push({
        code: "parallel-delays-differ",
        values: { ...values, longest: minutes(longest) },
        records,
      });
    // Every contact decides by its own sensor, and each takes the others' lamps for daylight.
    if (joined.filter(({ settings }) => settings.threshold.value !== "off").length > 1)
      found.push({ code: "parallel-thresholds", values, records });
    return found;
  });
}
