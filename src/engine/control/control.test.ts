import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sentenceOf } from "../check/index.ts";
import {
  busTimer,
  type ControlDevice,
  type ControlEvent,
  type ControlLoad,
  type ControlParameters,
  type ControlTask,
  occupancyEventCode,
  occupancyInputValue,
  runControl,
  simulate,
  stateChanges,
  usualParameters,
} from "./index.ts";

const device = (
  parameters: Partial<ControlParameters>,
  rest: Partial<ControlDevice> = {},
): ControlDevice => ({
  id: "A",
  parameters: { ...usualParameters, ...parameters },
  output: { kind: "contact", load: "lamps" },
  ...rest,
});
const lamps: ControlLoad = { id: "lamps" };
type Pulse = "movement" | "sound" | "button" | "extension";
const at = (kind: Pulse, times: readonly number[], id = "A"): ControlEvent[] =>
  times.map((time) => ({ kind, at: time, device: id }));
const daylight = (value: number, time = 0, id = "A"): ControlEvent => ({
  kind: "daylight",
  at: time,
  device: id,
  value,
});

/** Lit stretches of the lamps. */
function lit(given: Partial<ControlTask> & Pick<ControlTask, "devices" | "events">): number[][] {
  const { loads } = runControl({ loads: [lamps], until: 5000, ...given });
  const track = loads[(given.loads ?? [lamps])[0]!.id]!;
  return Array.from({ length: track.length }, (_, i) => [track.on[i]!, track.off[i]!]);
}

describe("check sequences of the state machine [CONTROL-MACHINE]", () => {
  test("A: movement in the warm-up is ignored, and the delay counts from the last movement", () => {
    const devices = [
      device({ warmUp: 45, offDelay: 300, litWhileWarmingUp: false }, { start: "without-power" }),
    ];
    const events: ControlEvent[] = [{ kind: "power-on", at: 0 }, ...at("movement", [10, 50, 200])];
    expect(lit({ devices, events })).toEqual([[50, 500]]);
  });
  test("B: in semi-automatic mode it stays dark until the button", () => {
    const devices = [device({ mode: "semi-automatic", offDelay: 300 })];
    expect(lit({ devices, events: [...at("movement", [50, 100]), ...at("button", [55])] })).toEqual([
      [55, 400],
    ]);
  });
  test("C: bright enough at 50, dark from 100 on: on after the dark filter, off when the delay ends", () => {
    const devices = [device({ threshold: 300, offDelay: 300, darkFilter: 10 })];
    const events = [daylight(500), daylight(250, 100), ...at("movement", [50])];
    expect(lit({ devices, events })).toEqual([[110, 350]]);
    const { devices: tracks } = runControl({ devices, loads: [lamps], events, until: 1000 });
    expect(stateChanges(tracks.A!).map(({ at: time, state }) => [time, state])).toEqual([
      [0, "idle"],
      [50, "held"],
      [110, "occupied"],
      [111, "delay"],
      [350, "idle"],
    ]);
  });
  test.each([
    [true, 192],
    [false, 180],
  ])("D: pulses at 0 and 12; stair timer retriggerable %s goes off at %i", (retriggerable, off) => {
    const stairs: ControlLoad = { id: "stairs", stairTimer: { time: 180, retriggerable } };
    const devices = [device({}, { output: { kind: "impulse", load: "stairs", pulse: 1, pause: 9 } })];
    const events = at("movement", [0, 3, 8, 12]);
    expect(lit({ devices, events, loads: [stairs] })).toEqual([[0, off]]);
    const { devices: tracks } = runControl({ devices, loads: [stairs], events, until: 1000 });
    expect(tracks.A!.pulses).toEqual([0, 12]);
  });
  test("E: sound holds, brings back within the grace, and never switches on from idle", () => {
    const devices = [device({ sound: { grace: 8 }, offDelay: 600 })];
    const first = [...at("movement", [0]), ...at("sound", [500])];
    expect(lit({ devices, events: [...first, ...at("sound", [1105])] })).toEqual([
      [0, 1100],
      [1105, 1705],
    ]);
    expect(lit({ devices, events: [...first, ...at("sound", [1110])] })).toEqual([[0, 1100]]);
  });
  test("F: of two masters on one load the longest delay wins, and the run says who holds whom", () => {
    const devices = [device({ offDelay: 60 }), device({ offDelay: 600 }, { id: "B" })];
    const events = [...at("movement", [0]), ...at("movement", [10], "B")];
    expect(lit({ devices, events })).toEqual([[0, 610]]);
    expect(simulate({ devices, loads: [lamps], events, until: 1000 }).holds).toEqual([
      { load: "lamps", holder: "B", released: "A", seconds: 550, from: 60 },
    ]);
  });
  test("G: switched off by hand it stays off while somebody is there, and is normal again afterwards", () => {
    const devices = [device({ offDelay: 300 })];
    const events = [...at("movement", [0, 100, 401]), ...at("button", [20])];
    expect(lit({ devices, events })).toEqual([
      [0, 20],
      [401, 701],
    ]);
    const { devices: tracks } = runControl({ devices, loads: [lamps], events, until: 1000 });
    expect(stateChanges(tracks.A!).find(({ state, at: time }) => state === "idle" && time > 0)!.at).toBe(400);
  });
});

test.each([
  [false, [], [[0, 600]]],
  [
    true,
    [[20, 350]],
    [
      [0, 600],
      [605, 1205],
    ],
  ],
])("the button in held light and in the grace: always answers %s", (buttonAlwaysAnswers, held, grace) => {
  const bright = device({ threshold: 300, offDelay: 300, buttonAlwaysAnswers });
  // A press starts the delay anew, and the movement after it again.
  const day = [daylight(500), ...at("movement", [10, 50]), ...at("button", [20])];
  expect(lit({ devices: [bright], events: day, until: 400 })).toEqual(held);
  const listening = device({ sound: { grace: 8 }, offDelay: 600, buttonAlwaysAnswers });
  const quiet = [...at("movement", [0]), ...at("button", [605])];
  expect(lit({ devices: [listening], events: quiet })).toEqual(grace);
});

describe("brightness with the light of the own lamps taken off [CONTROL-MACHINE]", () => {
  const load: ControlLoad = { id: "lamps", lightAt: { A: 400 } };
  const always = at(
    "movement",
    Array.from({ length: 250 }, (_, i) => i * 20),
  );
  const bright = { threshold: 300, hysteresis: 0.1, offDelay: 600 } as const;
  test("550 lx with 400 lx of lamps is 150 lx of day: it stays on, and the naive rule hunts", () => {
    const events = [daylight(150), ...always];
    expect(lit({ devices: [device(bright)], loads: [load], events })).toEqual([[0, 5000]]);
    const naive = simulate({
      devices: [device({ ...bright, compensation: "none" })],
      loads: [load],
      events,
      until: 5000,
    });
    expect(naive.faults.map(({ problem }) => problem.code)).toContain("light-hunts");
    expect(naive.loads.lamps!.off[0]).toBe(600);
    expect(naive.loads.lamps!.on[1]).toBe(610);
  });
  test("320 lx stay below 330 and keep the light on; 340 lx switch it off for good", () => {
    const until = (value: number): number[][] =>
      lit({
        devices: [device(bright)],
        loads: [load],
        events: [daylight(150), daylight(value, 100), ...always],
      });
    expect(until(320)).toEqual([[0, 5000]]);
    expect(until(340)).toEqual([[0, 700]]);
  });
});

describe("several controllers on one load", () => {
  const master = device({ offDelay: 100, threshold: 300 });
  const slave = (interval: number): ControlDevice =>
    device({ offDelay: 30 }, { id: "S", output: { kind: "slave", master: "A", interval } });
  const walking = at(
    "movement",
    Array.from({ length: 300 }, (_, i) => i),
    "S",
  );
  test("a slave's pulses hold the master, once an interval, and the master alone looks at the light", () => {
    const run = runControl({ devices: [master, slave(40)], loads: [lamps], events: walking, until: 1000 });
    expect(run.devices.S!.pulses).toEqual([0, 40, 80, 120, 160, 200, 240, 280]);
    expect([...run.loads.lamps!.off]).toEqual([380]);
    const held = runControl({
      devices: [master, slave(40)],
      loads: [lamps],
      events: [daylight(400), ...walking],
      until: 1000,
    });
    expect(held.loads.lamps!.length).toBe(0);
  });
  test("pulses rarer than the master's delay let the light go off between them", () => {
    const people = { lamps: [[0, 300]] } as const;
    const run = simulate({
      devices: [master, slave(150)],
      loads: [lamps],
      events: walking,
      people,
      until: 1000,
    });
    expect(run.faults[0]!.problem.code).toBe("switched-off-while-occupied");
    expect(run.faults[0]).toMatchObject({ from: 100, to: 150, devices: ["A"] });
  });
  test("an extension input from outside is presence like any other", () => {
    expect(lit({ devices: [device({ offDelay: 50 })], events: at("extension", [5]) })).toEqual([[5, 55]]);
  });
  test("a master beside others' lamps learns wrongly: the light that it did not switch counts as day", () => {
    const both: ControlLoad = { id: "lamps", lightAt: { A: 400, B: 400 } };
    const devices = [device({ threshold: 300, offDelay: 1000 }), device({ threshold: 300 }, { id: "B" })];
    const run = runControl({
      devices,
      loads: [both],
      events: [...at("movement", [0]), ...at("movement", [5], "B")],
      until: 100,
    });
    expect(stateChanges(run.devices.B!).at(-1)!.state).toBe("held");
  });
});

describe("power, faults and codes", () => {
  test("after a power cut the lamps burn while everything warms up, then go off although somebody is there", () => {
    const events: ControlEvent[] = [
      ...at("movement", [10, 40]),
      { kind: "power-off", at: 20 },
      { kind: "power-on", at: 30 },
    ];
    expect(lit({ devices: [device({ warmUp: 25 })], events })).toEqual([
      [10, 20],
      [30, 55],
    ]);
  });
  test("common practice, no source: a warm-up of about 25 s during which the light is on", () => {
    const devices = [device({ warmUp: 25, litWhileWarmingUp: true }, { start: "without-power" })];
    expect(lit({ devices, events: [{ kind: "power-on", at: 0 }] })).toEqual([[0, 25]]);
  });
  test("common practice, no source: at delivery a delay of about 5 min and a threshold of 100 lx", () => {
    const devices = [device({ offDelay: 300, threshold: 100 })];
    const events = (day: number) => [daylight(day), ...at("movement", [50])];
    expect(lit({ devices, events: events(80) })).toEqual([[50, 350]]);
    expect(lit({ devices, events: events(120) })).toEqual([]);
  });
  test("lit beyond the delay with nobody there, and never off, are found", () => {
    const heater = at(
      "movement",
      Array.from({ length: 2000 }, (_, i) => i * 60),
    );
    const run = simulate({
      devices: [device({ offDelay: 300 })],
      loads: [lamps],
      events: heater,
      people: { lamps: [[0, 100]] },
      until: 100_000,
    });
    expect(run.faults.map(({ problem, from }) => [problem.code, from])).toEqual([
      ["lit-while-empty", 400],
      ["never-off", 0],
    ]);
  });
  test("a fault speaks of the light by its title, and of times as a clock tells them from the first day watched on", () => {
    const day = 86_400;
    const run = simulate({
      devices: [device({ offDelay: 300 })],
      loads: [{ ...lamps, title: "The light of D1" }],
      events: [...at("movement", [9 * 3600, 9 * 3600 + day, 10 * 3600 + 2 * day])],
      people: {
        lamps: [
          [9 * 3600 + day, 9 * 3600 + day + 390],
          [10 * 3600 + 2 * day, 10 * 3600 + 2 * day + 320],
        ],
      },
      watchFrom: day,
      until: 3 * day,
    });
    expect(run.faults.map(({ problem }) => sentenceOf(problem))).toEqual([
      "The light of D1 goes off at 9:05 while somebody is there, and stays dark for 1.5 min.",
      "The light of D1 goes off at 10:05 on day 2 while somebody is there, and stays dark for 20 s.",
    ]);
  });
  test("a fault that begins before the days watched is told with its length within them", () => {
    const day = 86_400;
    const run = (people: readonly (readonly [number, number])[], offDelay: number, movements: number[]) =>
      simulate({
        devices: [device({ offDelay })],
        loads: [{ ...lamps, title: "The light" }],
        events: at("movement", movements),
        people: { lamps: people },
        watchFrom: day,
        until: 2 * day,
      }).faults.map(({ problem }) => sentenceOf(problem));
    // Dark from an hour before midnight to an hour after: one hour of it is watched.
    expect(run([[day - 2 * 3600, day + 3600]], 3600, [day - 2 * 3600])).toEqual([
      "The light goes off at 0:00 while somebody is there, and stays dark for 60 min.",
    ]);
    // Lit for thirty hours, six of them before.
    const often = Array.from({ length: 30 * 6 }, (_, i) => day - 6 * 3600 + i * 600);
    expect(run([[day - 6 * 3600, 2 * day]], 900, often)).toEqual([
      "The light stays lit for 24 h without a break from 0:00 on.",
    ]);
  });
  test("switching off by hand or by daylight while somebody is there is no fault", () => {
    const run = simulate({
      devices: [device({})],
      loads: [lamps],
      events: [...at("movement", [0]), ...at("button", [20])],
      people: { lamps: [[0, 100]] },
      until: 1000,
    });
    expect(run.faults).toEqual([]);
  });
  test("event codes and timers of the addressed bus [IEC-62386-303]", () => {
    const code = (
      sensor: "movement" | "presence",
      occupied: boolean,
      movement: boolean,
      repeat = false,
    ): number => occupancyEventCode({ sensor, occupied, movement, repeat });
    expect([
      code("movement", false, false),
      code("movement", true, false),
      code("movement", true, true),
    ]).toEqual([8, 10, 11]);
    expect(code("movement", true, true, true)).toBe(15);
    expect([
      code("presence", false, false),
      code("presence", true, false),
      code("presence", true, true),
    ]).toEqual([0, 2, 3]);
    expect([busTimer("hold", 0), busTimer("hold", 90), busTimer("hold", 254), busTimer("hold", 255)]).toEqual(
      [1, 900, 2540, undefined],
    );
    expect([
      busTimer("deadtime", 2),
      busTimer("deadtime", 255),
      busTimer("report", 20),
      busTimer("report", 255),
    ]).toEqual([0.1, 12.75, 20, 255]);
    expect([
      occupancyInputValue("idle"),
      occupancyInputValue("delay"),
      occupancyInputValue("occupied"),
    ]).toEqual([0, 0xaa, 0xff]);
  });
  test("what cannot be is refused by name", () => {
    expect(() =>
      runControl({ devices: [device({ offDelay: 0 })], loads: [lamps], events: [], until: 1 }),
    ).toThrow("offDelay of A");
    expect(() => runControl({ devices: [device({})], loads: [], events: [], until: 1 })).toThrow(
      "No load has the id lamps",
    );
    expect(() =>
      runControl({ devices: [device({})], loads: [lamps], events: at("movement", [1], "Z"), until: 1 }),
    ).toThrow("No controller has the id Z");
    fc.assert(
      fc.property(fc.constantFrom(Number.NaN, -1, Number.POSITIVE_INFINITY), (time) => {
        expect(() =>
          runControl({ devices: [device({})], loads: [lamps], events: at("movement", [time]), until: 1 }),
        ).toThrow(RangeError);
      }),
      { seed: 1, numRuns: 10 },
    );
  });
});
