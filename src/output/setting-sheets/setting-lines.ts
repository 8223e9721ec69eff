import { english, type PlannedDevice, type SettingName } from "#engine";
import type { SettingLine } from "../ifc/devices-ifc.ts";
import { settingOrder, settingTitles, settingWords } from "./setting-words.ts";

/** What is set on each device in words, by its id, under the English names that properties have in every building model. */
export function settingLines(devices: readonly PlannedDevice[]): ReadonlyMap<string, readonly SettingLine[]> {
  return new Map(
    devices.map(({ context, settings }) => [
      context.device,
      settingOrder.map((name) => line(name, settings)),
    ]),
  );
}

const line = <Name extends SettingName>(name: Name, settings: PlannedDevice["settings"]): SettingLine => ({
  title: english(settingTitles[name]),
  words: settingWords(name, settings[name].value),
});
