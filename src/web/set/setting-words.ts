import type { DeviceSettings, SettingName, SettingValues } from "#engine";
import { delayText, numberText } from "../texts/index.ts";
import { t } from "../texts/set.ts";

/** The value of a setting in words. */
export function valueWord<Name extends SettingName>(name: Name, value: SettingValues[Name]): string {
  const of = <Own extends SettingName>(_: Own): SettingValues[Own] => value as never;
  switch (name as SettingName) {
    case "mode":
      return t(`set.mode.${of("mode")}`);
    case "button":
      return t(`set.button.${of("button")}`);
    case "offDelay":
      return delayText(of("offDelay"));
    case "output": {
      const output = of("output");
      return typeof output === "object"
        ? t("set.output.two-level-at", { percent: Math.round(output.background * 100) })
        : t(`set.output.${output}`);
    }
    case "impulse": {
      const impulse = of("impulse");
      return impulse === "none"
        ? t("set.impulse.contact")
        : t("set.impulse.pulses", { pulse: numberText(impulse.pulse), pause: numberText(impulse.pause) });
    }
    case "threshold": {
      const threshold = of("threshold");
      return threshold === "off" ? t("set.threshold.off") : `${numberText(Math.round(threshold))} lx`;
    }
    case "sensitivity":
      return t(`set.grade.${of("sensitivity")}`);
    case "soundSensitivity":
      return t(`set.grade.${of("soundSensitivity")}`);
    case "mask":
      return t(`set.mask.${of("mask")}`);
    case "lock":
      return t(`set.lock.${of("lock")}`);
    case "testMode":
      return t(`set.testMode.${of("testMode")}`);
    default:
      return t(`set.groupRole.${of("groupRole")}`);
  }
}

/** What one looks for first, in one line; each with whether a person chose it. */
export function atAGlance(
  settings: DeviceSettings,
): readonly { readonly word: string; readonly chosen: boolean }[] {
  const { mode, offDelay, output, impulse, threshold, sensitivity, soundSensitivity, groupRole } = settings;
  const part = (word: string, ...of: readonly { readonly kind: string }[]) => ({
    word,
    chosen: of.some(({ kind }) => kind === "chosen"),
  });
  return [
    part(valueWord("mode", mode.value), mode),
    impulse.value === "none"
      ? part(delayText(offDelay.value), offDelay)
      : part(valueWord("impulse", impulse.value), impulse),
    ...(output.value === "switch" ? [] : [part(valueWord("output", output.value), output)]),
    threshold.value === "off"
      ? part(t("set.line.threshold-off"), threshold)
      : part(valueWord("threshold", threshold.value), threshold),
    part(t("set.line.sensitivity", { grade: valueWord("sensitivity", sensitivity.value) }), sensitivity),
    ...(soundSensitivity.value === "off" ? [] : [part(t("set.line.sound"), soundSensitivity)]),
    ...(groupRole.value === "alone" ? [] : [part(valueWord("groupRole", groupRole.value), groupRole)]),
  ];
}
