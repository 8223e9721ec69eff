import {
  type Difference,
  english,
  type FactChange,
  figured,
  type HandedFact,
  type HandedKind,
  handedName,
  handedWords,
  inside,
  isPlace,
  joined,
  type Said,
  type SettingName,
  say,
  type Words,
} from "#engine";
import { settingTitles, settingWords } from "../setting-sheets/setting-words.ts";
import { column } from "../wiring/schedules.ts";
import { figure } from "./check-rows.ts";
import type { Block } from "./upright-pages.ts";

const kindWords: Readonly<Record<HandedKind, Said>> = {
  rooms: say`Room`,
  openings: say`Opening`,
  obstacles: say`Obstacle`,
  dwellPlaces: say`Dwell place`,
  interference: say`Source of interference`,
  luminaires: say`Luminaire`,
  switches: say`Switch`,
  models: say`Model`,
  detectors: say`Detector`,
  circuits: say`Circuit`,
};

/** What a fact is called, and the unit of its figures. */
const factWords: Readonly<Record<string, readonly [word: Said, unit: string]>> = {
  title: [say`Name`, ""],
  name: [say`Name`, ""],
  tag: [say`Tag`, ""],
  storey: [say`Storey`, ""],
  use: [say`Use`, ""],
  kind: [say`Kind`, ""],
  room: [say`Room`, ""],
  between: [say`Between`, ""],
  at: [say`Place`, ""],
  area: [say`Floor area`, "m²"],
  ceiling: [say`Ceiling height`, "m"],
  temperature: [say`Highest temperature`, "°C"],
  escape: [say`Escape route`, ""],
  width: [say`Width`, "m"],
  head: [say`Head`, "m"],
  into: [say`Opens into`, ""],
  top: [say`Height of its top`, "m"],
  seeThrough: [say`See-through`, ""],
  type: [say`Type`, ""],
  power: [say`Power`, "W"],
  circuit: [say`Circuit`, ""],
  planned: [say`Planned`, ""],
  reach: [say`Declared reach`, ""],
  model: [say`Model`, ""],
  height: [say`Mounting height`, "m"],
  turn: [say`Turn`, "°"],
  masks: [say`Lens masks`, ""],
  controls: [say`Switches the light of`, ""],
  board: [say`Board`, ""],
  breaker: [say`Breaker`, ""],
  rcd: [say`Residual current`, "A"],
  section: [say`Section`, "mm²"],
  length: [say`Length of cable`, "m"],
  floor: [say`Floor level`, "m"],
  daylight: [say`Daylight`, ""],
  wet: [say`Wet room`, ""],
  sill: [say`Sill`, "m"],
  thickness: [say`Thickness of the wall`, "m"],
  hinge: [say`Side of the hinge`, ""],
  state: [say`Stands`, ""],
  base: [say`Height of its base`, "m"],
  above: [say`Height above the floor`, "m"],
  clearance: [say`Clearance`, "m"],
  fixing: [say`How it is fixed`, ""],
  wetZone: [say`Wet zone`, ""],
};

/** Differences as a table: what, what of it, as it was, as it is. */
export function differenceBlock(
  heading: Said,
  differences: readonly Difference[] | undefined,
  unknown: Said,
): Block {
  return {
    heading,
    columns: [column(say`What`, 54), column(say`Changed`, 40), column(say`Was`, 39), column(say`Is`, 39)],
    rows: (differences ?? []).flatMap(rowsOf),
    empty: differences === undefined ? unknown : say`Nothing was changed.`,
  };
}

function rowsOf(difference: Difference): readonly (readonly Words[])[] {
  const { kind, record } = difference;
  const name = handedName(difference);
  const named = english(name) === "" ? kindWords[kind] : joined([kindWords[kind], name], " ");
  const thing = typeof record.room === "string" ? joined([named, record.room], ", ") : named;
  if (difference.what !== "changed") {
    const at = placeWords(record.at);
    return [difference.what === "added" ? [thing, say`added`, "", at] : [thing, say`removed`, at, ""]];
  }
  const { changes, moved } = difference;
  return changes
    .filter(({ fact }) => !isSaidByPlace(fact, changes))
    .map((change, i) => [
      i === 0 ? thing : "",
      changedWords(change, moved),
      wasWords(change),
      isWords(change),
    ]);
}

/** An area that changed says that the outline did. */
const isSaidByPlace = (fact: string, changes: readonly FactChange[]): boolean =>
  fact === "shape" && changes.some((one) => one.fact === "area");

function changedWords({ fact, before, after }: FactChange, moved: number | undefined): Words {
  if (fact === "at" && moved !== undefined) return say`moved by ${metres(moved)}`;
  if (fact === "shape") return say`outline redrawn`;
  if (fact === "fitted") return say`device exchanged`;
  const word = inside(titleOf(fact));
  return before === undefined ? say`${word} entered` : after === undefined ? say`${word} taken away` : word;
}

/** A state is whatever a file holds: a name that nobody knows stands for itself. */
function titleOf(fact: string): Words {
  const setting = settingOf(fact);
  return setting === undefined ? (factWords[fact]?.[0] ?? fact) : settingTitles[setting];
}

function settingOf(fact: string): SettingName | undefined {
  const name = fact.startsWith("set.") ? fact.slice("set.".length) : "";
  return Object.hasOwn(settingTitles, name) ? (name as SettingName) : undefined;
}

const wasWords = (change: FactChange): Words => valueWords(change.fact, change.before);
const isWords = (change: FactChange): Words => valueWords(change.fact, change.after);

function valueWords(fact: string, value: HandedFact | undefined): Words {
  if (value === undefined || fact === "shape" || fact === "fitted") return "";
  if (isPlace(value)) return placeWords(value);
  if (typeof value === "boolean") return value ? say`yes` : say`no`;
  const setting = settingOf(fact);
  if (setting !== undefined)
    return (
      (typeof value === "string" ? handedWords(fact, value) : undefined) ??
      settingWords(setting, value as never)
    );
  const unit = factWords[fact]?.[1] ?? "";
  if (typeof value === "number") return unit === "m" ? metres(value) : figure(value, unit);
  return handedWords(fact, value) ?? value;
}

/** A length of a drawing, to the centimetre. */
const metres = (value: number): Said => figured(`${value.toFixed(2)} m`);

const placeWords = (at: HandedFact | undefined): Words =>
  isPlace(at) ? say`x ${figured(at[0].toFixed(2))}, y ${figured(at[1].toFixed(2))}` : "";
