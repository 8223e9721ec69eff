import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type ControlDevice,
  type ControlEvent,
  type ControlParameters,
  type ControlTask,
  controlStates,
  runControl,
  stateChanges,
  usualParameters,
} from "./index.ts";
import { byTheTable } from "./table.fixture.ts";

const settings = (): fc.Arbitrary<ControlParameters> =>
  fc
    .record({
      mode: fc.constantFrom("automatic" as const, "semi-automatic" as const),
      button: fc.constantFrom("on-only" as const, "on-and-off" as const),
      buttonNeedsDark: fc.boolean(),
      buttonAlwaysAnswers: fc.boolean(),
      warmUp: fc.integer({ min: 0, max: 60 }),
      litWhileWarmingUp: fc.boolean(),
      movementHold: fc.integer({ min: 1, max: 3 }),
      offDelay: fc.integer({ min: 5, max: 120 }),
      hysteresis: fc.constant(0.1),
      darkFilter: fc.integer({ min: 1, max: 12 }),
      compensation: fc.constantFrom("learned" as const, "none" as const),
      testTime: fc.integer({ min: 5, max: 60 }),
      testPulse: fc.integer({ min: 1, max: 3 }),
      grace: fc.option(fc.integer({ min: 1, max: 10 }), { nil: undefined }),
      threshold: fc.option(fc.integer({ min: 100, max: 400 }), { nil: undefined }),
      bright: fc.option(fc.integer({ min: 1, max: 60 }), { nil: undefined }),
    })
    .map(({ grace, threshold, bright, ...rest }) => {
      const { brightFilter: _, ...usual } = usualParameters;
      return {
        ...usual,
        ...rest,
        ...(grace === undefined ? {} : { sound: { grace } }),
        ...(threshold === undefined ? {} : { threshold }),
        ...(bright === undefined ? {} : { brightFilter: bright }),
      };
    });

/** Movements most of all, as in life; gaps of 0 make several events of one instant. */
const kinds = [
  "movement",
  "movement",
  "movement",
  "movement",
  "sound",
  "sound",
  "extension",
  "button",
  "button",
  "daylight",
  "daylight",
  "daylight",
  "test-on",
  "test-off",
  "power-off",
  "power-on",
  "power-on",
] as const;

const storm = (ids: readonly string[], length: number): fc.Arbitrary<ControlEvent[]> =>
  fc
    .array(
      fc.record({
        kind: fc.constantFrom(...kinds),
        gap: fc.oneof(
          { weight: 4, arbitrary: fc.integer({ min: 0, max: 15 }) },
          { weight: 1, arbitrary: fc.integer({ min: 0, max: 150 }) },
        ),
        device: fc.constantFrom(...ids),
        value: fc.integer({ min: 0, max: 600 }),
      }),
      { minLength: length, maxLength: length, size: "max" },
    )
    .map((rows) => {
      let at = 0;
      return rows.map(({ kind, gap, device, value }): ControlEvent => {
        at += gap;
        return kind === "daylight" ? { kind, at, device, value } : { kind, at, device };
      });
    });

const one = (parameters: ControlParameters): ControlDevice => ({
  id: "A",
  parameters,
  output: { kind: "contact", load: "lamps" },
});

test("every state and every event: the run from event to event is the table read second by second", () => {
  const reached = new Set<string>();
  let events = 0;
  fc.assert(
    fc.property(settings(), storm(["A"], 200), (parameters, list) => {
      const until = Math.ceil(list.at(-1)!.at) + 200;
      const run = runControl({ devices: [one(parameters)], loads: [{ id: "lamps" }], events: list, until });
      const rows = stateChanges(run.devices.A!);
      const last = (all: readonly { at: number; state: string; out: boolean }[]) =>
        [...new Map(all.map(({ at, state, out }) => [at, { state, out }]))].filter(
          ([, row], i, every) =>
            i === 0 || row.state !== every[i - 1]![1].state || row.out !== every[i - 1]![1].out,
        );
      expect(last(rows)).toEqual(last(byTheTable(parameters, list, until)));
      rows.forEach(({ cause }, i) => {
        if (i > 0) reached.add(`${rows[i - 1]!.state} ${cause}`);
      });
      events += list.length;
    }),
    { seed: 20260402, numRuns: 150 },
  );
  expect(events).toBe(30_000);
  // Every listed way of the table has been walked.
  for (const way of [
    "without-power power-on",
    "warming-up warmed-up",
    "idle movement",
    "idle extension",
    "idle button",
    "armed button",
    "armed delay-over",
    "held dark",
    "held delay-over",
    "occupied quiet",
    "delay movement",
    "delay extension",
    "delay sound",
    "delay delay-over",
    "grace sound",
    "grace movement",
    "grace grace-over",
    "occupied bright",
    "delay bright",
    "occupied button",
    "delay button",
    "manual-off delay-over",
    "manual-off button",
    "test movement",
    "test test-over",
    "test test-off",
    "test test-pulse-over",
    "idle test-on",
    "occupied power-off",
    "warming-up power-off",
  ])
    expect(reached).toContain(way);
});

const group = (
  a: ControlParameters,
  b: ControlParameters,
  c: ControlParameters,
): Pick<ControlTask, "devices" | "loads"> => ({
  devices: [
    { id: "A", parameters: a, output: { kind: "contact", load: "lamps" } },
    { id: "B", parameters: b, output: { kind: "contact", load: "lamps" }, start: "without-power" },
    { id: "S", parameters: c, output: { kind: "slave", master: "A", interval: 20 } },
    { id: "I", parameters: b, output: { kind: "impulse", load: "stairs", pulse: 1, pause: 9 } },
  ],
  loads: [
    { id: "lamps", lightAt: { A: 300, B: 150 } },
    { id: "stairs", lightAt: { I: 200, A: 40 }, stairTimer: { time: 60, retriggerable: true } },
  ],
});

test("in storms of more than 100 000 events the invariants of the state machine hold", () => {
  let events = 0;
  fc.assert(
    fc.property(settings(), settings(), settings(), storm(["A", "B", "S", "I"], 1200), (a, b, c, list) => {
      const task = group(a, b, c);
      const until = list.at(-1)!.at + 500;
      const run = runControl({ ...task, events: list, until });
      events += list.length;
      const outs = new Map<number, number>();
      for (const { id, output } of task.devices) {
        const rows = stateChanges(run.devices[id]!);
        rows.forEach((row, i) => {
          if (row.state === "idle" || row.state === "without-power") expect(row.out).toBe(false);
          if (row.state === "occupied" || row.state === "delay") expect(row.out).toBe(true);
          const before = rows[i - 1];
          if (!before) return;
          expect(row.at).toBeGreaterThanOrEqual(before.at);
          if (row.cause === "sound") expect(before.state).not.toBe("idle");
          if (before.state === "occupied" && row.cause === "movement") expect(row.out).toBe(true);
          if (before.state === "test")
            expect(["bright", "dark", "delay-over", "button", "sound"]).not.toContain(row.cause);
          if (before.state === "without-power") expect(row.cause).toBe("power-on");
          if (output.kind === "contact") outs.set(row.at, 0);
        });
        const { pulses } = run.devices[id]!;
        const every = output.kind === "slave" ? output.interval : 10;
        for (let i = 1; i < pulses.length; i++)
          expect(pulses[i]! - pulses[i - 1]!).toBeGreaterThanOrEqual(every);
      }
      // The load is the OR of its contacts: compared half a second after every change, between two whole seconds.
      const burning = (at: number): boolean => {
        const { on, off, length } = run.loads.lamps!;
        for (let i = 0; i < length; i++) if (on[i]! <= at && at < off[i]!) return true;
        return false;
      };
      const wants = (id: string, at: number): boolean =>
        stateChanges(run.devices[id]!).findLast((row) => row.at <= at)!.out;
      for (const at of [...outs.keys()].slice(0, 25).map((time) => time + 0.5))
        if (at < until) expect(burning(at)).toBe(wants("A", at) || wants("B", at));
      for (const { on, off, length } of Object.values(run.loads))
        for (let i = 0; i < length; i++) {
          expect(off[i]!).toBeGreaterThan(on[i]!);
          if (i > 0) expect(on[i]!).toBeGreaterThan(off[i - 1]!);
        }
    }),
    { seed: 20260401, numRuns: 90 },
  );
  expect(events).toBeGreaterThanOrEqual(100_000);
});

test("the same events of one instant in any order give the same run", () => {
  fc.assert(
    fc.property(
      settings(),
      settings(),
      storm(["A", "B", "S", "I"], 150),
      fc.infiniteStream(fc.nat()),
      (a, b, list, keys) => {
        const task = group(a, b, a);
        const key = new Map(list.map((event) => [event, keys.next().value as number]));
        const shuffled = list.toSorted((x, y) => key.get(x)! - key.get(y)!);
        const until = list.at(-1)!.at + 300;
        expect(runControl({ ...task, events: shuffled, until })).toEqual(
          runControl({ ...task, events: list, until }),
        );
      },
    ),
    { seed: 20260403, numRuns: 40 },
  );
});

test("a longer delay never lights a lamp for less time, and later time never starts earlier when all is shifted", () => {
  const parameters = { ...usualParameters, mode: "automatic" as const };
  const lit = (offDelay: number, times: readonly number[], shift = 0): number => {
    const devices = [one({ ...parameters, offDelay })];
    const events = times.map((at): ControlEvent => ({ kind: "movement", at: at + shift, device: "A" }));
    const { on, off, length } = runControl({
      devices,
      loads: [{ id: "lamps" }],
      events,
      until: 20_000 + shift,
    }).loads.lamps!;
    return Array.from({ length }, (_, i) => off[i]! - on[i]!).reduce((x, y) => x + y, 0);
  };
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 10_000 }), { maxLength: 60 }),
      fc.integer({ min: 2, max: 900 }),
      (times, delay) => {
        expect(lit(delay + 30, times)).toBeGreaterThanOrEqual(lit(delay, times));
        expect(lit(delay, times, 512)).toBe(lit(delay, times));
      },
    ),
    { seed: 20260404, numRuns: 100 },
  );
});

test("there are ten states, each with a name of its own", () => {
  expect(new Set(controlStates).size).toBe(10);
});
