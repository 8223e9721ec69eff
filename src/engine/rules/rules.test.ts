import { describe, expect, test } from "vitest";
import { english } from "../check/index.ts";
import { sources } from "../source/index.ts";
import {
  evaluateRules,
  longestDelayAllowed,
  packsInForce,
  type RuleFacts,
  type RulePack,
  ruleMeasures,
  shippedPacks,
} from "./index.ts";

const pack = (code: string): RulePack => shippedPacks.find((one) => one.code === code)!;
const facts = (given: Partial<RuleFacts>): RuleFacts => ({
  room: "r",
  title: "Room",
  measures: {},
  ...given,
});
const verdicts = (code: string, given: Partial<RuleFacts>): Record<string, string> =>
  Object.fromEntries(
    evaluateRules([pack(code)], facts(given)).map(({ rule, check }) => [rule, check.verdict]),
  );

describe("energy conservation code 2021 [IECC-2021]", () => {
  test("an enclosed office passes at 20 min and fails a second later", () => {
    const measures = { "off-delay": 1200, "automatic-on-share": 0.5, "manual-off": 1 };
    expect(verdicts("iecc-2021", { spaces: ["office-enclosed"], measures })).toEqual({
      "off-delay": "pass",
      "automatic-on": "pass",
      "manual-off": "pass",
    });
    const late = verdicts("iecc-2021", {
      spaces: ["office-enclosed"],
      measures: { ...measures, "off-delay": 1201, "automatic-on-share": 1 },
    });
    expect(late).toEqual({ "off-delay": "fail", "automatic-on": "fail", "manual-off": "pass" });
  });
  test("300 ft² limit only the last item of the list: a large store is still listed", () => {
    expect(
      verdicts("iecc-2021", { spaces: ["storage"], area: 500, measures: { "off-delay": 1800 } })["off-delay"],
    ).toBe("fail");
    expect(verdicts("iecc-2021", { spaces: ["other"], area: 28, measures: { "off-delay": 1800 } })).toEqual(
      {},
    );
    expect(verdicts("iecc-2021", { spaces: ["other"], area: 27.8, measures: { "off-delay": 1800 } })).toEqual(
      {
        "off-delay-small-room": "fail",
      },
    );
  });
  test("an open office of 300 ft² and more has zones of 600 ft², falling to 20 %", () => {
    const measures = { "off-delay": 1200, "switched-area": 55.75, "vacant-share": 0.21 };
    expect(verdicts("iecc-2021", { spaces: ["office-open"], area: 200, measures })).toEqual({
      "open-office-delay": "pass",
      "open-office-zone": "fail",
      "open-office-vacant": "fail",
    });
    expect(
      verdicts("iecc-2021", {
        spaces: ["office-open"],
        area: 200,
        measures: { ...measures, "switched-area": 55.7 },
      })["open-office-zone"],
    ).toBe("pass");
    expect(Object.keys(verdicts("iecc-2021", { spaces: ["office-open"], area: 27, measures }))).toEqual([
      "off-delay-small-open-office",
    ]);
  });
  test("full automatic-on is allowed in restrooms; corridors fall to half", () => {
    expect(
      verdicts("iecc-2021", {
        spaces: ["restroom"],
        measures: { "off-delay": 600, "automatic-on-share": 1 },
      }),
    ).toEqual({ "off-delay": "pass" });
    expect(
      verdicts("iecc-2021", { spaces: ["corridor"], measures: { "off-delay": 600, "vacant-share": 0 } }),
    ).toEqual({ "corridor-delay": "pass", "corridor-vacant": "pass" });
  });
});

test("full off: 20 min, 5000 ft², 0.02 W/ft² [ASHRAE-90-1]", () => {
  const edge = { "off-delay": 1200, "switched-area": 464.5, "residual-power": 0.2152 };
  expect(verdicts("ashrae-90-1-full-off", { measures: edge })).toEqual({
    "off-delay": "pass",
    area: "pass",
    residual: "pass",
  });
  const above = { "off-delay": 1201, "switched-area": 464.6, "residual-power": 0.2154 };
  expect(verdicts("ashrae-90-1-full-off", { measures: above })).toEqual({
    "off-delay": "fail",
    area: "fail",
    residual: "fail",
  });
});

test("offices above 250 ft² have zones of at most 600 ft² [TITLE-24]", () => {
  expect(
    verdicts("title-24-2022", { spaces: ["office-open"], area: 23.3, measures: { "switched-area": 56 } }),
  ).toEqual({ "office-zone": "fail" });
  expect(
    verdicts("title-24-2022", { spaces: ["office-open"], area: 23.2, measures: { "switched-area": 56 } }),
  ).toEqual({});
});

describe("boundaries of the directive [EPBD-2024]", () => {
  test.each([
    [290_000, "2027-12-31", []],
    [290_001, "2027-12-31", ["large-plant"]],
    [290_001, "2027-12-30", []],
    [290_000, "2029-12-31", ["medium-plant"]],
    [70_000, "2029-12-31", []],
    [70_001, "2029-12-31", ["medium-plant"]],
  ])("%i W on %s", (plant, day, rules) => {
    expect(Object.keys(verdicts("epbd-2024", { plant, day, measures: { "automatic-control": 0 } }))).toEqual(
      rules,
    );
  });
});

test("what is not known is never a pass: not proven, with what is missing", () => {
  const results = evaluateRules([pack("iecc-2021")], facts({ measures: { "off-delay": 1800 } }));
  expect(results.length).toBeGreaterThan(5);
  for (const { check, problem } of results) {
    expect(check.verdict).toBe("not-proven");
    expect(problem!.code).toBe("rule-not-proven");
    expect(english(problem!.values.missing!)).toContain("kind of space");
  }
  const broken = evaluateRules([pack("ashrae-90-1-full-off")], facts({ measures: { "off-delay": 1800 } }));
  expect(broken[0]!.problem).toMatchObject({ code: "rule-not-met", room: "r" });
  expect(broken[1]!.check.verdict).toBe("not-proven");
});

test("met where nobody knows whether it applies is no pass", () => {
  const measures = { "off-delay": 60, "switched-area": 10, "vacant-share": 0 };
  const unknown = verdicts("iecc-2021", { measures });
  expect(Object.keys(unknown).length).toBeGreaterThan(5);
  expect(new Set(Object.values(unknown))).toEqual(new Set(["not-proven"]));
});

test("a use that leaves the kind of space open: in all of them it applies, in none it does not, else not proven", () => {
  const measures = { "off-delay": 60 };
  expect(verdicts("iecc-2021", { spaces: ["classroom", "storage"], measures })["off-delay"]).toBe("pass");
  expect(verdicts("iecc-2021", { spaces: ["corridor", "lobby"], measures })).toEqual({
    "corridor-delay": "not-proven",
    "corridor-vacant": "not-proven",
  });
  expect(verdicts("iecc-2021", { spaces: ["lobby", "stairway"], measures })).toEqual({});
});

test("the longest delay is the strictest that surely applies", () => {
  const allowed = longestDelayAllowed(shippedPacks, facts({ spaces: ["restroom"] }));
  expect(allowed).toMatchObject({ delay: 1200, rule: { clause: "C405.2.1.1" } });
  expect(longestDelayAllowed([pack("iecc-2021")], facts({}))).toBeUndefined();
});

test("the title of a firm's own rule is what was checked, word for word", () => {
  const iecc = pack("iecc-2021");
  const title = "Off within 15 min";
  const own: RulePack = { ...iecc, rules: iecc.rules.slice(0, 1).map((rule) => ({ ...rule, title })) };
  const measures = { "off-delay": 1200 };
  const [result] = evaluateRules([own], facts({ spaces: ["office-enclosed"], measures }));
  expect(result?.check.what).toEqual({ text: "{0}", values: [title] });
});

test("every pack is whole: codes once, sources known, what comes from memory off with its reason", () => {
  expect(new Set(shippedPacks.map(({ code }) => code)).size).toBe(shippedPacks.length);
  for (const { rules, source, onByDefault, whyOff } of shippedPacks) {
    expect(source in sources).toBe(true);
    expect(new Set(rules.map(({ code }) => code)).size).toBe(rules.length);
    for (const { limit } of rules) expect(limit.measure in ruleMeasures).toBe(true);
    if (rules.some(({ certainty }) => certainty === "from-memory")) expect(onByDefault).toBe(false);
    expect(onByDefault).toBe(whyOff === undefined);
  }
});

test("packs: a person's switch comes first, then the region; memory packs stay off with their reason", () => {
  const on = (job: Parameters<typeof packsInForce>[1]): readonly string[] =>
    packsInForce(shippedPacks, job).flatMap(({ pack, on }) => (on ? [pack.code] : []));
  expect(on({})).toEqual([]);
  expect(on({ region: "Europe" })).toEqual([]);
  expect(on({ region: "united states" })).toEqual(["iecc-2021", "ashrae-90-1-full-off"]);
  expect(on({ region: "California, USA" })).toEqual(["iecc-2021", "ashrae-90-1-full-off", "title-24-2022"]);
  expect(on({ region: "USA", off: ["iecc-2021"], on: ["epbd-2024"] })).toEqual([
    "ashrae-90-1-full-off",
    "epbd-2024",
  ]);
  const epbd = packsInForce(shippedPacks, { region: "Europe" }).find(({ pack }) => pack.code === "epbd-2024");
  expect(epbd).toMatchObject({ on: false, why: epbd?.pack.whyOff });
  for (const { why } of packsInForce(shippedPacks, {})) expect(english(why)).toMatch(/^[A-Z].*\.$/);
});
