import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  luminaireLike,
  obstacleLike,
  roomLike,
  roundModel,
  siteLike,
  sourceLike,
} from "../../../../test/engine/records.ts";
import { english } from "../../check/index.ts";
import { packsInForce, type RulePack, shippedPacks } from "../../rules/index.ts";
import { type SettingName, unknownFacts } from "../../settings/index.ts";
import type { Detector, Obstacle, Room, Site } from "../../site/index.ts";
import { type SettingChoices, settingsOfSite } from "../index.ts";

const office = roomLike({ id: "office", name: "Office", use: "sitting", outline: box(0, 0, 4, 3) });
const corridor = roomLike({
  id: "corridor",
  name: "Corridor",
  use: "passing",
  escapeRoute: false,
  outline: box(0, 3, 12, 2),
});
const window = doorLike({ id: "w", kind: "window", rooms: ["office", null], from: [0, 1], to: [0, 2] });
const b1 = detectorLike({ id: "b1", room: "office", at: [2, 1.5] });
const row = (room: string, count: number, given: object = {}) =>
  Array.from({ length: count }, (_, i) => luminaireLike({ id: `${room}-${i}`, room, at: [i, 4], ...given }));
const lighting: SettingChoices["installation"] = {
  boards: [],
  circuits: [
    {
      id: "l1",
      name: "Lighting 1",
      breaker: "B",
      rcd: "unknown",
      protectiveConductor: "unknown",
      sharedNeutral: "unknown",
    },
  ],
};

const settled = (site: Partial<Site> & { readonly rooms: readonly Room[] }, choices: SettingChoices = {}) =>
  settingsOfSite(siteLike(site), choices);
const codes = (result: ReturnType<typeof settled>): readonly string[] =>
  result.findings.map(({ code }) => code);
const contextOf = (site: Partial<Site>, choices: SettingChoices = {}) =>
  settled({ rooms: [office], detectors: [b1], ...site }, choices).devices[0]!.context;

describe("what the site says of the place", () => {
  test("a survey of outlines alone: what nobody entered stays unknown, and every derived value that rests on it says so", () => {
    const { devices, rooms, findings } = settled({ rooms: [office], detectors: [b1] });
    const [{ context, settings }] = devices as [(typeof devices)[number]];
    for (const fact of ["escapeRoute", "daylight", "hasButton", "fanNear"])
      expect(fact in context).toBe(false);
    expect(context).toMatchObject({ tag: "B1", room: "Office", use: "sitting", hears: false, masks: 0 });
    expect(settings.mode).toMatchObject({ value: "automatic", assumption: unknownFacts.button });
    expect(settings.threshold).toMatchObject({ value: "off", assumption: unknownFacts.daylight });
    expect(rooms).toEqual([]);
    expect(findings).toEqual([]);
  });
  test("daylight: a window to the outside, sun through one, or a person's word, which comes first", () => {
    expect(contextOf({ openings: [window] }).daylight).toBe(true);
    expect(contextOf({ openings: [{ ...window, rooms: ["office", "corridor"] }] }).daylight).toBe(undefined);
    const sun = sourceLike({ id: "s", room: "office", kind: "sunlit-window", at: [0, 1] });
    expect(contextOf({ interference: [sun] }).daylight).toBe(true);
    expect(contextOf({ rooms: [{ ...office, daylight: false }], openings: [window] }).daylight).toBe(false);
    expect(contextOf({ rooms: [{ ...office, daylight: false }] }).daylight).toBe(false);
  });
  test("a detector over several rooms: one window is daylight, all have to be without for none; the more careful use counts", () => {
    const both = [{ ...b1, controls: ["office", "corridor"] }];
    const rooms = [
      { ...office, daylight: false },
      { ...corridor, escapeRoute: true },
    ];
    expect(contextOf({ rooms, detectors: both })).toMatchObject({ use: "sitting", escapeRoute: true });
    expect(contextOf({ rooms, detectors: both }).daylight).toBe(undefined);
    const dark = rooms.map((room) => ({ ...room, daylight: false }));
    expect(contextOf({ rooms: dark, detectors: both }).daylight).toBe(false);
  });
  test("a button counts once it is planned and the data sheet takes one; a data sheet without an input rules it out", () => {
    const button = { id: "k", room: "office", kind: "push-button", at: [1, 0], height: 1.1 } as const;
    const taking = [roundModel({ inputs: { pushButton: "line" } })];
    const planned = [{ ...button, planned: "button" }] as const;
    expect(contextOf({ switches: planned, models: taking }).hasButton).toBe(true);
    expect(contextOf({ switches: planned }).hasButton).toBe(undefined);
    expect(contextOf({ switches: [button], models: taking }).hasButton).toBe(undefined);
    expect(contextOf({ switches: [{ ...button, planned: "removed" }], models: taking }).hasButton).toBe(
      false,
    );
    expect(contextOf({ switches: planned, models: [roundModel({ inputs: {} })] }).hasButton).toBe(false);
    const elsewhere = [{ ...button, planned: "button", detectors: ["b9"] }] as const;
    expect(contextOf({ switches: elsewhere, models: taking }).hasButton).toBe(false);
    expect(contextOf({ switches: [{ ...elsewhere[0], detectors: ["b1"] }], models: taking }).hasButton).toBe(
      true,
    );
  });
  test("sound: heard where the data sheet declares a reach; an air outlet within it is a fan near by, a far one leaves it open", () => {
    const model = roundModel({
      zones: { towards: [{ height: 2.7, radius: 4 }], sound: [{ height: 2.7, radius: 3 }] },
    });
    const outlet = (x: number) => [
      sourceLike({ id: "o", room: "office", kind: "air-outlet", at: [2 + x, 1.5] }),
    ];
    expect(contextOf({ models: [model] })).toMatchObject({ hears: true });
    expect(contextOf({ models: [model], interference: outlet(2.9) }).fanNear).toBe(true);
    expect(contextOf({ models: [model], interference: outlet(3.1) }).fanNear).toBe(undefined);
    expect(contextOf({ models: [] }).hears).toBe(undefined);
  });
});

describe("groups", () => {
  const b2 = detectorLike({ id: "b2", room: "corridor", at: [3, 4] });
  const b3 = detectorLike({ id: "b3", room: "corridor", at: [9, 4] });
  const roles = (detectors: readonly Detector[], given: Partial<Site> = {}, choices: SettingChoices = {}) =>
    settled({ rooms: [office, corridor], detectors, ...given }, choices).devices.map(
      ({ context }) => context.group.role,
    );
  test("outputs joined by the wiring are parallel; with no load on record joining is an assumption", () => {
    const luminaires = row("corridor", 8, { circuit: "Lighting 1" });
    const { devices } = settled(
      { rooms: [office, corridor], detectors: [b1, b2, b3], luminaires },
      { installation: lighting },
    );
    expect(devices.map(({ context }) => context.group.role)).toEqual(["alone", "parallel", "parallel"]);
    expect(english(devices[1]!.context.group.reason ?? "")).toBe(
      "Its contact is joined with that of B3; the longest delay wins.",
    );
    expect("assumption" in devices[1]!.context.group).toBe(false);
    const guessed = settled({ rooms: [corridor], detectors: [b2, b3] }).devices;
    expect(guessed.map(({ context }) => context.group.role)).toEqual(["parallel", "parallel"]);
    const { groupRole } = guessed[0]!.settings;
    expect(groupRole.kind === "derived" && english(groupRole.assumption ?? "")).toMatch(/not entered/);
  });
  test("detectors of one room on loads of their own are alone", () => {
    const luminaires = row("corridor", 2, { circuit: "Lighting 1" });
    const parted = [
      { ...b2, luminaires: ["corridor-0"] },
      { ...b3, luminaires: ["corridor-1"] },
    ];
    expect(roles(parted, { luminaires }, { installation: lighting })).toEqual(["alone", "alone"]);
  });
  test("one that only signals is the slave of the one that switches its room", () => {
    expect(roles([b2, { ...b3, output: "signals" }])).toEqual(["master", "slave"]);
    expect(codes(settled({ rooms: [corridor], detectors: [{ ...b3, output: "signals" }] }))).toEqual([
      "slaves-without-master",
    ]);
  });
  test("a chosen master makes slaves of the others, and a chosen slave leaves a master", () => {
    const chosen = (id: string, groupRole: "master" | "slave"): SettingChoices => ({
      chosen: new Map([[id, { groupRole }]]),
    });
    expect(roles([b2, b3], {}, chosen("b2", "master"))).toEqual(["parallel", "slave"]);
    expect(roles([b2, b3], {}, chosen("b3", "slave"))).toEqual(["master", "parallel"]);
    for (const choice of [chosen("b2", "master"), chosen("b3", "slave")])
      expect(codes(settled({ rooms: [corridor], detectors: [b2, b3] }, choice))).toEqual([]);
  });
  test("different delays on one load are a finding at the place of the first", () => {
    const choices = { chosen: new Map([["b2", { offDelay: 60 }]]) };
    const { findings } = settled({ rooms: [corridor], detectors: [b2, b3] }, choices);
    expect(findings).toMatchObject([
      { code: "parallel-delays-differ", room: "corridor", at: [3, 4], records: ["b2", "b3"] },
    ]);
  });
});

describe("readings and timers", () => {
  const read = { target: 500, lampsOff: [{ ceiling: 96, task: 320 }], sunPatch: false };
  test("readings give a derived threshold, and show that there is daylight; lamps on less the last reading without is the lamps alone", () => {
    const { devices, findings } = settled(
      { rooms: [office], detectors: [b1] },
      { readings: new Map([["b1", { ...read, lampsOn: { ceiling: 217, task: 870 } }]]) },
    );
    expect(devices[0]!.settings.threshold).toMatchObject({ kind: "derived", source: "CEILING-READING" });
    expect(devices[0]!.settings.threshold.value).toBeCloseTo(150, 10);
    expect(devices[0]!.threshold).toMatchObject({ off: expect.closeTo(271, 10) });
    expect(findings.map(({ code, records }) => [code, ...records])).toEqual([
      ["threshold-few-readings", "b1"],
    ]);
  });
  test("readings that cannot carry one are refused with their sentence, and the threshold stays off", () => {
    const choices = { readings: new Map([["b1", { ...read, sunPatch: true }]]) };
    const result = settled({ rooms: [office], detectors: [b1] }, choices);
    expect(codes(result)).toEqual(["threshold-sun-patch"]);
    expect(result.devices[0]!.settings.threshold).toMatchObject({ value: "off" });
  });
  test("a timer makes the output pulse", () => {
    const choices = { timers: new Map([["b1", { time: 180 }]]) };
    expect(settled({ rooms: [office], detectors: [b1] }, choices).devices[0]!.settings.impulse.value).toEqual(
      { pulse: 1, pause: 9 },
    );
  });
});

describe("rules", () => {
  const us = packsInForce(shippedPacks, { region: "United States" }).flatMap(({ pack, on }) =>
    on ? [pack] : [],
  );
  const b2 = detectorLike({ id: "b2", room: "corridor", at: [3, 4] });
  const walk = (choices: SettingChoices = {}, given: Partial<Site> = {}) =>
    settled({ rooms: [corridor], detectors: [b2], ...given }, { packs: us, ...choices });
  const verdict = (result: ReturnType<typeof walk>, pack: string, rule: string) =>
    result.rooms[0]!.results.find((one) => one.pack === pack && one.rule === rule)?.check;

  test("a delay above the code is said once, at the device; the result of the rule fails with its figures", () => {
    const chosen = new Map([["b2", { offDelay: 1800 }]]);
    const result = walk({ chosen });
    expect(
      codes(result).filter((code) => !code.endsWith("not-proven") && code !== "rule-facts-missing"),
    ).toEqual(["delay-above-rule"]);
    expect(verdict(result, "ashrae-90-1-full-off", "off-delay")).toMatchObject({
      verdict: "fail",
      actual: 1800,
      limit: 1200,
    });
    expect(verdict(walk(), "ashrae-90-1-full-off", "off-delay")).toMatchObject({
      verdict: "pass",
      actual: 300,
    });
  });
  test("a pack that allows less than the usual delay shortens the derived one, and is its reason", () => {
    const own: RulePack = {
      code: "own",
      title: "House rules",
      jurisdiction: "Here",
      edition: "1",
      source: "OWN-RULES",
      onByDefault: true,
      rules: [
        {
          code: "short",
          clause: "2",
          title: "Off within 1 min",
          when: {},
          limit: { measure: "off-delay", most: 60 },
          certainty: "own",
        },
      ],
    };
    const { offDelay } = walk({ packs: [own] }).devices[0]!.settings;
    expect(offDelay).toMatchObject({ kind: "derived", value: 60, source: "OWN-RULES" });
    expect(offDelay.kind === "derived" && english(offDelay.reason)).toBe(
      "The longest that House rules 1, 2 allows.",
    );
    expect(offDelay).not.toHaveProperty("assumption");
  });
  test("whether a passing room is a corridor or a lobby nobody knows: its corridor rule is not proven, never passed", () => {
    expect(verdict(walk(), "iecc-2021", "corridor-delay")).toMatchObject({ verdict: "not-proven" });
  });
  test("what stays on is known only where every luminaire's circuit is; one that no output switches counts", () => {
    const residual = (luminaires: Site["luminaires"], detectors: readonly Detector[] = [b2]) =>
      verdict(
        walk({ installation: lighting }, { luminaires, detectors }),
        "ashrae-90-1-full-off",
        "residual",
      );
    expect(residual([])).toMatchObject({ verdict: "not-proven" });
    expect(residual(row("corridor", 4))).toMatchObject({ verdict: "not-proven" });
    const fed = row("corridor", 4, { circuit: "Lighting 1", power: 24 });
    expect(residual(fed)).toMatchObject({ verdict: "pass", actual: 0 });
    const three = { ...b2, luminaires: ["corridor-0", "corridor-1", "corridor-2"] };
    expect(residual(fed, [three])).toMatchObject({ verdict: "fail", actual: 24 / 24 });
  });
  test("of a room without a detector only automatic control is asked", () => {
    const packs = shippedPacks.map((pack) => ({
      ...pack,
      rules: pack.rules.map((rule) =>
        rule.limit.measure === "automatic-control" ? { ...rule, when: {} } : rule,
      ),
    }));
    const result = settled({ rooms: [corridor] }, { packs });
    expect(new Set(result.rooms[0]!.results.map(({ pack }) => pack))).toEqual(new Set(["epbd-2024"]));
    expect(codes(result)[0]).toBe("rule-not-met");
  });
});

test("every derived setting of every device has the reason of its own sentence", () => {
  const { devices } = settled({ rooms: [office, corridor], detectors: [b1] });
  const names = Object.keys(devices[0]!.settings) as SettingName[];
  expect(names.length).toBe(12);
  for (const name of names) {
    const setting = devices[0]!.settings[name];
    expect(setting.kind === "derived" && english(setting.reason)).toMatch(/^[A-Z].*\.$/);
  }
});

test("cubicles in what a detector lights lengthen its delay: who sits behind their walls is seen by nothing for minutes", () => {
  const toilets = roomLike({ id: "wc", use: "sanitary", outline: box(0, 0, 4, 3) });
  const delay = (obstacles: readonly Obstacle[]): number =>
    settingsOfSite(
      siteLike({
        rooms: [toilets],
        detectors: [detectorLike({ id: "d", room: "wc", at: [2, 1.5] })],
        obstacles,
      }),
    ).devices[0]!.settings.offDelay.value;
  const cubicle = obstacleLike({
    id: "c",
    room: "wc",
    kind: "cubicle",
    footprint: box(0, 1.8, 1, 0.05),
    top: 2,
  });
  expect([delay([]), delay([cubicle]), delay([{ ...cubicle, kind: "furniture" }])]).toEqual([600, 900, 600]);
});
