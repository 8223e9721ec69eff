import { type Check, distinct, inside, joined, type Problem, type Said, say } from "../check/index.ts";
import { breakerChecks } from "./breaker-checks.ts";
import { circuitChecks } from "./circuit-checks.ts";
import { coilCable } from "./coil-cable.ts";
import { contactChecks } from "./contact-checks.ts";
import type { WiringModel } from "./model.ts";
import { packChecks } from "./relay-pack.ts";
import type { RuleHit, WiringRule } from "./rules/rule.ts";
import { wiringRules } from "./rules/rules.ts";
import { coveredWiring } from "./supply.ts";
import type { WiringCheck } from "./wiring-check.ts";

/** Every check of a wiring with its evidence. @param model - The wiring. @returns Contacts, breakers, circuits. @example One circuit with one detector: some fifteen checks */
export const wiringChecks = (model: WiringModel): readonly WiringCheck[] => [
  ...contactChecks(model),
  ...model.contactors.flatMap((one) => {
    const cable = coilCable(model, one);
    return cable.kind === "calculated" ? cable.checks : [];
  }),
  ...packChecks(model),
  ...breakerChecks(model),
  ...model.circuits.flatMap(({ id }) => circuitChecks(model, id)),
];

/**
 * What is wrong with a wiring, and what is not proven.
 *
 * @param model - The wiring.
 * @returns Problems with evidence. A supply that is not covered is refused: its sentence comes back, and nothing else about its circuits.
 * @example IT system: one problem, "supply-it-system"
 */
export function wiringFindings(model: WiringModel): readonly Problem[] {
  const covered = coveredWiring(model);
  if (!covered.model) return covered.problems;
  const own = covered.model;
  return [
    ...covered.problems,
    ...wiringRules.flatMap((rule) => rule.evaluate(own).map((hit) => brokenRule(rule, hit))),
    ...wiringChecks(own).flatMap(problemOf),
  ];
}

function brokenRule(
  rule: WiringRule,
  { verdict, name, detail, room, records, code, source }: RuleHit,
): Problem {
  const check: Check = {
    verdict,
    what: joined([rule.id, rule.title], ": "),
    actual: undefined,
    limit: undefined,
    unit: "",
    source: source ?? rule.source,
    assumptions: [detail],
  };
  return {
    code: verdict === "fail" ? (code ?? rule.code) : "wiring-rule-not-proven",
    values: { name, detail, rule: rule.id },
    ...(room === undefined ? {} : { room }),
    records,
    evidence: [check],
  };
}

/** The problem that a check makes. @param check - With its evidence. @returns One where it fails or is not proven; none where it passes. @example A pass: none */
export function problemOf(check: WiringCheck): readonly Problem[] {
  if (check.verdict === "pass") return [];
  const { code, name, room, records, verdict, what, unit } = check;
  const shared = { ...(room === undefined ? {} : { room }), records, evidence: [check] };
  if (verdict === "fail")
    return [
      {
        code,
        values: {
          name,
          what: inside(what),
          unit,
          actual: read(check.actual),
          limit: read(check.limit),
          amount: withUnit(check.actual, unit),
          most: withUnit(check.limit, unit),
        },
        ...shared,
      },
    ];
  return [
    {
      code: "wiring-not-proven",
      values: {
        name,
        what: inside(what),
        missing: listed(check.missing),
      },
      ...shared,
    },
  ];
}

/** Each thing once, with commas. */
const listed = (things: readonly Said[] = []): Said =>
  things.length === 0 ? say`the figures of the data sheet` : joined(distinct(things), ", ");

/** Three digits, which is what a sentence needs; the evidence keeps the rest. */
const read = (value: number | undefined): Said | number =>
  value === undefined ? say`unknown` : Number(value.toPrecision(3));

const withUnit = (value: number | undefined, unit: string): Said | number =>
  unit === "" ? read(value) : joined([read(value), unit], " ");
