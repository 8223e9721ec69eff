import type { Said, Words } from "../check/index.ts";
import type { SpaceKind } from "../site/index.ts";
import type { SourceId } from "../source/index.ts";

/** Kinds of space that codes tell apart. */
export const ruleSpaces = [
  "classroom",
  "meeting",
  "copy",
  "break-room",
  "office-enclosed",
  "office-open",
  "restroom",
  "storage",
  "locker-room",
  "corridor",
  "stairway",
  "lobby",
  "library-stacks",
  "parking",
  "warehouse",
  "other",
] as const satisfies readonly SpaceKind[];
export type RuleSpace = SpaceKind;

/** What a rule can look at, each with its unit. */
export const ruleMeasures = {
  "off-delay": "s",
  "switched-area": "m²",
  "vacant-share": "",
  "automatic-on-share": "",
  "residual-power": "W/m²",
  "manual-off": "",
  "automatic-control": "",
} as const;

/**
 * off-delay: from the last presence to off or to the reduced level · switched-area: switched together by one control ·
 * vacant-share: of the power, left on when vacant · automatic-on-share: of the power, switched on by presence alone ·
 * residual-power: left on when off · manual-off, automatic-control: 1 there, 0 not.
 */
export type RuleMeasure = keyof typeof ruleMeasures;

/** When a rule applies; every part that is given must hold. */
export interface RulePredicate {
  readonly spaces?: readonly RuleSpace[];
  /** Area of the room. [m²] */
  readonly areaAbove?: number;
  readonly areaFrom?: number;
  readonly areaBelow?: number;
  readonly areaUpTo?: number;
  /** Rated output of heating and air conditioning of the building, above. [W] */
  readonly plantAbove?: number;
  readonly plantUpTo?: number;
  /** On or after this day, YYYY-MM-DD. */
  readonly from?: string;
}

export type RuleLimit =
  | { readonly measure: RuleMeasure; readonly most: number }
  | { readonly measure: RuleMeasure; readonly least: number };

/** How sure the wording is. Only what was seen is on by default. */
export type RuleCertainty = "seen" | "from-memory" | "own";

export interface Rule {
  readonly code: string;
  readonly clause: Words;
  readonly title: Words;
  readonly when: RulePredicate;
  readonly limit: RuleLimit;
  readonly certainty: RuleCertainty;
}

export interface RulePack {
  readonly code: string;
  readonly title: Words;
  /** Where it is law only if adopted there; local amendments come first. */
  readonly jurisdiction: Words;
  readonly edition: Words;
  /** Regions, as a job may name its own, in which it is on by itself; absent: in all of them. */
  readonly regions?: readonly string[];
  readonly source: SourceId;
  readonly onByDefault: boolean;
  /** Why it is off by default. */
  readonly whyOff?: Said;
  readonly rules: readonly Rule[];
}
