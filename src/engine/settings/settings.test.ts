import { describe, expect, test } from "vitest";
import { english } from "../check/index.ts";
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
  unknownFacts,
} from "./index.ts";

/** Undefined: nobody knows. */
type Given = { readonly [Name in keyof SettingContext]?: SettingContext[Name] | undefined };
const place = (given: Given = {}): SettingContext => {
  const known = { ...ordinary, ...given };
  return Object.fromEntries(
    Object.entries(known).filter(([, value]) => value !== undefined),
  ) as unknown as SettingContext;
};
const ordinary: SettingContext = {
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
  outputKinds: ["switch", "two-level"],
  group: { id: "g", role: "alone" },
};
const set = (given: Given, chosen: ChosenSettings = {}) => {
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
    expect(derived.length).toBe(11);
    for (const [, setting] of derived) {
      if (setting.kind !== "derived") throw new Error("not derived");
      expect(english(setting.reason)).toMatch(/^[A-Z].*\.$/);
      expect(setting.source in sources).toBe(true);
    }
  });
  test("delays begin where the trade's habit puts them: ways 5 min, stores and washrooms 10, where one sits, changes or is out of sight in a cubicle 15, plant rooms 20", () => {
    const minutes = (["passing", "stair", "moving", "sanitary", "sitting", "changing", "plant"] as const).map(
      (use) => set({ use }).settings.offDelay.value / 60,
    );
    expect(minutes).toEqual([5, 5, 10, 10, 15, 15, 20]);
    const { offDelay } = set({ use: "sanitary", cubicles: true }).settings;
    expect(offDelay.value).toBe(900);
    expect(offDelay.kind === "derived" && english(offDelay.reason)).toBe(
      "People are out of sight in a cubicle for minutes: 15 min.",
    );
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
  test("what nobody knows is taken on the safe side, and the value says so", () => {
    const rests = (given: Given, name: keyof ReturnType<typeof settingsOf>): unknown => {
      const setting = set(given).settings[name];
      return setting.kind === "derived" && [setting.value, setting.assumption];
    };
    expect(rests({ hasButton: undefined }, "mode")).toEqual(["automatic", unknownFacts.button]);
    expect(rests({ daylight: undefined }, "mode")).toEqual(["automatic", unknownFacts.daylight]);
    expect(rests({ daylight: undefined }, "threshold")).toEqual(["off", unknownFacts.daylight]);
    expect(rests({ escapeRoute: undefined }, "mode")).toEqual(["semi-automatic", unknownFacts.escapeRoute]);
    expect(rests({ escapeRoute: undefined }, "button")).toEqual(["on-and-off", unknownFacts.escapeRoute]);
    expect(rests({ hears: undefined, use: "sanitary" }, "soundSensitivity")).toEqual([
      "off",
      unknownFacts.hears,
    ]);
    expect(rests({ hears: true, fanNear: undefined, use: "sanitary" }, "soundSensitivity")).toEqual([
      "medium",
      unknownFacts.fanNear,
    ]);
    expect(rests({}, "mode")).toEqual(["semi-automatic", undefined]);
    expect(rests({ daylight: false }, "mode")).toEqual(["automatic", undefined]);
  });
  test("what is derived never contradicts itself", () => {
    const known = [true, false, undefined] as const;
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
      for (const daylight of known)
        for (const hasButton of known)
          for (const fanNear of known)
            for (const escapeRoute of known) {
              const read = daylight ? 200 : undefined;
              const given = { use, daylight, hasButton, fanNear, escapeRoute, hears: true, masks: 1 };
              expect(codes(set({ ...given, thresholdFromReadings: read }))).toEqual([]);
            }
  });
});

describe("conflicts", () => {
  test.each<[string, Given, ChosenSettings]>([
    ["threshold-without-daylight", { daylight: false }, { threshold: 200 }],
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
    ["slaves-without-master", { group: { id: "g", role: "slave" } }, {}],
    ["absence-control-maybe-dark", { use: "passing", daylight: undefined }, { mode: "semi-automatic" }],
    ["setting-not-proven", { hasButton: undefined }, { mode: "semi-automatic" }],
    ["setting-not-proven", { daylight: undefined }, { threshold: 200 }],
    ["setting-not-proven", { hears: undefined }, { soundSensitivity: "low" }],
    ["setting-not-proven", { hears: true, fanNear: undefined }, { soundSensitivity: "low" }],
  ])("%s", (code, context, chosen) => {
    expect(codes(set(context, chosen))).toEqual([code]);
  });
  test("the roles of a group: one switches, slaves do not look at the light", () => {
    const part = (role: SettingContext["group"]["role"], chosen: ChosenSettings = {}) =>
      set({ group: { id: "g", role } }, chosen);
    expect(codes(part("master"), part("slave"))).toEqual([]);
    expect(codes(part("master"), part("slave", { threshold: 200 }))).toEqual(["threshold-on-slave"]);
    expect(codes(part("master"), part("master"))).toEqual(["several-masters"]);
    expect(codes(part("parallel"), part("parallel", { groupRole: "alone" }))).toEqual([
      "alone-on-shared-load",
    ]);
    expect(codes(part("parallel", { groupRole: "slave" }), part("slave"))).toEqual(["slaves-without-master"]);
  });
  test("a finding says in which room and where on the plan it belongs", () => {
    const [finding] = settingConflicts([
      set({ place: { room: "r1", at: [2, 3] }, daylight: false }, { threshold: 200 }),
    ]);
    expect(finding).toMatchObject({ room: "r1", at: [2, 3], records: ["d"] });
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
