import { type Check, distinct, joined, type Problem, type Said, say, type Verdict } from "../check/index.ts";
import { sources } from "../source/index.ts";
import {
  type Rule,
  type RuleMeasure,
  type RulePack,
  type RulePredicate,
  type RuleSpace,
  ruleMeasures,
} from "./rule-pack.ts";

/** What rules look at in a room. What is not known stays absent: it is then not proven. */
export interface RuleFacts {
  readonly room: string;
  /** Name on paper. */
  readonly title: string;
  /** Kinds of space that it may be: one where it is known, several where its use leaves it open. Absent: any. */
  readonly spaces?: readonly RuleSpace[];
  /** [m²] */
  readonly area?: number;
  /** Rated output of heating and air conditioning of the building. [W] */
  readonly plant?: number;
  /** Day for which the job is judged, YYYY-MM-DD. */
  readonly day?: string;
  readonly measures: Readonly<Partial<Record<RuleMeasure, number>>>;
}

export interface RuleResult {
  readonly pack: string;
  readonly rule: string;
  readonly check: Check;
  /** What would have to be known, where it is not proven. */
  readonly missing?: readonly Said[];
  /** Where the rule is broken or not proven. */
  readonly problem?: Problem;
}

/**
 * Evaluates packs in a room.
 *
 * @param packs - Packs that are on
 * @param facts - What is known of the room
 * @returns One result for every rule that applies, or of which it is not known whether it does; none for the others
 * @source DERIVED-HERE
 * @example Delay 1800 s in an office where at most 1200 s are allowed: fail
 */
export function evaluateRules(packs: readonly RulePack[], facts: RuleFacts): RuleResult[] {
  return packs.flatMap((pack) =>
    pack.rules.flatMap((rule): RuleResult[] => {
      const applies = applicable(rule.when, facts);
      return applies === false
        ? []
        : [resultOf(pack, rule, { facts, unknown: applies === true ? [] : applies })];
    }),
  );
}

/** Whether a kind of space is on a list: undefined where some of the kinds that it may be are and some are not. */
function listedSpace(
  possible: readonly RuleSpace[] | undefined,
  listed: readonly RuleSpace[],
): boolean | undefined {
  if (possible === undefined || possible.length === 0) return undefined;
  const on = possible.filter((space) => listed.includes(space)).length;
  return on === possible.length ? true : on === 0 ? false : undefined;
}

/** true, false, or the names of what would have to be known. A part that is surely not met decides alone. */
function applicable(when: RulePredicate, facts: RuleFacts): true | false | readonly Said[] {
  const { area, plant, day } = facts;
  const parts: (readonly [name: Said, holds: boolean | undefined])[] = [];
  const part = <T>(
    name: Said,
    limit: T | undefined,
    judged: { readonly value: unknown; readonly holds: (limit: T) => boolean },
  ): void => {
    if (limit !== undefined) parts.push([name, judged.value === undefined ? undefined : judged.holds(limit)]);
  };
  if (when.spaces) parts.push([say`kind of space`, listedSpace(facts.spaces, when.spaces)]);
  part(say`area of the room`, when.areaAbove, { value: area, holds: (limit) => area! > limit });
  part(say`area of the room`, when.areaFrom, { value: area, holds: (limit) => area! >= limit });
  part(say`area of the room`, when.areaBelow, { value: area, holds: (limit) => area! < limit });
  part(say`area of the room`, when.areaUpTo, { value: area, holds: (limit) => area! <= limit });
  part(say`output of heating and air conditioning`, when.plantAbove, {
    value: plant,
    holds: (limit) => plant! > limit,
  });
  part(say`output of heating and air conditioning`, when.plantUpTo, {
    value: plant,
    holds: (limit) => plant! <= limit,
  });
  // Days as YYYY-MM-DD stand in the order of their letters.
  part(say`day`, when.from, { value: day, holds: (limit) => day! >= limit });
  if (parts.some(([, holds]) => holds === false)) return false;
  const unknown = distinct(parts.filter(([, holds]) => holds === undefined).map(([name]) => name));
  return unknown.length === 0 ? true : unknown;
}

function resultOf(
  pack: RulePack,
  rule: Rule,
  { facts, unknown }: { readonly facts: RuleFacts; readonly unknown: readonly Said[] },
): RuleResult {
  const measured = facts.measures[rule.limit.measure];
  const actual = Number.isNaN(measured) ? undefined : measured;
  const limit = "most" in rule.limit ? rule.limit.most : rule.limit.least;
  const verdict = verdictOf(rule, { actual, certain: unknown.length === 0 });
  const missing = [...unknown, ...(actual === undefined ? [measureNames[rule.limit.measure]] : [])];
  const check: Check = {
    verdict,
    // The title of a firm's own rule is a plain name.
    what: joined([rule.title], ""),
    actual,
    limit,
    unit: ruleMeasures[rule.limit.measure],
    source: pack.source,
    assumptions: [
      say`${pack.title}, ${pack.edition}, ${rule.clause}; ${pack.jurisdiction}; local amendments come first`,
      ...(rule.certainty === "from-memory" || sources[pack.source].verify ? [say`verify`] : []),
      ...missing.map((name) => say`Not known: ${name}`),
    ],
  };
  if (verdict === "pass") return { pack: pack.code, rule: rule.code, check };
  const values = {
    room: facts.title,
    title: rule.title,
    clause: say`${pack.title} ${pack.edition}, ${rule.clause}`,
  };
  const problem: Problem =
    verdict === "fail"
      ? { code: "rule-not-met", values, room: facts.room, evidence: [check] }
      : {
          code: "rule-not-proven",
          values: { ...values, missing: joined(missing, ", ") },
          room: facts.room,
          evidence: [check],
        };
  return {
    pack: pack.code,
    rule: rule.code,
    check,
    ...(verdict === "not-proven" ? { missing } : {}),
    problem,
  };
}

function verdictOf(
  rule: Rule,
  { actual, certain }: { readonly actual: number | undefined; readonly certain: boolean },
): Verdict {
  // A rule that may not apply is neither kept nor broken: its report would say that it was looked at for this room.
  if (!certain || actual === undefined) return "not-proven";
  const met = "most" in rule.limit ? actual <= rule.limit.most : actual >= rule.limit.least;
  return met ? "pass" : "fail";
}

const measureNames: Readonly<Record<RuleMeasure, Said>> = {
  "off-delay": say`off delay`,
  "switched-area": say`area that is switched together`,
  "vacant-share": say`share of the power that stays on when vacant`,
  "automatic-on-share": say`share of the power that comes on by itself`,
  "residual-power": say`power left on`,
  "manual-off": say`whether it can be switched off by hand`,
  "automatic-control": say`whether there is automatic control`,
};

/**
 * The strictest longest off delay that packs allow in a room.
 *
 * @param packs - Packs that are on
 * @param facts - What is known of the room
 * @returns [s] and the rule it comes from; undefined if none applies for certain
 * @source DERIVED-HERE
 */
export function longestDelayAllowed(
  packs: readonly RulePack[],
  facts: RuleFacts,
): { readonly delay: number; readonly pack: RulePack; readonly rule: Rule } | undefined {
  return packs
    .flatMap((pack) => pack.rules.map((rule) => ({ pack, rule })))
    .flatMap(({ pack, rule }) =>
      rule.limit.measure === "off-delay" && "most" in rule.limit && applicable(rule.when, facts) === true
        ? [{ delay: rule.limit.most, pack, rule }]
        : [],
    )
    .toSorted((a, b) => a.delay - b.delay)[0];
}
