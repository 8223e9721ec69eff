import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { english, sentenceOf } from "../check/index.ts";
import type { Detector } from "../site/index.ts";
import { mountingChecks, mountingsOf } from "./mounting.ts";
import { detector, installation, model, room, site } from "./of-site/of-site.fixture.ts";
import { reviewWiring } from "./of-site/review-wiring.ts";
import { wetZones } from "./wet-zones.ts";

const panel = {
  fixing: "ceiling-panel",
  depth: 0.08,
  cutOut: 0.068,
  ceilingThickness: { min: 0.005, max: 0.025 },
} as const;
const device = { tag: "B1", id: "d1" };
const verdicts = (
  own: Parameters<typeof mountingChecks>[0],
  ceiling: Parameters<typeof mountingChecks>[1],
): readonly string[] => mountingChecks(own, ceiling, device).map(({ verdict }) => verdict);
const codes = (own: Partial<typeof model>, more: object = {}, hung: Partial<Detector> = {}) =>
  reviewWiring(
    site({
      models: [{ ...model, ...own }],
      rooms: [{ ...room, ...more }],
      detectors: [detector("d1", hung)],
    }),
    installation(),
  )!.problems.map(({ code }) => code);

describe("a device in its ceiling", () => {
  test("through a panel: depth and thickness against the ceiling; what nobody measured is not proven", () => {
    expect(verdicts(panel, { thickness: 0.0125, voidHeight: 0.2 })).toEqual(["pass", "pass"]);
    expect(verdicts(panel, { thickness: 0.03, voidHeight: 0.06 })).toEqual(["fail", "fail"]);
    expect(verdicts(panel, { thickness: 0.003, voidHeight: 0.2 })).toEqual(["pass", "fail"]);
    expect(verdicts(panel, {})).toEqual(["not-proven", "not-proven"]);
    const { cutOut: _, ...noCutOut } = panel;
    expect(verdicts(noCutOut, { thickness: 0.01, voidHeight: 0.2 })).toEqual(["pass", "pass", "not-proven"]);
  });
  test("in a box the depth of the boxes counts; on the surface nothing of the ceiling", () => {
    expect(verdicts({ fixing: "box", depth: 0.06 }, { boxDepth: 0.065 })).toEqual(["pass"]);
    expect(verdicts({ fixing: "box", depth: 0.06 }, { boxDepth: 0.05 })).toEqual(["fail"]);
    expect(verdicts({ fixing: "box", depth: 0.06 }, { voidHeight: 0.5 })).toEqual(["not-proven"]);
    expect(verdicts({ fixing: "surface" }, {})).toEqual([]);
  });
  test("a fixing that nobody entered leaves the mounting unproven", () => {
    expect(verdicts({}, { thickness: 0.01, voidHeight: 0.2 })).toEqual(["not-proven"]);
  });
  test("the cut-out stays clear of the bars of the ceiling grid, whichever way the grid is turned", () => {
    const toBar = (at: readonly [number, number], turn: number): number | undefined =>
      mountingsOf({
        rooms: [{ ...room, ceilingGrid: { tile: [0.6, 0.6], origin: [1, 1], turn } }],
        models: [model],
        detectors: [detector("d1", { at })],
      })[0]!.ceiling.toBar;
    expect(toBar([1.3, 1.3], 0)).toBeCloseTo(0.3, 9);
    expect(toBar([1.02, 4.9], 0)).toBeCloseTo(0.02, 9);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.59, noNaN: true }),
        fc.double({ min: 0.01, max: 0.59, noNaN: true }),
        fc.integer({ min: -8, max: 8 }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (u, v, tile, turn) => {
          const [x, y] = [u + tile * 0.6, v - tile * 0.6];
          const at = [
            1 + Math.cos(turn) * x - Math.sin(turn) * y,
            1 + Math.sin(turn) * x + Math.cos(turn) * y,
          ] as const;
          expect(toBar(at, turn)).toBeCloseTo(Math.min(u, 0.6 - u, v, 0.6 - v), 9);
        },
      ),
      { seed: 41, numRuns: 200 },
    );
    const clear = { thickness: 0.0125, voidHeight: 0.2 };
    // Half of 68 mm beside half of a bar of 24 mm: 34 + 12 = 46 mm from its middle.
    expect(verdicts(panel, { ...clear, toBar: 0.047 })).toEqual(["pass", "pass", "pass"]);
    expect(verdicts(panel, { ...clear, toBar: 0.045 })).toEqual(["pass", "pass", "fail"]);
    expect(verdicts(panel, { ...clear, toBar: 0.034 })).toEqual(["pass", "pass", "fail"]);
  });
});

describe("findings of a site", () => {
  test("a device that does not fit, one fixed as its sheet does not declare, and an entry without a seal", () => {
    const ceiling = { ceilingThickness: 0.0125, ceilingVoid: 0.06 };
    expect(codes(panel, ceiling)).toEqual(["detector-does-not-fit"]);
    expect(codes({}, {}, { fixing: "box" })).toContain("fixing-not-declared");
    expect(codes({ otherFixings: ["box"] }, { ceilingBoxDepth: 0.05 }, { fixing: "box" })).toEqual([
      "wiring-not-proven",
    ]);
    expect(
      codes({ otherFixings: ["box"], depth: 0.04 }, { ceilingBoxDepth: 0.05 }, { fixing: "box" }),
    ).toEqual([]);
    expect(codes({ entrySeal: "none" }, { wet: true })).toEqual(["cable-entry-open"]);
    expect(codes({ entrySeal: "grommet" }, { wet: true })).toEqual([]);
    expect(codes({}, { wet: true })).toEqual(["wiring-not-proven"]);
  });
  test("of rooms that are often wet somebody has to say; a seal, or that they are dry, settles it", () => {
    const told = (entrySeal: "none" | "grommet" | undefined, more: object) =>
      mountingsOf({
        rooms: [{ ...room, ...more }],
        models: [{ ...model, fixing: "surface" as const, ...(entrySeal === undefined ? {} : { entrySeal }) }],
        detectors: [detector("d1")],
      })[0]!.checks.map(({ verdict, missing }) => [verdict, ...missing!.map(english)]);
    const wet = "whether water may splash in the room";
    for (const use of ["sanitary", "changing", "plant"]) {
      expect(told("none", { use })).toEqual([["not-proven", wet]]);
      expect(told(undefined, { use })).toEqual([
        ["not-proven", wet, "the seal of its cable entry, from its data sheet"],
      ]);
      expect(told("grommet", { use })).toEqual([]);
      expect(told("none", { use, wet: false })).toEqual([]);
    }
    expect(told("none", { use: "sitting" })).toEqual([]);
  });
  test("ceilings that nobody measured are one note for all devices", () => {
    const { problems } = reviewWiring(
      site({ models: [{ ...model, ...panel }], detectors: [detector("d1"), detector("d2", { at: [2, 2] })] }),
      installation(),
    )!;
    const open = problems.filter(({ code }) => code === "wiring-not-proven");
    expect(open.map(sentenceOf)).toEqual([
      "Not proven for D1 and D2: depth above the ceiling.",
      "Not proven for D1 and D2: thickness of the ceiling.",
    ]);
  });
  test("a fire-rated ceiling with a tested cover and sealed holes is not left open", () => {
    const ceiling = { fireRatedCeiling: true, ceilingThickness: 0.0125, ceilingVoid: 0.2 };
    expect(codes(panel, ceiling)).toEqual(["wiring-rule-not-proven", "wiring-rule-not-proven"]);
    expect(codes(panel, { ...ceiling, penetrationsSealed: true }, { testedCover: "yes" })).toEqual([]);
    expect(codes(panel, { ...ceiling, penetrationsSealed: true }, { testedCover: "no" })).toEqual([
      "fire-ceiling-open",
    ]);
  });
});

describe("zones of a bath or shower [V]: tops at the higher of 2.25 m or the highest fixed outlet", () => {
  const zone = (height: number, highestOutlet?: number, wetZone?: Detector["wetZone"]) =>
    wetZones(
      { id: "hall", ...(highestOutlet === undefined ? {} : { highestOutlet }) },
      [detector("d1", { height, ...(wetZone === undefined ? {} : { wetZone }) })],
      [],
    ).d1?.zone;
  test("above the tops is outside; without the outlet's height nothing is known", () => {
    expect(zone(2.5, 2.1)).toBe("outside");
    expect(zone(2.25, 2.1)).toBeUndefined();
    expect(zone(2.5, 2.5)).toBeUndefined();
    expect(zone(2.5)).toBeUndefined();
  });
  test("what somebody measured counts first", () => {
    expect([zone(2.1, 2.1, "2"), zone(2.5, 2.1, "1"), zone(2.1, 2.1, "outside")]).toEqual([2, 1, "outside"]);
  });
  test("below the tops the distance from baths and showers on the plan counts [M]: 0.6 m beside a tub, 1.2 m round an outlet", () => {
    const beside = (
      kind: "bath" | "shower",
      away: number,
      height = 2.2,
      radius = 0.3,
      highestOutlet?: number,
    ) =>
      wetZones(
        { id: "hall", ...(highestOutlet === undefined ? {} : { highestOutlet }) },
        [detector("d1", { at: [3 + away, 2], height })],
        [
          { room: "hall", kind, at: [3, 2], radius },
          { room: "elsewhere", kind: "bath", at: [3 + away, 2], radius: 1 },
        ],
      ).d1?.zone;
    expect(beside("bath", 0.9, 2.2, 1)).toBe(1);
    expect([1.59, 1.61].map((away) => beside("bath", away, 2.2, 1))).toEqual([2, "outside"]);
    // A tub of which only a place is entered may be larger than the place.
    expect([0.89, 0.91, 1.54, 1.56].map((away) => beside("bath", away))).toEqual([
      2,
      undefined,
      undefined,
      "outside",
    ]);
    expect([0.2, 0.89, 1.1, 1.25, 1.31].map((away) => beside("shower", away))).toEqual([
      1,
      "1 or 2",
      undefined,
      undefined,
      "outside",
    ]);
    // Within the extent and above 2.25 m: how high the zones reach is not known without the outlet.
    expect(beside("shower", 0.5, 2.5)).toBeUndefined();
    expect(beside("shower", 0.5, 2.5, 0.3, 2.6)).toBe("1 or 2");
    expect(beside("shower", 0.5, 2.5, 0.3, 2.1)).toBe("outside");
    expect(beside("shower", 2, 2.5)).toBe("outside");
  });
  test("a room with a shower on the plan is one, whatever else is entered; what rests on the extent from memory says so", () => {
    const sealed = { ...model, entrySeal: "gland" as const };
    const told = (away: number) => {
      const own = site({
        models: [sealed],
        detectors: [detector("d1", { at: [3 + away, 2], height: 2.2 })],
        dwellPlaces: [{ id: "s", room: "hall", kind: "shower", at: [3, 2], radius: 0.45 }],
      });
      const { problems, assumptions } = reviewWiring(own, installation())!;
      return {
        zones: problems.filter(({ code }) => code === "wet-room-unsafe").map(sentenceOf),
        taken: assumptions.filter(({ text }) => english(text).startsWith("Outside the zones")),
      };
    };
    expect(told(0.8).zones).toEqual([
      "Wet room, D1: a mains detector in zone 1 or 2, by an extent of the zones that is from memory: verify.",
    ]);
    expect(told(2)).toMatchObject({ zones: [], taken: [{ records: ["d1"] }] });
  });
  test("a wet changing room is proven with the outlet's height, and a detector in zone 2 fails", () => {
    const wet = { wet: true, use: "changing" as const };
    const sealed = { entrySeal: "gland" as const };
    expect(codes(sealed, wet)).toEqual(["wiring-rule-not-proven"]);
    expect(codes(sealed, { ...wet, highestOutlet: 2.1 })).toEqual([]);
    expect(codes(sealed, wet, { wetZone: "2" })).toEqual(["wet-room-unsafe"]);
  });
});
