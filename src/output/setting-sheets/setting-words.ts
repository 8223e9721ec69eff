import type { SettingName, SettingValues } from "#engine";

/** Settings in the order in which they stand on a card, with the words for them. */
export const settingTitles: Readonly<Record<SettingName, string>> = {
  mode: "Mode",
  button: "Button",
  offDelay: "Off delay",
  impulse: "Impulse",
  threshold: "Brightness",
  sensitivity: "Sensitivity",
  soundSensitivity: "Sound",
  mask: "Lens mask",
  output: "Output",
  groupRole: "Role in group",
  lock: "Lock",
  testMode: "Test mode",
};

export const settingOrder = Object.keys(settingTitles) as readonly SettingName[];

const named: Readonly<Record<string, string>> = {
  switch: "on and off",
  "dimming-broadcast": "dims all alike",
  "addressed-bus": "bus, not covered",
  automatic: "automatic",
  "semi-automatic": "semi-automatic",
  "on-only": "on only",
  "on-and-off": "on and off",
  "as-drawn": "as drawn",
  alone: "alone",
  master: "master",
  slave: "slave, signals only",
  parallel: "outputs joined",
  low: "low",
  medium: "medium",
  high: "high",
  open: "open",
  locked: "locked",
  none: "none",
  off: "off",
  on: "on",
};

/** A value in words and numbers, never as somebody's switch. @example 600 of the off delay: "10 min" */
export function settingWords<Name extends SettingName>(name: Name, value: SettingValues[Name]): string {
  if (typeof value === "number") return name === "threshold" ? `${Math.round(value)} lx` : timeWords(value);
  if (typeof value === "object" && "background" in (value as object))
    return `two-level, ${Math.round((value as { readonly background: number }).background * 100)} %`;
  if (typeof value === "object") {
    const { pulse, pause } = value as { readonly pulse: number; readonly pause: number };
    return `${timeWords(pulse)} on, ${timeWords(pause)} pause`;
  }
  return named[value as string] ?? String(value);
}

/** [s] as minutes from one minute on. @example 90: "1.5 min" */
function timeWords(seconds: number): string {
  const rounded = (value: number): number => Math.round(value * 10) / 10;
  return seconds >= 60 ? `${rounded(seconds / 60)} min` : `${rounded(seconds)} s`;
}
