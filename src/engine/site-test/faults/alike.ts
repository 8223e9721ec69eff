import type { FaultKnowledge } from "./knowledge-types.ts";
import { type FaultCause, faultCauses, faultTestNames } from "./names.ts";
import { chancesOf } from "./rank.ts";

/** Two causes whose chances differ by less than this in every test cannot be told apart by any: half the sum of the differences. */
const TELLS_APART = 0.25;

/**
 * Causes that no test can tell apart, together: they count as one.
 *
 * @param knowledge - Chances of outcomes.
 * @returns Every cause in exactly one group, in the order of the causes.
 * @source DERIVED-HERE
 * @example Every cause differs in some test by more than a quarter: as many groups as causes
 */
export function alikeCauses(knowledge: FaultKnowledge): readonly (readonly FaultCause[])[] {
  const groups: FaultCause[][] = [];
  for (const cause of faultCauses) {
    const group = groups.find((one) => one.some((other) => !toldApart(knowledge, cause, other)));
    if (group) group.push(cause);
    else groups.push([cause]);
  }
  return groups;
}

function toldApart(knowledge: FaultKnowledge, a: FaultCause, b: FaultCause): boolean {
  return faultTestNames.some((test) => {
    const [first, second] = [a, b].map((cause) => chancesOf(knowledge.tests[test], cause));
    const apart = first!.reduce((sum, chance, i) => sum + Math.abs(chance - second![i]!), 0) / 2;
    return apart >= TELLS_APART;
  });
}
