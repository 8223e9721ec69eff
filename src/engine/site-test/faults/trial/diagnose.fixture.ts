import { alikeCauses } from "../alike.ts";
import { shippedFaultKnowledge } from "../knowledge/shipped.ts";
import type { FaultKnowledge } from "../knowledge-types.ts";
import type { FaultCause } from "../names.ts";
import { nextTests } from "../next-tests.ts";
import { factsOf } from "../plan-facts.ts";
import { type FaultCase, rankCauses, type TestReading } from "../rank.ts";
import { outcomeOf } from "./experiments.fixture.ts";
import { placeOf } from "./plan.fixture.ts";
import type { FaultyRoom } from "./trials.fixture.ts";

/** Belief at which the tester stops, and the most tests that are made. */
const SURE = 0.95;
const MOST_TESTS = 12;

/** What the finder says of a faulty room. */
export interface Diagnosis {
  readonly room: FaultyRoom;
  /** By complaint and plan alone, and after the tests that the finder asked for; likeliest first, alike causes together. */
  readonly before: readonly (readonly FaultCause[])[];
  readonly after: readonly (readonly FaultCause[])[];
  readonly share: number;
  readonly tests: readonly TestReading[];
  readonly minutes: number;
}

/** Asks for the best next test, looks at its outcome, and so on, until the finder is sure or nothing is worth asking. */
export function diagnose(room: FaultyRoom, knowledge: FaultKnowledge = shippedFaultKnowledge): Diagnosis {
  const groups = alikeCauses(knowledge);
  const first: FaultCase = {
    symptom: room.symptom,
    facts: factsOf(placeOf(room.trial.built.plan)),
    readings: [],
  };
  let found = first;
  let minutes = 0;
  while (found.readings.length < MOST_TESTS && sureness(found, groups, knowledge) < SURE) {
    const [next] = nextTests(found, knowledge);
    if (!next) break;
    minutes += next.minutes;
    const outcome = outcomeOf(room.trial, room.symptom, next.test);
    found = { ...found, readings: [...found.readings, { test: next.test, outcome } as TestReading] };
  }
  return {
    room,
    before: grouped(first, groups, knowledge).map(({ causes }) => causes),
    after: grouped(found, groups, knowledge).map(({ causes }) => causes),
    share: sureness(found, groups, knowledge),
    tests: found.readings,
    minutes,
  };
}

/** Place of the right cause in a list, from 0. */
export const placeOfCause = (list: readonly (readonly FaultCause[])[], cause: FaultCause): number =>
  list.findIndex((causes) => causes.includes(cause));

const sureness = (
  found: FaultCase,
  groups: readonly (readonly FaultCause[])[],
  knowledge: FaultKnowledge,
): number => grouped(found, groups, knowledge)[0]!.share;

function grouped(
  found: FaultCase,
  groups: readonly (readonly FaultCause[])[],
  knowledge: FaultKnowledge,
): readonly { readonly causes: readonly FaultCause[]; readonly share: number }[] {
  const ranked = rankCauses(found, knowledge);
  return groups
    .map((causes) => ({
      causes,
      share: ranked.reduce((sum, one) => sum + (causes.includes(one.cause) ? one.share : 0), 0),
    }))
    .toSorted((a, b) => b.share - a.share);
}
