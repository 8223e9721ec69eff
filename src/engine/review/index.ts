export type * from "./findings.ts";
export { findingsOf, orderedFindings, reviewPlan, reviewRoom, reviewSite } from "./review-room.ts";
export type { LightReadings, SettingChoices } from "./settings/choices.ts";
export { type ReadThreshold, readThreshold } from "./settings/device-context.ts";
export {
  type PlannedDevice,
  type RoomRules,
  type SiteSettings,
  settingsOfSite,
} from "./settings/settings-of-site.ts";
