import { type PlanningDefaults, planningDefaults } from "#engine";
import type { TextKey } from "../texts/settings.ts";

export type PlanningUnit = "m" | "m²" | "s" | "m/s" | "%";

/** One planning number: where it stands, what it is called, in what unit and between what limits a person may set it. */
export interface PlanningNumber {
  readonly path: readonly [string] | readonly [string, string];
  readonly word: TextKey;
  readonly unit: PlanningUnit;
  readonly least: number;
  readonly most: number;
}

type Group = "margins" | "people" | "dark-walk" | "gaps" | "heights" | "clearances";

const number = (
  path: PlanningNumber["path"],
  word: TextKey,
  limits: { readonly unit: PlanningUnit; readonly least: number; readonly most: number },
): PlanningNumber => ({ path, word, ...limits });

const share = { unit: "%", least: 0, most: 0.9 } as const;
const height = { unit: "m", least: 0, most: 2 } as const;
const clear = { unit: "m", least: 0, most: 5 } as const;

/** Every planning number, grouped as on the screen. */
export const planningNumbers: Readonly<Record<Group, readonly PlanningNumber[]>> = {
  margins: [
    number(["margin", "seated"], "settings.margin.seated", share),
    number(["margin", "towards"], "settings.margin.towards", share),
    number(["margin", "across"], "settings.margin.across", share),
    number(["margin", "spill"], "settings.margin.spill", share),
  ],
  people: [
    number(["bodyRadius"], "settings.body-radius", { unit: "m", least: 0.05, most: 0.5 }),
    number(["seatedRadius"], "settings.seated-radius", { unit: "m", least: 0.1, most: 2 }),
    number(["speed"], "settings.speed", { unit: "m/s", least: 0.3, most: 3 }),
    number(["onset"], "settings.onset", { unit: "m", least: 0, most: 3 }),
  ],
  "dark-walk": [
    number(["response"], "settings.response", { unit: "s", least: 0, most: 10 }),
    number(["lampStart"], "settings.lamp-start", { unit: "s", least: 0, most: 10 }),
    number(["darkWalkLimit"], "settings.dark-walk-limit", { unit: "m", least: 0.1, most: 20 }),
    number(["stairLead"], "settings.stair-lead", { unit: "m", least: 0, most: 5 }),
  ],
  gaps: [
    number(["gapArea"], "settings.gap-area", { unit: "m²", least: 0, most: 1 }),
    number(["gapShare"], "settings.gap-share", { unit: "%", least: 0, most: 0.1 }),
    number(["spacing"], "settings.spacing", { unit: "m", least: 0.1, most: 2 }),
  ],
  heights: [
    number(["sightHeights", "walking"], "settings.sight.walking", height),
    number(["sightHeights", "desk"], "settings.sight.desk", height),
    number(["sightHeights", "seat"], "settings.sight.seat", height),
    number(["sightHeights", "wc"], "settings.sight.wc", height),
    number(["sightHeights", "bench"], "settings.sight.bench", height),
    number(["sightHeights", "basin"], "settings.sight.basin", height),
    number(["sightHeights", "shower"], "settings.sight.shower", height),
    number(["sightHeights", "bath"], "settings.sight.bath", height),
    number(["sightHeights", "panel"], "settings.sight.panel", height),
    number(["sightHeights", "machine"], "settings.sight.machine", height),
  ],
  clearances: [
    number(["clearances", "wall"], "settings.clear.wall", clear),
    number(["clearances", "wallLeast"], "settings.clear.wall-least", clear),
    number(["clearances", "luminaireFlush"], "settings.clear.luminaire-flush", clear),
    number(["clearances", "luminaireHot"], "settings.clear.luminaire-hot", clear),
    number(["clearances", "airOutlet"], "settings.clear.air-outlet", clear),
    number(["clearances", "heater"], "settings.clear.heater", clear),
    number(["clearances", "smokeHead"], "settings.clear.smoke-head", clear),
  ],
};

export const planningGroups = Object.keys(planningNumbers) as readonly Group[];

type Nested = Readonly<Record<string, number | Readonly<Record<string, number>>>>;

/** A planning number as it stands in the job. */
export function numberAt(defaults: PlanningDefaults, [outer, inner]: PlanningNumber["path"]): number {
  const found = (defaults as unknown as Nested)[outer];
  const value = typeof found === "object" && inner !== undefined ? found[inner] : found;
  if (typeof value !== "number") throw new Error(`There is no planning number ${outer} ${inner ?? ""}`);
  return value;
}

/** The planning numbers with one of them changed. */
export function withNumber(
  defaults: PlanningDefaults,
  [outer, inner]: PlanningNumber["path"],
  value: number,
): PlanningDefaults {
  if (inner === undefined) return { ...defaults, [outer]: value };
  const group = (defaults as unknown as Nested)[outer];
  return { ...defaults, [outer]: { ...(group as Readonly<Record<string, number>>), [inner]: value } };
}

/** What the program would use. */
export const usualNumber = (path: PlanningNumber["path"]): number => numberAt(planningDefaults, path);
