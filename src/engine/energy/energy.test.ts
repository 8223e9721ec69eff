import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ControlTask, runControl, usualParameters } from "../control/index.ts";
import {
  alwaysLit,
  compareDelays,
  consumption,
  drawnPresence,
  litFor,
  occupancyControlFactor,
  occupancyFactor,
  officePresence,
  presenceOf,
  presenceStep,
  recommendedDelay,
  renewal,
  replayRows,
  saving,
} from "./index.ts";

/** A seeded row of numbers, 0 ≤ x < 1. */
function row(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const office = (seed: number, hours: number, still = 0): ControlTask => {
  const draw = row(seed);
  const until = hours * 3600;
  const people: [number, number][] = [];
  const movements: number[] = [];
  for (let at = 0; at < until; ) {
    at += -Math.log(1 - draw()) * officePresence.vacant;
    const to = Math.min(at - Math.log(1 - draw()) * officePresence.occupied, until);
    if (at < to) people.push([at, to]);
    // Seen every two minutes, and at the very end: nothing of the stay is missed. `still` misses long stretches.
    for (let t = at; t < to; t += 120 + draw() * still) movements.push(t);
    if (at < to && still === 0) movements.push(to);
    at = to;
  }
  return {
    devices: [{ id: "A", parameters: usualParameters, output: { kind: "contact", load: "lamps" } }],
    loads: [{ id: "lamps" }],
    events: [],
    movements: { A: movements },
    people: { lamps: people },
    until,
  };
};

describe("alternating renewal in closed form [ALTERNATING-RENEWAL] [WANG-2005]", () => {
  // Certificate: computed from the means 72.8 and 42.6 min, printed to the digits shown; half a unit of the last digit,
  // and a little more for the rate: 0.46235 stands there as 0.4623.
  test.each([
    [0, 36.915, 0.5199, 1300],
    [1, 36.059, 0.5079, 1270],
    [5, 32.827, 0.4623, 1156],
    [10, 29.192, 0.4111, 1028],
    [15, 25.959, 0.3656, 914],
    [20, 23.084, 0.3251, 813],
    [30, 18.254, 0.2571, 643],
  ])("delay %i min: share spared, switch-offs an hour and in 2500 h", (minutes, percent, off, cycles) => {
    const result = renewal(officePresence, minutes * 60);
    expect(Math.abs(result.saving * 100 - percent)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(result.offPerHour - off)).toBeLessThanOrEqual(0.000052);
    expect(Math.round(result.offPerHour * 2500)).toBe(cycles);
    expect(result.lit + result.saving).toBeCloseTo(1, 12);
  });
  test("the simulation of the same process agrees with the closed form", () => {
    // 50 000 h hold about 26 000 stays: the saving's standard error is below 0.3 points, three of them are allowed.
    const results = compareDelays({
      control: office(7, 50_000),
      load: "lamps",
      power: 100,
      delays: [300, 900, 1800],
      presence: officePresence,
    });
    for (const { saving: spared, closedForm, used } of results) {
      expect(Math.abs(spared! - closedForm!.saving)).toBeLessThan(0.009);
      expect(Math.abs(used.cycles / 50_000 - closedForm!.offPerHour)).toBeLessThan(0.012);
      expect(used.offWhileOccupied).toBe(0);
    }
  });
  test("what cannot be is refused", () => {
    expect(() => renewal({ occupied: 1, vacant: 0 }, 0)).toThrow(RangeError);
    expect(() => renewal(officePresence, -1)).toThrow(RangeError);
  });
});

describe("stochastic presence [PAGE-2008]", () => {
  test.each([
    [0.5, 0.5, 0.1, 0.090909, 0.909091],
    [0.2, 0.25, 0.1, 0.086364, 0.904545],
    [0.8, 0.75, 0.1, 0.095455, 0.913636],
    [0.5, 0.5, 0.5, 0.333333, 0.666667],
    [0.5, 0.6, 0.1, 0.190909, 1],
  ])("from %f to %f with mobility %f: arrive %f, stay %f", (now, next, mobility, arrive, stay) => {
    const step = presenceStep({ now, next }, mobility);
    expect(step.arrive).toBeCloseTo(arrive, 6);
    expect(step.stay).toBeCloseTo(stay, 6);
  });
  test("drawn presence follows its profile, and nobody comes where nobody ever is", () => {
    const profile = Array.from({ length: 40_000 }, () => 0.3);
    const there = drawnPresence(profile, { mobility: 0.5, draw: row(3) }).filter(Boolean).length;
    // Steps hang together with 1/3 from one to the next: standard error 0.0033, four of them are allowed.
    expect(Math.abs(there / 40_000 - 0.3)).toBeLessThan(0.0132);
    expect(drawnPresence([0, 0, 0], { mobility: 0.1, draw: row(4) })).toEqual([false, false, false]);
    expect(() => presenceStep({ now: 1.2, next: 0 }, 0.1)).toThrow(RangeError);
  });
});

describe("occupancy factor [EN-15193]", () => {
  test.each([
    [0.4, 1, 0.8],
    [0.4, 0.95, 0.75],
    [0.4, 0.9, 0.7],
    [0.4, 0.8, 0.6],
    [0.1, 0.8, 0.9],
    [0.95, 0.8, 0.05],
    [0.2, 0.9, 0.9],
    [0.9, 0.9, 0.2],
  ])("absence %f with F_OC %f gives %f", (absence, factor, expected) => {
    expect(occupancyFactor(absence, factor)).toBeCloseTo(expected, 12);
  });
  test("both joints meet, and large areas get no credit", () => {
    for (const factor of [0.8, 0.9, 0.95, 1]) {
      expect(occupancyFactor(0.2 - 1e-9, factor)).toBeCloseTo(occupancyFactor(0.2, factor), 6);
      expect(occupancyFactor(0.9 - 1e-9, factor)).toBeCloseTo(occupancyFactor(0.9, factor), 6);
    }
    expect(occupancyControlFactor("manual-on-auto-off", 30)).toBe(0.8);
    expect(occupancyControlFactor("manual-on-auto-off", 30.01)).toBe(1);
  });
});

describe("lit hours, energy and saving", () => {
  test("100 W for 10 of 24 h is 1 kWh, and 5 W of rest add 0.07 kWh", () => {
    const track = litFor([[0, 36_000]]);
    const day = { span: 86_400, power: 100 };
    expect(consumption(track, day)).toMatchObject({
      litHours: 10,
      cycles: 1,
      cyclesPerYear: 365,
      energy: 1,
      energyPerYear: 365,
    });
    expect(consumption(track, { ...day, background: 5 }).energy).toBeCloseTo(1.07, 12);
    expect(consumption(track, { ...day, people: [[35_000, 40_000]] }).offWhileOccupied).toBe(1);
    expect(consumption(alwaysLit(86_400), day)).toMatchObject({ litHours: 24, cycles: 0 });
  });
  test("saving is zero against itself, and never more than all against light that always burns", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 2, max: 3600 }), (seed, delay) => {
        const task = office(seed, 48);
        const devices = [{ ...task.devices[0]!, parameters: { ...usualParameters, offDelay: delay } }];
        const used = consumption(runControl({ ...task, devices }).loads.lamps!, {
          span: task.until,
          power: 80,
        });
        const full = consumption(alwaysLit(task.until), { span: task.until, power: 80 });
        if (used.energy > 0) expect(saving(used, used)).toBe(0);
        expect(saving(used, full)).toBeGreaterThanOrEqual(0);
        expect(saving(used, full)).toBeLessThanOrEqual(1);
      }),
      { seed: 20260410, numRuns: 30 },
    );
  });
  test("unlike spans are refused, and a reference that uses nothing gives no share", () => {
    const a = consumption(alwaysLit(10), { span: 10, power: 1 });
    const b = consumption(alwaysLit(20), { span: 20, power: 1 });
    expect(() => saving(a, b)).toThrow("like with like");
    expect(saving(a, consumption(litFor([]), { span: 10, power: 1 }))).toBeUndefined();
  });
  test("a longer delay never spares more, nor switches off more often on somebody", () => {
    const results = compareDelays({
      control: office(11, 400, 900),
      load: "lamps",
      power: 60,
      delays: [60, 300, 600, 900, 1800],
    });
    results.slice(1).forEach((result, i) => {
      expect(result.saving!).toBeLessThanOrEqual(results[i]!.saving!);
      expect(result.used.offWhileOccupied).toBeLessThanOrEqual(results[i]!.used.offWhileOccupied);
    });
    const chosen = recommendedDelay(results, { offPerDay: 0, cyclesPerYear: 40_000 });
    expect(chosen.delay).toBe(results.find(({ used }) => used.offWhileOccupied === 0)!.delay);
    expect(chosen.reason.code).toBe("delay-recommended");
    const none = recommendedDelay(results, { offPerDay: 0, cyclesPerYear: 40_000, longest: 300 });
    expect(none).toMatchObject({
      delay: undefined,
      reason: { code: "no-delay-fits", values: { longest: 5 } },
    });
  });
});

describe("replay of a log [LOG-REPLAY]", () => {
  test("an occupied row and one row of delay light two of three rows", () => {
    expect(replayRows([true, false, false], 1)).toEqual({
      rows: 3,
      occupiedRows: 1,
      litRows: 2,
      offEvents: 1,
    });
  });
  test("presence reaches to the next row, and not across a gap", () => {
    expect(presenceOf([0, 60, 120, 900], [true, true, false, true], { longestStep: 90 })).toEqual([
      [0, 120],
      [900, 990],
    ]);
    expect(presenceOf([0, 600], [true, true], { longestStep: 90 })).toEqual([
      [0, 90],
      [600, 690],
    ]);
  });
});
