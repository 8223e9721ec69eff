export { settingConflicts } from "./conflicts.ts";
export { settingsOf } from "./derive.ts";
export type {
  ChosenSettings,
  DeviceSettings,
  SetDevice,
  Setting,
  SettingContext,
  SettingGrade,
  SettingName,
  SettingValues,
} from "./device-settings.ts";
export { valuesOfSettings } from "./device-settings.ts";
export { backgroundLevels, outputKindOf } from "./output.ts";
export {
  type DimmingLoop,
  dimmedTo,
  lampsAlone,
  loopSlope,
  type ReadingPair,
  type ThresholdReadings,
  type ThresholdResult,
  thresholdFrom,
} from "./threshold.ts";
export { unknownFacts } from "./unknown-facts.ts";
