import { describe, expect, test } from "vitest";
import { english } from "../check/index.ts";
import {
  type ChosenSettings,
  outputKindOf,
  type SettingContext,
  settingConflicts,
  settingsOf,
} from "./index.ts";

const device: SettingContext = {
  device: "d",
  tag: "B1",
  room: "Stair",
  use: "stair",
  escapeRoute: false,
  daylight: true,
  hasButton: false,
  hears: false,
  fanNear: false,
  masks: 0,
  outputKinds: ["switch", "two-level"],
  group: { id: "g", role: "alone" },
};
const output = (given: Partial<SettingContext>) => settingsOf({ ...device, ...given }).output;
const codes = (given: Partial<SettingContext>, chosen: ChosenSettings = {}) => {
  const context = { ...device, ...given };
  return settingConflicts([{ context, settings: settingsOf(context, chosen) }]).map(({ code }) => code);
};
const bare = (given: Partial<SettingContext> = {}): SettingContext => {
  const { outputKinds: _, ...rest } = { ...device, ...given };
  return rest;
};

describe("kind of output", () => {
  test("a stair falls to a background level of 10 %, unless each point is seen by two devices", () => {
    expect(output({}).value).toEqual({ background: 0.1 });
    expect(output({ seenByTwo: false }).value).toEqual({ background: 0.1 });
    expect(output({ seenByTwo: true }).value).toBe("switch");
  });
  test("so does an escape route without daylight; one whose windows nobody entered says what it takes for granted", () => {
    expect(output({ use: "passing", escapeRoute: true, daylight: false }).value).toEqual({ background: 0.1 });
    const { daylight: _, ...dark } = device;
    const unknown = settingsOf({ ...dark, use: "passing", escapeRoute: true }).output;
    expect(unknown).toMatchObject({ value: { background: 0.1 } });
    expect(unknown.kind === "derived" && english(unknown.assumption ?? "")).toBe(
      "No windows are entered for what it lights: taken as without daylight.",
    );
  });
  test("elsewhere the light is switched", () => {
    expect(output({ use: "passing", escapeRoute: true, daylight: true }).value).toBe("switch");
    expect(output({ use: "passing", escapeRoute: false, daylight: false }).value).toBe("switch");
    expect(output({ use: "sitting" }).value).toBe("switch");
  });
  test("a data sheet that does not know plain switching is taken at its word where no background is asked for", () => {
    const sitting = { use: "sitting" } as const;
    expect(output({ ...sitting, outputKinds: ["dimming-broadcast"] })).toMatchObject({
      kind: "derived",
      value: "dimming-broadcast",
    });
    expect(output({ ...sitting, outputKinds: ["two-level"] }).value).toEqual({ background: 0.1 });
    for (const only of ["dimming-broadcast", "two-level", "switch"] as const)
      expect(codes({ ...sitting, outputKinds: [only] })).toEqual([]);
    expect(codes({ ...sitting, outputKinds: ["two-level"] }, { output: "switch" })).toEqual([
      "output-not-declared",
    ]);
    // A stair still asks for a background level that such a sheet does not declare.
    expect(codes({ outputKinds: ["dimming-broadcast"] })).toEqual(["output-not-declared"]);
  });
  test("a data sheet that knows an addressed bus alone is named as not covered", () => {
    expect(output({ outputKinds: ["addressed-bus"] })).toMatchObject({
      kind: "derived",
      value: "addressed-bus",
    });
    expect(codes({ outputKinds: ["addressed-bus"] })).toEqual(["addressed-bus-not-covered"]);
    expect(codes({}, { output: "addressed-bus" })).toEqual(["addressed-bus-not-covered"]);
  });
  test("what the data sheet does not declare is a fault, and not proven where it is silent", () => {
    expect(codes({})).toEqual([]);
    expect(codes({ outputKinds: ["switch"] })).toEqual(["output-not-declared"]);
    const context = bare();
    expect(settingConflicts([{ context, settings: settingsOf(context) }]).map(({ code }) => code)).toEqual([
      "setting-not-proven",
    ]);
    const room = bare({ use: "sitting" });
    expect(settingConflicts([{ context: room, settings: settingsOf(room) }])).toEqual([]);
  });
  test("a way that somebody lets go dark, and a background that is none", () => {
    expect(codes({}, { output: "switch" })).toEqual(["way-goes-dark"]);
    expect(codes({ seenByTwo: true }, { output: "switch" })).toEqual([]);
    expect(codes({}, { output: { background: 0.2 } })).toEqual([]);
    expect(codes({}, { output: { background: 0.1 } })).toEqual([]);
    expect(codes({}, { output: { background: 0.3 } })).toEqual(["background-level-unusual"]);
    expect(codes({}, { output: { background: 0.05 } })).toEqual(["background-level-unusual"]);
  });
  test("a level is the kind that data sheets call two-level", () => {
    expect([outputKindOf({ background: 0.15 }), outputKindOf("dimming-broadcast")]).toEqual([
      "two-level",
      "dimming-broadcast",
    ]);
  });
});
