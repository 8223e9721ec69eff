import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { english, entryOf, type ProblemCode, sentenceOf } from "../../check/index.ts";
import { wiringFindings } from "../findings.ts";
import type { Contactor, PushButton, WiringModel } from "../model.ts";
import { breaker, circuit, detector, load, row, segment } from "../wiring.fixture.ts";
import { joinedStates, mayBeJoined } from "./back-feed.ts";
import { joinedNumber, suppressorLeakage } from "./outputs.ts";
import { wiringRules } from "./rules.ts";

const other = { ...circuit, id: "other", name: "Lighting 2", device: "second" } as const;
const second = { ...breaker, id: "second", name: "F2" } as const;
const twoCircuits = { circuits: [circuit, other], devices: [breaker, second] } as const;
const button = (more: Partial<PushButton> = {}): PushButton => ({
  id: "s1",
  room: "room",
  detectors: ["d1"],
  kind: "push-button",
  feed: { kind: "line", circuit: "circuit", line: "L1" },
  ...more,
});
const contactor = (more: Partial<Contactor> = {}): Contactor => ({
  id: "q1",
  name: "Q1",
  coil: { switchedLine: "switched", current: 0.02, suppressor: "yes", cable: "yes" },
  main: { circuit: "circuit", switchedLine: "power", rated: 20 },
  labelled: "yes",
  isolatesAllPoles: "yes",
  ...more,
});
const coil = (more: { readonly cable?: "no" }) => ({
  contactors: [contactor({ coil: { switchedLine: "switched", suppressor: "yes", ...more } })],
});
const pair = (more: object): Partial<WiringModel> => ({
  detectors: [detector("d1", { role: "parallel" }), detector("d2", { role: "parallel", ...more })],
});
const room = row().rooms[0]!;
const line = row().switchedLines[0]!;
const escapeLight = (taken: "before-contact" | "after-contact" | "unknown", senses = "circuit") => ({
  loads: [...row().loads, load("em", { emergency: { taken, senses } })],
});
const signals = (withSignals: "not-separated" | "unknown") => ({
  segments: [segment("board", "e0", 5, { withSignals })],
});
const hung = (suspended: NonNullable<ReturnType<typeof segment>["suspended"]>) => ({
  segments: [segment("board", "e0", 5, { suspended })],
});
const shower = (more: object, zone?: 1 | "outside") => ({
  rooms: [{ ...room, use: "shower" as const, ...(zone ? { zones: { d1: zone } } : {}) }],
  detectors: [detector("d1", more)],
});
const fire = (more: object, sealed: "yes" | "no") => ({
  rooms: [{ ...room, fireRatedCeiling: "yes" as const, penetrationsSealed: sealed }],
  detectors: [detector("d1", more)],
});
const home = (rcd: typeof breaker.rcd) => {
  const { rcd: _, ...bare } = breaker;
  return {
    rooms: [{ ...room, household: "yes" as const }],
    devices: [rcd === undefined ? bare : { ...bare, rcd }],
  };
};

/** Rule, code, a change to the sound row that breaks it, and one that leaves it unproven. */
const cases: readonly (readonly [
  string,
  ProblemCode,
  Partial<WiringModel>,
  Partial<WiringModel> | undefined,
])[] = [
  [
    "W-01",
    "joined-outputs-two-feeds",
    pair({ line: { kind: "line", circuit: "circuit", line: "L2" } }),
    pair({ line: { kind: "unknown" } }),
  ],
  [
    "W-01",
    "joined-outputs-two-feeds",
    { ...twoCircuits, ...pair({ line: { kind: "line", circuit: "other", line: "L1" } }) },
    undefined,
  ],
  [
    "W-02",
    "neutral-borrowed",
    { ...twoCircuits, detectors: [detector("d1", { neutral: { kind: "neutral", circuit: "other" } })] },
    { circuits: [{ ...circuit, sharedNeutral: "unknown" }] },
  ],
  [
    "W-02",
    "neutral-borrowed",
    { circuits: [{ ...circuit, sharedNeutral: "yes" }] },
    { detectors: [detector("d1", { neutral: { kind: "unknown" } })] },
  ],
  [
    "W-02",
    "neutral-borrowed",
    {
      ...twoCircuits,
      switchedLines: [line, { ...line, id: "power", name: "S2" }],
      contactors: [contactor({ main: { circuit: "other", switchedLine: "power", rated: 20 } })],
      loads: row().loads.map((one) => ({ ...one, switchedLine: "power" })),
    },
    undefined,
  ],
  [
    "W-03",
    "not-the-line-switched",
    { detectors: [detector("d1", { breaks: "neutral" })] },
    { detectors: [(({ breaks, ...rest }) => rest)(detector("d1"))] },
  ],
  [
    "W-04",
    "no-permanent-supply",
    { detectors: [detector("d1", { line: { kind: "switched-line", switchedLine: "switched" } })] },
    { detectors: [detector("d1", { line: { kind: "unknown" } })] },
  ],
  ["W-05", "joined-contact-too-weak", pair({ contact: { kind: "relay", rated: { led: 1 } } }), undefined],
  [
    "W-06",
    "too-many-joined",
    { detectors: [1, 2, 3, 4, 5].map((i) => detector(`d${i}`)) },
    pair({ contact: { kind: "relay", rated: { led: 4 } } }),
  ],
  [
    "W-07",
    "button-wired-wrong",
    { buttons: [button({ kind: "latching-switch" })] },
    { buttons: [button({ feed: { kind: "unknown" } })] },
  ],
  [
    "W-07",
    "button-wired-wrong",
    { buttons: [button({ feed: { kind: "line", circuit: "circuit", line: "L2" } })] },
    undefined,
  ],
  [
    "W-07",
    "button-wired-wrong",
    { buttons: [button({ feed: { kind: "neutral", circuit: "circuit" } })] },
    undefined,
  ],
  [
    "W-08",
    "glow-lamps-hold-input",
    { buttons: ["a", "b", "c"].map((id) => button({ id, glowLamp: { current: 0.0008, ownNeutral: "no" } })) },
    {
      buttons: [button({ glowLamp: { current: 0.0008, ownNeutral: "no" } })],
      detectors: [detector("d1", { inputs: { pushButton: "line" } })],
    },
  ],
  [
    "W-09",
    "coil-without-suppressor",
    { contactors: [contactor({ coil: { switchedLine: "switched", suppressor: "no" } })] },
    { contactors: [contactor({ coil: { switchedLine: "switched", suppressor: "unknown" } })] },
  ],
  [
    "W-10",
    "lamps-may-glow",
    { switchedLines: [{ ...line, suppressors: [{ across: "contact", capacitance: 1e-7 }] }] },
    { detectors: [detector("d1", { contact: { kind: "electronic", rated: { led: 4 } } })] },
  ],
  ["W-10", "lamps-may-glow", { switchedLines: [{ ...line, besideLine: 80 }] }, undefined],
  [
    "W-11",
    "contactor-two-supplies",
    {
      ...twoCircuits,
      contactors: [contactor({ main: { circuit: "other", switchedLine: "power" }, labelled: "no" })],
    },
    { contactors: [contactor({ coil: { switchedLine: "nowhere", suppressor: "yes" } })] },
  ],
  [
    "W-12",
    "star-neutral-broken",
    { circuits: [{ ...circuit, phases: "three-phase", lines: ["L1", "L2", "L3"] }] },
    {
      circuits: [{ ...circuit, phases: "three-phase", lines: ["L1", "L2", "L3"] }],
      devices: [(({ poles, ...rest }) => rest)(breaker)],
    },
  ],
  [
    "W-13",
    "no-isolator",
    { circuits: [{ ...circuit, isolator: "no" }] },
    { circuits: [{ ...circuit, isolator: "unknown" }] },
  ],
  ["W-14", "signals-not-separated", signals("not-separated"), signals("unknown")],
  ["W-15", "emergency-line-switched", escapeLight("after-contact"), escapeLight("unknown")],
  ["W-15", "emergency-line-switched", escapeLight("before-contact", "another"), undefined],
  [
    "W-16",
    "no-protective-conductor",
    { loads: [load("e0", { protectiveConductor: "no" })] },
    { detectors: [detector("d1", { protectiveConductor: "unknown" })] },
  ],
  [
    "W-17",
    "detectors-in-series",
    { detectors: [detector("d1", { inSeries: { with: "dimmer", declared: "no" } })] },
    { detectors: [detector("d1", { inSeries: { with: "detector", declared: "unknown" } })] },
  ],
  [
    "W-18",
    "override-wrong",
    { switchedLines: [{ ...line, override: "yes" }] },
    { rooms: [{ ...room, use: "electrical" }], switchedLines: [{ ...line, override: "unknown" }] },
  ],
  ["W-18", "override-missing", { rooms: [{ ...room, use: "plant" }] }, undefined],
  [
    "W-19",
    "detectors-leak-too-much",
    pair({ leakage: 0.006 }),
    { detectors: [detector("d1"), (({ leakage, ...rest }) => rest)(detector("d2"))] },
  ],
  [
    "W-20",
    "ceiling-cables-unsupported",
    hung({ ownSupport: "no", clearOfHeat: "yes" }),
    hung({ ownSupport: "yes", clearOfHeat: "unknown" }),
  ],
  [
    "W-20",
    "ceiling-cables-unsupported",
    hung({ ownSupport: "yes", clearOfHeat: "yes", fromSignals: 0.03 }),
    undefined,
  ],
  ["W-21", "wet-room-unsafe", shower({ waterProtection: 4 }, 1), shower({ waterProtection: 4 })],
  ["W-21", "wet-room-unsafe", shower({ waterProtection: 0 }, "outside"), shower({}, "outside")],
  ["W-22", "no-additional-protection", home("none"), home(undefined)],
  [
    "W-22",
    "no-additional-protection",
    { devices: [{ ...breaker, rcd: "none" }], segments: [segment("board", "e0", 5, { concealed: "yes" })] },
    undefined,
  ],
  ["W-23", "fire-ceiling-open", fire({ recessed: true, testedCover: "no" }, "yes"), fire({}, "yes")],
  ["W-23", "fire-ceiling-open", fire({ recessed: false }, "no"), undefined],
  ["W-24", "coil-cable-wrong", coil({ cable: "no" }), coil({})],
];

const codesOf = (model: WiringModel) => wiringFindings(model).map(({ code }) => code);
const openRules = (model: WiringModel) =>
  wiringFindings(model)
    .filter(({ code }) => code === "wiring-rule-not-proven")
    .map(({ values }) => values.rule);

describe("wiring rules", () => {
  test("a sound row breaks none and leaves none open", () => {
    expect(
      wiringRules.flatMap((rule) => rule.evaluate(row()).map((hit) => `${rule.id} ${hit.detail}`)),
    ).toEqual([]);
  });
  test("they are numbered W-01 to W-24 without a gap", () => {
    expect(wiringRules.map(({ id }) => id)).toEqual(
      Array.from({ length: 24 }, (_, i) => `W-${String(i + 1).padStart(2, "0")}`),
    );
  });
  test.each(cases)("%s is broken: %s", (id, code, change, open) => {
    expect(codesOf(row())).not.toContain(code);
    const broken = wiringFindings(row(change)).find((problem) => problem.code === code)!;
    expect(broken?.evidence?.[0]).toMatchObject({ verdict: "fail" });
    expect(sentenceOf(broken)).not.toContain("{");
    if (open) {
      expect(codesOf(row(open))).not.toContain(code);
      expect(openRules(row(open))).toContain(id);
    }
  });
  test("every rule has a case that breaks it", () => {
    expect([...new Set(cases.map(([id]) => id))]).toEqual(wiringRules.map(({ id }) => id));
  });
  test("common practice, no source: outputs of several devices are joined on one circuit, as many as declared without a word", () => {
    const joined = (count: number) =>
      codesOf(
        row({
          detectors: Array.from({ length: count }, (_, i) => detector(`d${i}`, { role: "parallel" })),
        }),
      ).filter((code) => code.startsWith("joined-outputs") || code === "too-many-joined");
    expect([2, 4, 5].map(joined)).toEqual([[], [], ["too-many-joined"]]);
  });
  test("custom alone breaks nothing: without a declared number any joined outputs are not proven, and above four custom is named", () => {
    const hits = (count: number) =>
      joinedNumber(
        row({
          detectors: Array.from({ length: count }, (_, i) =>
            detector(`d${i}`, { role: "parallel", contact: { kind: "relay", rated: { led: 4 } } }),
          ),
        }),
      ).map(({ verdict, detail }) => [verdict, english(detail)]);
    expect(hits(4)).toEqual([["not-proven", "how many outputs may be joined"]]);
    expect(hits(5)).toEqual([
      ["not-proven", "how many outputs may be joined (here 5; more than 4 are not customary)"],
    ]);
  });
  test("severities are those of the list: warnings are should, errors must", () => {
    const should = wiringRules
      .filter(({ code }) => entryOf({ code, values: {} }).severity === "should")
      .map(({ id }) => id);
    expect(should).toEqual(["W-05", "W-06", "W-08", "W-09", "W-10", "W-12", "W-15", "W-17", "W-18", "W-20"]);
    expect(entryOf({ code: "override-missing", values: {} }).severity).toBe("must");
  });
  test("a suppressor across the load is no cause of afterglow; a base load cures one across the contact", () => {
    const found = (more: object) =>
      codesOf(row({ switchedLines: [{ ...line, ...more }] })).includes("lamps-may-glow");
    expect(found({ suppressors: [{ across: "load", capacitance: 1e-7 }] })).toBe(false);
    expect(found({ suppressors: [{ across: "contact", capacitance: 1e-7 }], baseLoad: "yes" })).toBe(false);
    expect(1000 * suppressorLeakage(1e-7, { voltage: 230, frequency: 50 })).toBeCloseTo(7.23, 2);
  });
  test("a plant room with an override is as it must be", () => {
    const plant = row({
      rooms: [{ ...room, use: "plant" }],
      switchedLines: [{ ...line, override: "yes" }],
      detectors: [detector("d1", { waterProtection: 4 })],
    });
    expect(codesOf(plant).filter((code) => code.startsWith("override"))).toEqual([]);
  });
});

describe("back-feed, all four states", () => {
  const words = (states: ReturnType<typeof joinedStates>) =>
    states.map(({ first, second, node, ...rest }) =>
      [
        first[0],
        second[0],
        node.join("+"),
        ...Object.entries(rest)
          .filter(([, on]) => on)
          .map(([what]) => what),
      ].join(" "),
    );
  test("one line, one device: harmless", () => {
    expect(words(joinedStates({ line: "L1", device: "F1" }, { line: "L1", device: "F1" }))).toEqual([
      "o o ",
      "o c L1",
      "c o L1",
      "c c L1",
    ]);
  });
  test("two lines: back-feed with one closed, a short circuit with both", () => {
    expect(words(joinedStates({ line: "L1", device: "F1" }, { line: "L2", device: "F2" }))).toEqual([
      "o o ",
      "o c L2 liveFromOther",
      "c o L1 liveFromOther",
      "c c L1+L2 shortCircuit liveFromOther",
    ]);
  });
  test("one line, two devices: live after one is off, and paralleled", () => {
    expect(words(joinedStates({ line: "L1", device: "F1" }, { line: "L1", device: "F2" }))).toEqual([
      "o o ",
      "o c L1 liveFromOther",
      "c o L1 liveFromOther",
      "c c L1 liveFromOther paralleledDevices",
    ]);
  });
  test("joining is allowed just where line and device are the same, whichever comes first", () => {
    const feed = fc.record({ line: fc.constantFrom("L1", "L2", "L3"), device: fc.constantFrom("F1", "F2") });
    fc.assert(
      fc.property(
        feed as fc.Arbitrary<{ line: "L1" | "L2"; device: string }>,
        feed as fc.Arbitrary<{ line: "L1" | "L2"; device: string }>,
        (a, b) => {
          expect(mayBeJoined(a, b)).toBe(a.line === b.line && a.device === b.device);
          expect(mayBeJoined(b, a)).toBe(mayBeJoined(a, b));
        },
      ),
      { seed: 31, numRuns: 200 },
    );
  });
});
