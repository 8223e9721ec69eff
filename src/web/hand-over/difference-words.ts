import {
  type Difference,
  type FactChange,
  type HandedFact,
  handedName,
  handedWords,
  isPlace,
  type Metres,
  type Said,
  type SettingName,
} from "#engine";
import {
  buttonRoles,
  controlModes,
  groupRoles,
  lensMasks,
  settingGrades,
  settingLocks,
  testModes,
} from "#job";
import { valueWord } from "../set/setting-words.ts";
import { type TextKey, t } from "../texts/hand-over.ts";
import { areaText, lengthText, numberText, spoken, type Units } from "../texts/index.ts";
import { t as set } from "../texts/set.ts";

/** What differs of one thing: its name, and a line for each change. */
export interface DifferenceLines {
  readonly key: string;
  readonly thing: string;
  readonly lines: readonly string[];
}

/** A difference in words. */
export function differenceLines(difference: Difference, units: Units): DifferenceLines {
  const { kind, id, record } = difference;
  const name = `${t(`hand-over.thing.${kind}`)} ${spoken(handedName(difference))}`.trim();
  const room = typeof record.room === "string" ? `, ${record.room}` : "";
  return {
    key: `${kind}/${id}`,
    thing: `${name}${room}`,
    lines:
      difference.what === "changed"
        ? difference.changes
            // An area that changed says that the outline did.
            .filter(({ fact }, _, all) => fact !== "shape" || !all.some((one) => one.fact === "area"))
            .map((change) => changeLine(change, { moved: difference.moved, units }))
        : [t(`hand-over.change.${difference.what}`)],
  };
}

function changeLine(
  { fact, before, after }: FactChange,
  { moved, units }: { readonly moved: Metres | undefined; readonly units: Units },
): string {
  if (fact === "shape" || fact === "fitted") return t(`hand-over.change.${fact}`);
  if (fact === "at" && moved !== undefined)
    return t("hand-over.change.moved", { distance: lengthText(moved, units) });
  const what = titleOf(fact);
  const words = (value: HandedFact): string => valueText(fact, value, units);
  if (before === undefined)
    return t("hand-over.change.entered", { what, after: after === undefined ? "" : words(after) });
  if (after === undefined) return t("hand-over.change.taken-away", { what, before: words(before) });
  return t("hand-over.change.from-to", { what, before: words(before), after: words(after) });
}

/** Words that each setting may hold; a time or a brightness stands as a figure. */
const wordsOf: Readonly<Record<SettingName, readonly string[]>> = {
  mode: controlModes,
  button: buttonRoles,
  offDelay: [],
  output: ["switch", "dimming-broadcast", "addressed-bus"],
  impulse: ["none"],
  threshold: ["off"],
  sensitivity: settingGrades,
  soundSensitivity: [...settingGrades, "off"],
  mask: lensMasks,
  lock: settingLocks,
  testMode: testModes,
  groupRole: groupRoles,
};

function settingOf(fact: string): SettingName | undefined {
  const name = fact.startsWith("set.") ? fact.slice("set.".length) : "";
  return Object.hasOwn(wordsOf, name) ? (name as SettingName) : undefined;
}

/** A state is whatever a file holds: a name that nobody knows stands for itself. */
function titleOf(fact: string): string {
  const setting = settingOf(fact);
  if (setting !== undefined) return set(`set.name.${setting}`);
  return facts.has(fact) ? t(`hand-over.fact.${fact}` as TextKey) : fact;
}

const facts: ReadonlySet<string> = new Set([
  ..."title name tag storey use kind room between at area ceiling temperature escape width head into".split(
    " ",
  ),
  ..."top seeThrough type power circuit planned reach model height turn masks controls".split(" "),
  ..."board breaker rcd section length".split(" "),
  ..."floor daylight wet sill thickness hinge state base above clearance fixing wetZone".split(" "),
]);

const lengths: ReadonlySet<string> = new Set(
  "ceiling width head top height length floor sill thickness base above clearance".split(" "),
);
const unitOf: Readonly<Record<string, string>> = {
  temperature: "°C",
  power: "W",
  rcd: "A",
  section: "mm²",
  turn: "°",
};

function valueText(fact: string, value: HandedFact, units: Units): string {
  if (isPlace(value)) return value.map((part) => lengthText(part, units)).join(", ");
  if (typeof value === "boolean") return t(value ? "hand-over.change.yes" : "hand-over.change.no");
  const setting = settingOf(fact);
  if (typeof value === "string")
    return setting === undefined
      ? spoken(handedWords(fact, value) ?? value)
      : settingText(setting, value, handedWords(fact, value));
  if (setting === "offDelay" || setting === "threshold") return valueWord(setting, value);
  if (lengths.has(fact)) return lengthText(value, units);
  return fact === "area" ? areaText(value, units) : `${numberText(value)} ${unitOf[fact] ?? ""}`.trim();
}

/** Those of pulses and of two levels are whole already; what a newer program kept stands as it is. */
const settingText = (setting: SettingName, value: string, whole: Said | undefined): string =>
  wordsOf[setting].includes(value) ? valueWord(setting, value as never) : spoken(whole ?? value);
