import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { officePresence, renewal } from "../energy/index.ts";
import {
  compareDayDelays,
  type DayInput,
  daylightAt,
  dayPattern,
  dayProfile,
  movementsOf,
  peopleOf,
  type Stay,
  type SwitchedLoad,
  simulateDay,
  staysByChance,
  switchedLoads,
  tidyStays,
} from "./index.ts";

const MINUTE = 60;
const HOUR = 3600;
const DAY = 24 * HOUR;

type Detectors = Parameters<typeof switchedLoads>[0]["detectors"];
type Chosen = Parameters<typeof switchedLoads>[1] extends ReadonlyMap<string, infer One> ? One : never;
const detector = (id: string, more: object = {}): Detectors[number] =>
  ({
    id,
    tag: id.toUpperCase(),
    room: "r",
    controls: ["r"],
    model: "m",
    ...more,
  }) as unknown as Detectors[number];

function load(...devices: readonly (readonly [id: string, chosen?: Chosen, more?: object])[]): SwitchedLoad {
  const chosen = new Map(devices.map(([id, one]) => [id, one ?? {}]));
  const detectors = devices.map(([id, , more]) => detector(id, more));
  return switchedLoads({ detectors, luminaires: [], models: [] }, chosen)[0]!;
}

const somebody = (from: number, to: number): Stay => ({ from: from * HOUR, to: to * HOUR, what: "somebody" });
const day = (rows: DayInput["rows"], more: Partial<DayInput> = {}): DayInput => ({
  rows,
  days: 1,
  before: "every-day",
  still: 0,
  bridge: 0,
  background: 0,
  seed: 1,
  daylight: undefined,
  lamps: { lightAt: 0, compensation: "learned" },
  offDelay: undefined,
  ...more,
});
const lit = (of: SwitchedLoad, input: DayInput): number[][] =>
  simulateDay(of, input).lit.map(({ from, to }) => [from / HOUR, to / HOUR]);

describe("loads of a site", () => {
  test("detectors of the same rooms are one load; those that report come after those that switch", () => {
    const detectors = [
      detector("a", { output: "signals" }),
      detector("b"),
      detector("c", { controls: ["q"] }),
      detector("d", { controls: ["q"], output: "signals" }),
    ];
    const chosen = new Map<string, Chosen>([["d", { groupRole: "master" }]]);
    const loads = switchedLoads({ detectors, luminaires: [], models: [] }, chosen);
    expect(
      loads.map(({ rooms, devices }) => [rooms, devices.map(({ id, role }) => `${id} ${role}`)]),
    ).toEqual([
      [["r"], ["b switches", "a reports"]],
      [["q"], ["c switches", "d switches"]],
    ]);
  });

  test("where all only report, one of them has to switch; power is known when every luminaire's is", () => {
    const site = {
      detectors: [detector("a", { output: "signals" })],
      models: [{ id: "m", contact: { rated: {}, life: 5000 } }],
      luminaires: [{ id: "l", room: "r", power: 20 }],
    } as unknown as Parameters<typeof switchedLoads>[0];
    expect(switchedLoads(site, new Map())).toMatchObject([
      { devices: [{ role: "switches" }], power: 20, life: 5000, luminaires: { count: 1, withoutPower: 0 } },
    ]);
    const dark = { ...site, luminaires: [...site.luminaires, { id: "n", room: "r" }] } as typeof site;
    expect(switchedLoads(dark, new Map())[0]!.power).toBeUndefined();
  });
});

describe("stays and movements [DAY-PATTERN]", () => {
  const stay = fc
    .tuple(fc.integer({ min: 0, max: 1400 }), fc.integer({ min: 0, max: 200 }), fc.boolean())
    .map(
      ([from, length, there]): Stay => ({
        from,
        to: from + length,
        what: there ? "somebody" : "only-movement",
      }),
    );

  test("tidied stays cover the same minutes of each kind, in order, none meeting the next of its kind", () => {
    const covered = (stays: readonly Stay[], what: Stay["what"], at: number) =>
      stays.some((one) => one.what === what && one.from <= at && at < one.to);
    fc.assert(
      fc.property(fc.array(stay, { maxLength: 8 }), (stays) => {
        const tidy = tidyStays(stays);
        for (const what of ["somebody", "only-movement"] as const) {
          const own = tidy.filter((one) => one.what === what);
          own.forEach((one, i) => {
            expect(own[i + 1]?.from ?? Number.POSITIVE_INFINITY).toBeGreaterThan(one.to);
          });
          for (let at = 0; at < 1600; at += 7) expect(covered(tidy, what, at)).toBe(covered(stays, what, at));
        }
        expect(tidyStays(tidy)).toEqual(tidy);
      }),
      { seed: 41, numRuns: 100 },
    );
  });

  test("no pause between two movements of a stay is longer than the longest, and what has nobody never rests", () => {
    const length = fc.integer({ min: 0, max: 1500 });
    fc.assert(
      fc.property(length, fc.integer({ min: 0, max: 99 }), (still, seed) => {
        const from = 1000;
        const seen = [...movementsOf([{ from, to: 9000, what: "somebody" }], { still, seed, device: "a" })];
        expect([seen[0], seen.at(-1)]).toEqual([from, 9000]);
        // A pause of less than 10 s is drawn as one of 10 s.
        seen.slice(1).forEach((at, i) => {
          expect(at - seen[i]!).toBeLessThanOrEqual(Math.max(still, 10));
        });
        const fan = movementsOf([{ from, to: 9000, what: "only-movement" }], { still, seed, device: "a" });
        expect(fan).toHaveLength(801);
      }),
      { seed: 42, numRuns: 60 },
    );
  });

  test("a stay that is made longer keeps its movements, and another one leaves them alone", () => {
    const options = { still: 600, seed: 7, device: "a" };
    const short = movementsOf([somebody(9, 10)], options).slice(0, -1);
    const long = movementsOf([somebody(8, 8.5), somebody(9, 12)], options);
    expect([...long].filter((at) => at >= 9 * HOUR).slice(0, short.length)).toEqual([...short]);
  });

  test("people are there when any detector has somebody, not where only something moves", () => {
    const fan: Stay = { from: 0, to: DAY, what: "only-movement" };
    expect(peopleOf([[somebody(9, 10), fan], [somebody(9.5, 11)], [somebody(13, 14)]])).toEqual([
      [9 * HOUR, 11 * HOUR],
      [13 * HOUR, 14 * HOUR],
    ]);
  });

  test("pauses that a log does not bridge are empty, those that it bridges are somebody", () => {
    const rows = [[somebody(9, 10), somebody(10.1, 11), somebody(12, 13)]];
    expect(peopleOf(rows, 600)).toEqual([
      [9 * HOUR, 11 * HOUR],
      [12 * HOUR, 13 * HOUR],
    ]);
  });

  test.each(["passing", "stair", "moving", "sitting", "sanitary", "changing", "plant", "other"] as const)(
    "the usual day of %s lies within one day, in order, and its profile has the same hours",
    (use) => {
      const { stays, still } = dayPattern(use);
      expect(tidyStays(stays)).toEqual(stays);
      expect(stays[0]!.from).toBeGreaterThanOrEqual(0);
      expect(stays.at(-1)!.to).toBeLessThanOrEqual(DAY);
      expect(still).toBeGreaterThanOrEqual(0);
      const profile = dayProfile(use);
      const hours = profile.reduce((sum, share) => sum + share, 0) / 4;
      // Windows of an hour around every quarter: a sum over quarters rounds each stay to within one of them.
      const there = stays.reduce((sum, one) => sum + one.to - one.from, 0) / HOUR;
      expect(Math.abs(hours - there)).toBeLessThan(0.25);
    },
  );
});

describe("presence by chance [PAGE-2008] [WANG-2005] [ALTERNATING-RENEWAL]", () => {
  test("the same seed draws the same days, another seed others", () => {
    const model = { kind: "profile", profile: dayProfile("sitting"), mobility: 0.1 } as const;
    const draw = (seed: number) => staysByChance(model, { seed, days: 5 });
    expect(draw(3)).toEqual(draw(3));
    expect(draw(3)).not.toEqual(draw(4));
    expect(draw(3).every((one) => one.from % 900 === 0 && one.to % 900 === 0)).toBe(true);
  });

  test("in turns, presence keeps to the hours and to its share within them", () => {
    const hours = { from: 8 * HOUR, to: 18 * HOUR };
    const stays = staysByChance({ kind: "turns", means: officePresence, hours }, { seed: 5, days: 400 });
    for (const { from, to } of stays) {
      expect(from % DAY).toBeGreaterThanOrEqual(hours.from);
      expect(to % DAY).toBeLessThanOrEqual(hours.to);
    }
    const there = stays.reduce((sum, one) => sum + one.to - one.from, 0) / (400 * 10 * HOUR);
    // Some 2000 turns: two standard deviations are about 0.02.
    expect(there).toBeCloseTo(4368 / (4368 + 2556), 1);
  });

  test("simulated and closed form agree where presence takes turns all day long", () => {
    const rows = {
      a: staysByChance(
        { kind: "turns", means: officePresence, hours: { from: 0, to: DAY } },
        { seed: 9, days: 40 },
      ),
    };
    const { results } = compareDayDelays(load(["a"]), day(rows, { days: 40, before: "once" }), {
      beside: [],
      presence: officePresence,
    });
    for (const { delay, used, saving, closedForm } of results) {
      const expected = renewal(officePresence, delay);
      expect(closedForm).toEqual(expected);
      // 40 days are some 500 turns: their mean is known to about 5 %.
      expect(Math.abs(saving! - expected.saving)).toBeLessThan(0.05);
      expect(Math.abs(used.cycles / (40 * 24) - expected.offPerHour)).toBeLessThan(0.05);
    }
  });
});

test("daylight is half a sine between its two times, and nothing outside them [DAY-CURVE]", () => {
  const curve = { rise: 6 * HOUR, set: 18 * HOUR, highest: 400 };
  expect([0, 6, 8, 12, 16, 18, 23].map((hour) => Math.round(daylightAt(curve, hour * HOUR)))).toEqual([
    0, 0, 200, 400, 200, 0, 0,
  ]);
  expect(daylightAt({ ...curve, set: curve.rise }, 12 * HOUR)).toBe(0);
});

describe("a simulated day [CONTROL-MACHINE]", () => {
  test("somebody from 9 to 10, delay 10 min: lit from 9:00 to 10:10, in words of the state machine", () => {
    const run = simulateDay(load(["a", { offDelay: 600 }]), day({ a: [somebody(9, 10)] }));
    expect(run.lit).toEqual([
      { from: 9 * HOUR, to: 10 * HOUR + 600, onCause: "movement", offCause: "delay-over" },
    ]);
    expect(run.devices[0]!.stretches).toEqual([
      { from: 0, to: 9 * HOUR, state: "idle" },
      { from: 9 * HOUR, to: 10 * HOUR + 1, state: "occupied" },
      { from: 10 * HOUR + 1, to: 10 * HOUR + 600, state: "delay" },
      { from: 10 * HOUR + 600, to: DAY, state: "idle" },
    ]);
    expect(run.faults).toEqual([]);
    expect(run.used.litHours).toBeCloseTo(70 / 60, 9);
    expect(run.people).toEqual([[9 * HOUR, 10 * HOUR]]);
  });

  test("who sits still for longer than the delay is left in the dark; a delay as long as the pauses never does it", () => {
    const input = day({ a: [somebody(9, 12)] }, { still: 15 * MINUTE });
    const short = simulateDay(load(["a", { offDelay: 300 }]), input);
    expect(short.faults.length).toBeGreaterThan(0);
    expect(new Set(short.faults.map(({ code }) => code))).toEqual(new Set(["switched-off-while-occupied"]));
    for (const { from, to } of short.faults) {
      expect(from).toBeGreaterThan(9 * HOUR);
      expect(to).toBeLessThanOrEqual(12 * HOUR);
    }
    expect(simulateDay(load(["a", { offDelay: 300 }]), { ...input, offDelay: 900 }).faults).toEqual([]);
  });

  test("what moves with nobody there lights the room: on while empty, and without a break never off", () => {
    const fan: Stay = { from: 2 * HOUR, to: 4 * HOUR, what: "only-movement" };
    const some = simulateDay(load(["a", { offDelay: 300 }]), day({ a: [fan] }));
    expect(some.faults).toEqual([
      { code: "lit-while-empty", from: 2 * HOUR + 300, to: 4 * HOUR + 300, devices: ["a"] },
    ]);
    const always = simulateDay(load(["a"]), day({ a: [{ ...fan, from: 0, to: DAY }] }));
    expect(always.faults.map(({ code, from, to }) => [code, from, to])).toEqual([
      ["lit-while-empty", 0, DAY],
      ["never-off", 0, DAY],
    ]);
  });

  test("a background level draws its share of the power while the light is off", () => {
    const input = day({ a: [somebody(9, 21)] }, { background: 0.1 });
    const { used } = simulateDay(load(["a", { offDelay: 600 }]), input);
    // 12 h 10 min lit, the rest of the day at a tenth.
    const lit = 12 + 1 / 6;
    expect(used.energy).toBeCloseTo((lit + (24 - lit) / 10) / 1000, 9);
    // Set on the detector it is the same, and one that switches beside it does not make it dark.
    const set = load(["a", { offDelay: 600, output: { background: 0.1 } }], ["b", { output: "switch" }]);
    expect(set.background).toBe(0.1);
    const own = day({ a: [somebody(9, 21)], b: [] }, { background: undefined });
    expect(simulateDay(set, own).used.energy).toBeCloseTo(used.energy, 9);
    expect(simulateDay(set, { ...own, background: 0 }).used.energy).toBeCloseTo(lit / 1000, 9);
    const [one] = compareDayDelays(load(["a"]), input, { beside: [] }).results;
    expect(one!.saving).toBeCloseTo(1 - (one!.used.litHours + (24 - one!.used.litHours) / 10) / 24, 9);
  });

  test("light carries over midnight where every day is alike, and not after a day of nobody", () => {
    const late = { a: [{ from: 23 * HOUR, to: DAY, what: "somebody" as const }] };
    const of = load(["a", { offDelay: 600 }]);
    expect(lit(of, day(late))).toEqual([
      [0, 600 / HOUR],
      [23, 24],
    ]);
    expect(lit(of, day(late, { before: "once" }))).toEqual([[23, 24]]);
  });

  test("with a threshold light waits for the dusk; lamps that fool the sensor make it hunt", () => {
    const of = load(["a", { offDelay: 600, threshold: 200 }]);
    const daylight = { rise: 6 * HOUR, set: 18 * HOUR, highest: 400 };
    const input = day({ a: [somebody(10, 20)] }, { daylight });
    const run = simulateDay(of, input);
    // Below 200 lx from 16:00 on, and the dark filter waits for 10 s.
    expect(
      run.lit.map(({ from, to, onCause }) => [Math.round(from / 60), Math.round(to / 60), onCause]),
    ).toEqual([[960, 1210, "dark"]]);
    expect(run.devices[0]!.stretches.map(({ state }) => state)).toContain("held");
    const fooled = simulateDay(of, { ...input, lamps: { lightAt: 300, compensation: "none" } });
    expect(fooled.faults.map(({ code }) => code)).toContain("light-hunts");
    expect(simulateDay(of, { ...input, lamps: { lightAt: 300, compensation: "learned" } }).faults).toEqual(
      [],
    );
  });

  test("semi-automatic: everybody who comes into the dark presses, so the same hours are lit", () => {
    const rows = { a: [somebody(9, 10), somebody(13, 14)] };
    const semi = load(["a", { mode: "semi-automatic", offDelay: 600 }]);
    expect(lit(semi, day(rows))).toEqual(lit(load(["a", { offDelay: 600 }]), day(rows)));
    expect(simulateDay(semi, day(rows)).lit[0]!.onCause).toBe("button");
  });

  test("a slave's reports light its master's load; of two contacts one holds what the other let go", () => {
    const rows = { b: [somebody(9, 10)] };
    const pair = load(["a", { groupRole: "master", offDelay: 600 }], ["b", { groupRole: "slave" }]);
    const [[from, to]] = lit(pair, day(rows)) as [[number, number]];
    expect(from).toBe(9);
    // The last report may be older than the last movement by its interval.
    expect(to * HOUR).toBeGreaterThan(10 * HOUR + 600 - 31);
    expect(to * HOUR).toBeLessThanOrEqual(10 * HOUR + 600);
    const joined = load(["a", { offDelay: 60 }], ["b", { offDelay: 600 }]);
    const run = simulateDay(joined, day({ a: [somebody(9, 10)], b: [somebody(9, 10)] }));
    expect(run.holds).toEqual([
      { load: joined.id, holder: "b", released: "a", seconds: 540, from: 10 * HOUR + 60 },
    ]);
  });

  test("pulses drive a stair timer that runs for the delay; beside a contact they are taken for contacts", () => {
    const impulse = { pulse: 1, pause: 9 };
    const rows = { a: [somebody(9, 9.5)], b: [] };
    expect(lit(load(["a", { impulse, offDelay: 180 }]), day(rows))).toEqual([
      [9, expect.closeTo(9.5 + 180 / HOUR, 2)],
    ]);
    expect(lit(load(["a", { impulse, offDelay: 180 }], ["b", { offDelay: 180 }]), day(rows))).toEqual([
      [9, 9.5 + 180 / HOUR],
    ]);
  });

  test("delays tried on the day: longer ones never spare more, and the shortest that harms nobody is recommended", () => {
    const input = day({ a: [somebody(9, 12)] }, { still: 9 * MINUTE });
    const { results, recommended } = compareDayDelays(load(["a"]), input, { beside: [450] });
    expect(results.map(({ delay }) => delay / 60)).toEqual([1, 3, 5, 7.5, 10, 15, 20, 30]);
    results.slice(1).forEach(({ saving }, i) => {
      expect(saving!).toBeLessThanOrEqual(results[i]!.saving!);
    });
    const kind = results.filter(({ used }) => used.offWhileOccupied === 0).map(({ delay }) => delay);
    expect(recommended.delay).toBe(Math.min(...kind));
    expect(recommended.delay).toBeGreaterThan(60);
    const ruled = compareDayDelays(load(["a"]), input, { beside: [], longest: 60 });
    expect(ruled.recommended).toMatchObject({ delay: undefined, reason: { code: "no-delay-fits" } });
  });
});
