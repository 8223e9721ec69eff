export { type SetDevice, settingConflicts } from "./conflicts.ts";
export { settingsOf } from "./derive.ts";
export type {
  ChosenSettings,
  DeviceSettings,
  Setting,
  SettingContext,
  SettingGrade,
  SettingName,
  SettingValues,
} from "./device-settings.ts";
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
