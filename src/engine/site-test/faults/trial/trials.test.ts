import { expect, test } from "vitest";
import { faultTestNames } from "../names.ts";
import { outcomeOf } from "./experiments.fixture.ts";
import { countingSeeds, faultyRoom, heldOutSeeds } from "./trials.fixture.ts";

test.each(["source-in-view", "hidden-behind-something", "glow-lamp-feeds-lamps"] as const)(
  "[FLT-1] somebody complains of a room with %s, and the same seed gives the same room",
  (cause) => {
    const [first, again] = [faultyRoom(cause, 5), faultyRoom(cause, 5)];
    expect(again.symptom).toBe(first.symptom);
    expect(again.trial.built.site).toEqual(first.trial.built.site);
    // Not in vain: another seed gives another room.
    expect(faultyRoom(cause, 6).trial.built.site).not.toEqual(first.trial.built.site);
  },
);

test("[FLT-2] a test gives the same outcome however often it is asked, and whatever was asked before", () => {
  const { trial, symptom } = faultyRoom("mask-in-the-way", 3);
  const once = faultTestNames.map((name) => outcomeOf(trial, symptom, name));
  const backwards = faultTestNames.toReversed().map((name) => outcomeOf(trial, symptom, name));
  expect(backwards.toReversed()).toEqual(once);
});

test("[FLT-3] rooms that are held out are none of those that are counted", () => {
  expect(heldOutSeeds.first).toBeGreaterThan(countingSeeds.first + countingSeeds.rooms);
});
