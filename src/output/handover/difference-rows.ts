import {
  type Difference,
  type FactChange,
  type HandedFact,
  type HandedKind,
  isPlace,
  nameIn,
  type SettingName,
} from "#engine";
import { settingTitles, settingWords } from "../setting-sheets/setting-words.ts";
import { column } from "../wiring/schedules.ts";
import { figure } from "./check-rows.ts";
import type { Block } from "./upright-pages.ts";

const kindWords: Readonly<Record<HandedKind, string>> = {
  rooms: "Room",
  openings: "Opening",
  obstacles: "Obstacle",
  dwellPlaces: "Dwell place",
  interference: "Source of interference",
  luminaires: "Luminaire",
  switches: "Switch",
  models: "Model",
  detectors: "Detector",
  circuits: "Circuit",
};

/** What a fact is called, and the unit of its figures. */
const factWords: Readonly<Record<string, readonly [word: string, unit: string]>> = {
  title: ["Name", ""],
  name: ["Name", ""],
  tag: ["Tag", ""],
  storey: ["Storey", ""],
  use: ["Use", ""],
  kind: ["Kind", ""],
  room: ["Room", ""],
  between: ["Between", ""],
  at: ["Place", ""],
  area: ["Floor area", "m²"],
  ceiling: ["Ceiling height", "m"],
  temperature: ["Highest temperature", "°C"],
  escape: ["Escape route", ""],
  width: ["Width", "m"],
  head: ["Head", "m"],
  into: ["Opens into", ""],
  top: ["Height of its top", "m"],
  seeThrough: ["See-through", ""],
  type: ["Type", ""],
  power: ["Power", "W"],
  circuit: ["Circuit", ""],
  planned: ["Planned", ""],
  reach: ["Declared reach", ""],
  model: ["Model", ""],
  height: ["Mounting height", "m"],
  turn: ["Turn", "°"],
  masks: ["Lens masks", ""],
  controls: ["Switches the light of", ""],
  board: ["Board", ""],
  breaker: ["Breaker", ""],
  rcd: ["Residual current", "A"],
  section: ["Section", "mm²"],
  length: ["Length of cable", "m"],
  floor: ["Floor level", "m"],
  daylight: ["Daylight", ""],
  wet: ["Wet room", ""],
  sill: ["Sill", "m"],
  thickness: ["Thickness of the wall", "m"],
  hinge: ["Side of the hinge", ""],
  state: ["Stands", ""],
  base: ["Height of its base", "m"],
  above: ["Height above the floor", "m"],
  clearance: ["Clearance", "m"],
  fixing: ["How it is fixed", ""],
  wetZone: ["Wet zone", ""],
};

/** Differences as a table: what, what of it, as it was, as it is. */
export function differenceBlock(
  heading: string,
  differences: readonly Difference[] | undefined,
  unknown: string,
): Block {
  return {
    heading,
    columns: [column("What", 54), column("Changed", 40), column("Was", 39), column("Is", 39)],
    rows: (differences ?? []).flatMap(rowsOf),
    empty: differences === undefined ? unknown : "Nothing was changed.",
  };
}

function rowsOf(difference: Difference): readonly (readonly string[])[] {
  const { kind, record } = difference;
  const name = [kindWords[kind], nameIn(difference)].filter(Boolean).join(" ");
  const room = typeof record.room === "string" ? `, ${record.room}` : "";
  const thing = `${name}${room}`;
  if (difference.what !== "changed") {
    const at = placeWords(record.at);
    return [difference.what === "added" ? [thing, "added", "", at] : [thing, "removed", at, ""]];
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

function changedWords({ fact, before, after }: FactChange, moved: number | undefined): string {
  if (fact === "at" && moved !== undefined) return `moved by ${metres(moved)}`;
  if (fact === "shape") return "outline redrawn";
  if (fact === "fitted") return "device exchanged";
  const word = titleOf(fact).toLowerCase();
  return before === undefined ? `${word} entered` : after === undefined ? `${word} taken away` : word;
}

/** A state is whatever a file holds: a name that nobody knows stands for itself. */
function titleOf(fact: string): string {
  const setting = settingOf(fact);
  return setting === undefined ? (factWords[fact]?.[0] ?? fact) : settingTitles[setting];
}

function settingOf(fact: string): SettingName | undefined {
  const name = fact.startsWith("set.") ? fact.slice("set.".length) : "";
  return Object.hasOwn(settingTitles, name) ? (name as SettingName) : undefined;
}

const wasWords = (change: FactChange): string => valueWords(change.fact, change.before);
const isWords = (change: FactChange): string => valueWords(change.fact, change.after);

function valueWords(fact: string, value: HandedFact | undefined): string {
  if (value === undefined || fact === "shape" || fact === "fitted") return "";
  if (isPlace(value)) return placeWords(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  const setting = settingOf(fact);
  if (setting !== undefined) return settingWords(setting, value as never);
  const unit = factWords[fact]?.[1] ?? "";
  if (typeof value === "number") return unit === "m" ? metres(value) : figure(value, unit);
  return kindFacts.has(fact) ? value.replaceAll("-", " ") : value;
}

/** Facts that are words of a list, not names. */
const kindFacts: ReadonlySet<string> = new Set(["use", "kind", "planned", "breaker", "rcd"]);

/** A length of a drawing, to the centimetre. */
const metres = (value: number): string => `${value.toFixed(2)} m`;

const placeWords = (at: HandedFact | undefined): string =>
  isPlace(at) ? `x ${at[0].toFixed(2)}, y ${at[1].toFixed(2)}` : "";
