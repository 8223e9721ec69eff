import { type FaultCause, faultCauses, type Symptom } from "../names.ts";
import { builtAsPlanned } from "./built.fixture.ts";
import { complaintOf, lived, ordinaryDay, type Trial, trialOf } from "./complaint.fixture.ts";
import { drawsOf } from "./draws.fixture.ts";
import { injections } from "./inject.fixture.ts";
import { randomPlan } from "./plan.fixture.ts";

/** A room with a fault in it and somebody who complains. */
export interface FaultyRoom {
  readonly trial: Trial;
  readonly cause: FaultCause;
  readonly symptom: Symptom;
}

/** Seeds from which likelihoods may be counted. The held-out ones begin far above and are never counted from. */
export const countingSeeds = { first: 1, rooms: 40 } as const;
export const heldOutSeeds = { first: 9_000_001, rooms: 8 } as const;

/** Tries after which a cause counts as not to be shown in any room; none is. */
const MOST_TRIES = 60;

/**
 * A room that was fine, with one fault put in, of which somebody complains.
 *
 * Rooms in which people would complain without the fault, and faults that nobody notices, are passed over for the next try of the seed.
 */
export function faultyRoom(cause: FaultCause, seed: number): FaultyRoom {
  for (let attempt = 0; attempt < MOST_TRIES; attempt++) {
    const own = seed * 1000 + attempt * 37 + faultCauses.indexOf(cause) * 7919;
    const plan = randomPlan(drawsOf(own, "plan"));
    const built = builtAsPlanned(plan, drawsOf(own, "built"));
    if (!injections[cause](built, drawsOf(own, "fault"))) continue;
    const trial = trialOf(built, own);
    const script = ordinaryDay(trial);
    const symptom = complaintOf(built, script, lived(trial, script, "day"));
    if (symptom === undefined || !isFine(own)) continue;
    return { trial, cause, symptom };
  }
  throw new Error(`No room shows ${cause} for seed ${seed}`);
}

/** Whether nobody complains of the room without the fault. */
function isFine(seed: number): boolean {
  const plan = randomPlan(drawsOf(seed, "plan"));
  const trial = trialOf(builtAsPlanned(plan, drawsOf(seed, "built")), seed);
  const script = ordinaryDay(trial);
  return complaintOf(trial.built, script, lived(trial, script, "day")) === undefined;
}

/** Every cause in several rooms, one after the other. */
export function* faultyRooms(seeds: {
  readonly first: number;
  readonly rooms: number;
}): Generator<FaultyRoom> {
  for (const cause of faultCauses)
    for (let i = 0; i < seeds.rooms; i++) yield faultyRoom(cause, seeds.first + i);
}
