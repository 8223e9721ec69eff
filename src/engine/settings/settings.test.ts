import { describe, expect, test } from "vitest";
import { sources } from "../source/index.ts";
import {
  type ChosenSettings,
  dimmedTo,
  lampsAlone,
  loopSlope,
  type SettingContext,
  settingConflicts,
  settingsOf,
  type ThresholdReadings,
  thresholdFrom,
} from "./index.ts";

const place = (given: Partial<SettingContext> = {}): SettingContext => ({
  device: "d",
  tag: "B1",
  room: "Office",
  use: "sitting",
  escapeRoute: false,
  daylight: true,
  hasButton: true,
  hears: false,
  fanNear: false,
  masks: 0,
  group: { id: "g", role: "alone" },
  ...given,
});
const set = (given: Partial<SettingContext>, chosen: ChosenSettings = {}) => {
  const context = place(given);
  return { context, settings: settingsOf(context, chosen) };
};
const codes = (...devices: ReturnType<typeof set>[]): string[] =>
  settingConflicts(devices).map(({ code }) => code);

describe("threshold from readings [CEILING-READING]", () => {
  const read = (given: Partial<ThresholdReadings>): ThresholdReadings => ({
    room: "Office",
    target: 500,
    lampsOff: [{ ceiling: 96, task: 320 }],
    lamps: { ceiling: 121, task: 550 },
    sunPatch: false,
    ...given,
  });
  const refused = (given: Partial<ThresholdReadings>): string[] => {
    const result = thresholdFrom(read(given));
    return "problems" in result ? result.problems.map(({ code }) => code) : [];
  };
  test("320 lx at the task and 96 at the ceiling: ratio 0.30, on at 150, off at 271", () => {
    const result = thresholdFrom(read({}));
    if ("problems" in result) throw new Error("refused");
    expect(result.daylightRatio).toBeCloseTo(0.3, 12);
    expect(result.lampRatio).toBeCloseTo(0.22, 12);
    expect(result.on).toBeCloseTo(150, 10);
    expect(result.off).toBeCloseTo(271, 10);
    expect(result.notes.map(({ code }) => code)).toEqual(["threshold-few-readings"]);
  });
  test("lamps alone are the difference of on and off at one daylight", () => {
    expect(lampsAlone({ ceiling: 217, task: 870 }, { ceiling: 96, task: 320 })).toEqual({
      ceiling: 121,
      task: 550,
    });
  });
  test("three pairs give least squares through the origin, with their spread", () => {
    const lampsOff = [
      { ceiling: 60, task: 200 },
      { ceiling: 124, task: 400 },
      { ceiling: 174, task: 600 },
    ];
    const result = thresholdFrom(read({ lampsOff }));
    if ("problems" in result) throw new Error("refused");
    // (60·200 + 124·400 + 174·600) / (200² + 400² + 600²) = 166 000 / 560 000
    expect(result.daylightRatio).toBeCloseTo(166_000 / 560_000, 12);
    expect(result.spread).toBeCloseTo((0.31 - 166 / 560) / (166 / 560), 12);
    expect(result.notes).toEqual([]);
  });
  test("without the lamps' reading the value for off stays unknown", () => {
    const { lamps: _, ...rest } = read({});
    expect(thresholdFrom(rest)).toMatchObject({ off: undefined, lampRatio: undefined });
  });
  test("readings that cannot carry it are refused", () => {
    expect(refused({ lampsOff: [{ ceiling: 30, task: 99.9 }] })).toEqual(["threshold-too-dark"]);
    expect(refused({ lampsOff: [{ ceiling: 30, task: 100 }] })).toEqual([]);
    expect(refused({ lampsOff: [] })).toEqual(["threshold-too-dark"]);
    expect(refused({ sunPatch: true })).toEqual(["threshold-sun-patch"]);
    expect(refused({ lampsOff: [{ ceiling: -1, task: 300 }] })).toEqual(["threshold-reading-impossible"]);
    expect(refused({ lampsOff: [{ ceiling: 0, task: 300 }] })).toEqual(["threshold-reading-impossible"]);
    expect(refused({ target: 0 })).toContain("threshold-target-missing");
  });
});

test("closed loop in proportion [RUBINSTEIN-1989]", () => {
  const slope = loopSlope({ night: { ceiling: 121, task: 550 }, day: { ceiling: 100, task: 250 } });
  expect(slope).toBeCloseTo(-0.01010101, 8);
  expect(dimmedTo(slope, { night: 121, day: 100 })).toBeCloseTo(0.54545455, 8);
  expect(dimmedTo(slope, { night: 121, day: 100 }) * 550 + 250).toBeCloseTo(550, 8);
  expect(dimmedTo(slope, { night: 121, day: 60 })).toBeCloseTo(0.72727273, 8);
  expect(dimmedTo(slope, { night: 121, day: 220 })).toBeCloseTo(0, 8);
});

describe("chosen and derived", () => {
  test("what was chosen stays as chosen; everything else carries a sentence and a source", () => {
    const { settings } = set({}, { offDelay: 240 });
    expect(settings.offDelay).toEqual({ kind: "chosen", value: 240 });
    const derived = Object.entries(settings).filter(([name]) => name !== "offDelay");
    expect(derived.length).toBe(10);
    for (const [, setting] of derived) {
      if (setting.kind !== "derived") throw new Error("not derived");
      expect(setting.reason).toMatch(/^[A-Z].*\.$/);
      expect(setting.source in sources).toBe(true);
    }
  });
  test("use, windows, rules, energy and group decide", () => {
    expect(set({}).settings.mode.value).toBe("semi-automatic");
    expect(set({ use: "passing", escapeRoute: true }).settings).toMatchObject({
      mode: { value: "automatic" },
      button: { value: "on-only" },
    });
    const longestDelay = { delay: 600, rule: "the code", source: "IECC-2021" } as const;
    expect(set({ longestDelay }).settings.offDelay).toMatchObject({ value: 600, source: "IECC-2021" });
    expect(set({ recommendedDelay: { delay: 420 } }).settings.offDelay).toMatchObject({
      value: 420,
      source: "CONTROL-MACHINE",
    });
    expect(set({ thresholdFromReadings: 150 }).settings.threshold).toMatchObject({
      value: 150,
      source: "CEILING-READING",
    });
    expect(set({ thresholdFromReadings: 150, daylight: false }).settings.threshold.value).toBe("off");
    expect(
      set({ thresholdFromReadings: 150, group: { id: "g", role: "slave" } }).settings.threshold.value,
    ).toBe("off");
    expect(set({ use: "sanitary", hears: true }).settings.soundSensitivity.value).toBe("medium");
    expect(set({ use: "sanitary", hears: true, fanNear: true }).settings.soundSensitivity.value).toBe("off");
    expect(set({ stairTimer: { time: 180 } }).settings.impulse.value).toEqual({ pulse: 1, pause: 9 });
  });
  test("what is derived never contradicts itself", () => {
    for (const use of [
      "passing",
      "stair",
      "moving",
      "sitting",
      "sanitary",
      "changing",
      "plant",
      "other",
    ] as const)
      for (const daylight of [true, false])
        for (const hasButton of [true, false])
          for (const fanNear of [true, false])
            expect(
              codes(
                set({ use, daylight, hasButton, fanNear, hears: true, masks: 1, thresholdFromReadings: 200 }),
              ),
            ).toEqual([]);
  });
});

describe("conflicts", () => {
  test.each<[string, Partial<SettingContext>, ChosenSettings]>([
    ["threshold-without-daylight", { daylight: false }, { threshold: 200 }],
    ["threshold-on-slave", { group: { id: "g", role: "slave" } }, { threshold: 200 }],
    ["sound-next-to-fan", { hears: true, fanNear: true }, { soundSensitivity: "high" }],
    ["sound-without-microphone", {}, { soundSensitivity: "low" }],
    [
      "delay-above-rule",
      { longestDelay: { delay: 1200, rule: "the code", source: "IECC-2021" } },
      { offDelay: 1201 },
    ],
    ["absence-control-in-dark-way", { use: "passing", daylight: false }, { mode: "semi-automatic" }],
    ["absence-control-without-button", { hasButton: false }, { mode: "semi-automatic" }],
    ["left-in-test-mode", {}, { testMode: "on" }],
    ["impulse-slower-than-timer", { stairTimer: { time: 10 } }, {}],
    ["impulse-without-timer", {}, { impulse: { pulse: 1, pause: 9 } }],
    ["mask-left-out", { masks: 1 }, { mask: "none" }],
  ])("%s", (code, context, chosen) => {
    expect(codes(set(context, chosen))).toEqual([code]);
  });
  test("joined contacts with different delays, and with a threshold each", () => {
    const joined = { group: { id: "g", role: "parallel" } } as const;
    expect(codes(set(joined, { offDelay: 60 }), set(joined, { offDelay: 600 }))).toEqual([
      "parallel-delays-differ",
    ]);
    expect(codes(set(joined, { threshold: 200 }), set(joined, { threshold: 200 }))).toEqual([
      "parallel-thresholds",
    ]);
    expect(
      codes(set(joined, { offDelay: 60 }), set({ group: { id: "h", role: "parallel" } }, { offDelay: 600 })),
    ).toEqual([]);
  });
});
