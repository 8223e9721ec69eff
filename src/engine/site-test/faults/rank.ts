import type { Share } from "../../quantity/index.ts";
import type { ChanceTable, FaultKnowledge } from "./knowledge-types.ts";
import { type FaultCause, type FaultTest, faultCauses, faultTests, type Symptom, symptoms } from "./names.ts";
import { type PlanFact, planFactNames } from "./plan-facts.ts";

/** What came out of a test. */
export type TestReading = {
  readonly [Test in FaultTest]: {
    readonly test: Test;
    readonly outcome: (typeof faultTests)[Test][number];
  };
}[FaultTest];

/** All that is known of a fault so far. */
export interface FaultCase {
  readonly symptom: Symptom;
  /** What the plan says; undefined: nobody looked, and it weighs nothing. */
  readonly facts: ReadonlySet<PlanFact> | undefined;
  readonly readings: readonly TestReading[];
}

/** One observation and how far it speaks for a cause. */
export interface FaultArgument {
  readonly about:
    | { readonly kind: "symptom"; readonly symptom: Symptom }
    | { readonly kind: "fact"; readonly fact: PlanFact; readonly holds: boolean }
    | { readonly kind: "test"; readonly reading: TestReading };
  /** Natural logarithm of its chance with this cause over its chance with the other causes. */
  readonly weight: number;
}

/** A cause with its share of belief and the arguments about it. */
export interface RankedCause {
  readonly cause: FaultCause;
  readonly share: Share;
  /** Strongest first. */
  readonly for: readonly FaultArgument[];
  readonly against: readonly FaultArgument[];
}

/** Arguments weaker than this are left out: they would say everything about everything. */
const LEAST_WEIGHT = 0.4;

/**
 * Causes of a fault, the likeliest first, each with what speaks for and against it.
 *
 * P(cause | all) ∝ commonness × P(symptom | cause) × Π P(fact | cause) × Π P(outcome | cause), the observations taken as independent
 * once the cause is given.
 *
 * @param found - Symptom, facts of the plan, outcomes of tests. @param knowledge - Chances and commonness.
 * @returns Every cause; shares sum to 1.
 * @source BAYES-1763
 * @example Two causes equally common, an outcome with chances 90 % and 10 %: shares 0.9 and 0.1
 */
export function rankCauses(found: FaultCase, knowledge: FaultKnowledge): readonly RankedCause[] {
  const observations = observationsOf(found, knowledge);
  const shares = sharesOf(
    faultCauses.map((cause) => ({
      cause,
      log:
        Math.log(knowledge.commonness[cause]) +
        observations.reduce((sum, { chance }) => sum + Math.log(chance(cause)), 0),
    })),
  );
  return faultCauses
    .map((cause): RankedCause => {
      const others = shares.filter((one) => one.cause !== cause);
      const weighed = observations
        .map(
          ({ about, chance }): FaultArgument => ({
            about,
            weight: Math.log(chance(cause) / meanOf(others, chance)),
          }),
        )
        .filter(({ weight }) => Math.abs(weight) >= LEAST_WEIGHT);
      return {
        cause,
        share: shares.find((one) => one.cause === cause)!.share,
        for: weighed.filter(({ weight }) => weight > 0).toSorted((a, b) => b.weight - a.weight),
        against: weighed.filter(({ weight }) => weight < 0).toSorted((a, b) => a.weight - b.weight),
      };
    })
    .toSorted((a, b) => b.share - a.share || faultCauses.indexOf(a.cause) - faultCauses.indexOf(b.cause));
}

/**
 * Chances of a test's outcomes with a cause, in the order of the outcomes.
 *
 * @param table - Percentages. @param cause - The cause.
 * @returns Chances that sum to 1.
 * @example Percentages 3 and 1: chances 0.75 and 0.25
 */
export function chancesOf(table: ChanceTable, cause: FaultCause): readonly Share[] {
  const percentages = table.given[cause] ?? table.usual;
  const sum = percentages.reduce((total, one) => total + one, 0);
  return percentages.map((one) => one / sum);
}

interface Observation {
  readonly about: FaultArgument["about"];
  readonly chance: (cause: FaultCause) => Share;
}

function observationsOf(found: FaultCase, knowledge: FaultKnowledge): readonly Observation[] {
  const { facts } = found;
  return [
    {
      about: { kind: "symptom", symptom: found.symptom },
      chance: (cause) => chancesOf(knowledge.symptoms, cause)[symptoms.indexOf(found.symptom)]!,
    },
    ...(facts === undefined
      ? []
      : planFactNames.map((fact): Observation => {
          const holds = facts.has(fact);
          return {
            about: { kind: "fact", fact, holds },
            chance: (cause) => chancesOf(knowledge.facts[fact], cause)[holds ? 0 : 1]!,
          };
        })),
    ...found.readings.map((reading): Observation => {
      const index = (faultTests[reading.test] as readonly string[]).indexOf(reading.outcome);
      if (index < 0) throw new Error(`${reading.test} has no outcome ${reading.outcome}`);
      return {
        about: { kind: "test", reading },
        chance: (cause) => chancesOf(knowledge.tests[reading.test], cause)[index]!,
      };
    }),
  ];
}

/** Shares from logarithms, the largest taken off first so that nothing underflows. */
function sharesOf(
  logs: readonly { readonly cause: FaultCause; readonly log: number }[],
): readonly { readonly cause: FaultCause; readonly share: Share }[] {
  const most = Math.max(...logs.map(({ log }) => log));
  const sum = logs.reduce((total, { log }) => total + Math.exp(log - most), 0);
  return logs.map(({ cause, log }) => ({ cause, share: Math.exp(log - most) / sum }));
}

/** Mean chance over causes by their shares; plain mean where these are all nothing. */
function meanOf(
  causes: readonly { readonly cause: FaultCause; readonly share: Share }[],
  chance: (cause: FaultCause) => Share,
): Share {
  const sum = causes.reduce((total, { share }) => total + share, 0);
  if (sum < 1e-12) return causes.reduce((total, { cause }) => total + chance(cause), 0) / causes.length;
  return causes.reduce((total, { cause, share }) => total + share * chance(cause), 0) / sum;
}
