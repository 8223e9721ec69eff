export { setPreferences, showPreferences, usePreferences, useUnits } from "./preferences.ts";
export { Settings } from "./settings.tsx";
