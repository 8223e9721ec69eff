import type { Share } from "../../quantity/index.ts";
import type { FaultKnowledge } from "./knowledge-types.ts";
import { type FaultCause, type FaultTest, faultTestNames } from "./names.ts";
import { chancesOf, type FaultCase, rankCauses } from "./rank.ts";

/** A test that may come next, with what it is worth. */
export interface NextTest {
  readonly test: FaultTest;
  /** Information about the cause that is to be expected of it. [bit] */
  readonly bits: number;
  /** [min] */
  readonly minutes: number;
}

/** A test is not worth going for if less than this is to be expected of it. [bit] */
const LEAST_BITS = 0.03;
/** Every test costs so much besides its own time: asking, going there, writing down. [min] */
const OVERHEAD = 2;

/**
 * Tests that split the causes best for their time, the best first.
 *
 * I = H(causes) − Σ P(outcome) · H(causes | outcome), per minute of (its time + 2 min)
 *
 * @param found - What is known so far. @param knowledge - Chances, times, complaints for which a test says something.
 * @returns Tests that were not made yet and are worth making; empty: nothing tells the causes further apart.
 * @source SHANNON-1948
 * @example Two causes of one half each, a test that tells them apart for certain: 1 bit
 */
export function nextTests(found: FaultCase, knowledge: FaultKnowledge): readonly NextTest[] {
  const shares = rankCauses(found, knowledge).map(({ cause, share }) => ({ cause, share }));
  const made = new Set(found.readings.map(({ test }) => test));
  return faultTestNames
    .filter((test) => !made.has(test) && knowledge.descriptions[test].symptoms.includes(found.symptom))
    .map((test) => ({
      test,
      bits: expectedBits(shares, (cause) => chancesOf(knowledge.tests[test], cause)),
      minutes: knowledge.descriptions[test].minutes,
    }))
    .filter(({ bits }) => bits >= LEAST_BITS)
    .toSorted((a, b) => b.bits / (b.minutes + OVERHEAD) - a.bits / (a.minutes + OVERHEAD));
}

/**
 * Information that an observation is expected to give.
 *
 * @param shares - Belief in each cause. @param chances - Chances of the outcomes with a cause.
 * @returns Mutual information of cause and outcome, 0 or more. [bit]
 * @source SHANNON-1948
 * @example Every outcome equally likely with every cause: 0
 */
export function expectedBits(
  shares: readonly { readonly cause: FaultCause; readonly share: Share }[],
  chances: (cause: FaultCause) => readonly Share[],
): number {
  const rows = shares.map(({ cause, share }) => ({ share, row: chances(cause) }));
  const outcomes =
    rows[0]?.row.map((_, i) => rows.reduce((sum, { share, row }) => sum + share * row[i]!, 0)) ?? [];
  const bits = rows.reduce(
    (total, { share, row }) =>
      total +
      share *
        row.reduce((sum, chance, i) => sum + (chance > 0 ? chance * Math.log2(chance / outcomes[i]!) : 0), 0),
    0,
  );
  return Math.max(0, bits);
}
