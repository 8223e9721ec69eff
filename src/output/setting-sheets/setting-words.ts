import { figured, first, type Said, type SettingName, type SettingValues, say, type Words } from "#engine";

/** Settings in the order in which they stand on a card, with the words for them. */
export const settingTitles: Readonly<Record<SettingName, Said>> = {
  mode: say`Mode`,
  button: say`Button`,
  offDelay: say`Off delay`,
  impulse: say`Impulse`,
  threshold: say`Brightness`,
  sensitivity: say`Sensitivity`,
  soundSensitivity: first(say`sound`),
  mask: say`Lens mask`,
  output: say`Output`,
  groupRole: say`Role in group`,
  lock: say`Lock`,
  testMode: say`Test mode`,
};

export const settingOrder = Object.keys(settingTitles) as readonly SettingName[];

const named: Readonly<Record<string, Said>> = {
  switch: say`on and off`,
  "dimming-broadcast": say`dims all alike`,
  "addressed-bus": say`bus, not covered`,
  automatic: say`automatic`,
  "semi-automatic": say`semi-automatic`,
  "on-only": say`on only`,
  "on-and-off": say`on and off`,
  "as-drawn": say`as drawn`,
  alone: say`alone`,
  master: say`master`,
  slave: say`slave, signals only`,
  parallel: say`outputs joined`,
  low: say`low`,
  medium: say`medium`,
  high: say`high`,
  open: say`open`,
  locked: say`locked`,
  none: say`none`,
  off: say`off`,
  on: say`on`,
};

/** A value in words and numbers, never as somebody's switch. @example 600 of the off delay: "10 min" */
export function settingWords<Name extends SettingName>(name: Name, value: SettingValues[Name]): Words {
  if (typeof value === "number")
    return name === "threshold" ? figured(`${Math.round(value)} lx`) : timeWords(value);
  if (typeof value === "object" && "background" in (value as object))
    return say`two-level, ${Math.round((value as { readonly background: number }).background * 100)} %`;
  if (typeof value === "object") {
    const { pulse, pause } = value as { readonly pulse: number; readonly pause: number };
    return say`${timeWords(pulse)} on, ${timeWords(pause)} pause`;
  }
  if (name === "impulse" && value === "none") return say`holds its contact`;
  return named[value as string] ?? String(value);
}

/** [s] as minutes from one minute on. @example 90: "1.5 min" */
function timeWords(seconds: number): Said {
  const rounded = (value: number): number => Math.round(value * 10) / 10;
  return figured(seconds >= 60 ? `${rounded(seconds / 60)} min` : `${rounded(seconds)} s`);
}
