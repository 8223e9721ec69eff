import { describe, expect, test } from "vitest";
import { english } from "../check/index.ts";
import {
  ambientFactor,
  ambientFactorByHeat,
  ampacityOf,
  currentCarryingCapacity,
  groupingFactor,
  harmonicFactor,
  insulationFactor,
} from "./capacity.ts";
import { circuitChecks } from "./circuit-checks.ts";
import {
  adiabaticSection,
  conventionalLength,
  disconnectionTime,
  largestEarthResistance,
  largestLoopImpedance,
  largestLoopReading,
  longestByLoop,
  loopResistance,
  withstand,
} from "./fault.ts";
import type { WiringModel } from "./model.ts";
import { ambientFactors, capacities } from "./tables/capacity.ts";
import { board, breaker, circuit, load, row, segment } from "./wiring.fixture.ts";

const cable = { material: "copper", insulation: "PVC", loaded: 2 } as const;
const bunched = (circuits: number) => ({ arrangement: "bunched", circuits }) as const;
const value = (found: ReturnType<typeof currentCarryingCapacity>) =>
  found.kind === "capacity" ? found.value : Number.NaN;

describe("current-carrying capacity", () => {
  test("check values [D]: 11.8755, 12.408 and 13.0065 A", () => {
    expect(
      value(
        currentCarryingCapacity({ ...cable, section: 1.5, method: "C", ambient: 40, grouping: bunched(3) }),
      ),
    ).toBeCloseTo(11.8755, 9);
    expect(
      value(
        currentCarryingCapacity({ ...cable, section: 1.5, method: "B2", ambient: 35, grouping: bunched(2) }),
      ),
    ).toBeCloseTo(12.408, 9);
    expect(
      value(
        currentCarryingCapacity({ ...cable, section: 2.5, method: "B2", ambient: 40, grouping: bunched(4) }),
      ),
    ).toBeCloseTo(13.0065, 9);
  });
  test("columns B2 and C of three loaded PVC agree with a second copy [V]", () => {
    const rows = capacities.rows.PVC[3];
    const column = (method: "B2" | "C") => [1.5, 2.5, 4, 6, 10, 16].map((section) => rows[section]![method]);
    expect(column("B2")).toEqual([15, 20, 27, 34, 46, 62]);
    expect(column("C")).toEqual([17.5, 24, 32, 41, 57, 76]);
  });
  test("every ambient factor is the heat balance within 0.01 [D]", () => {
    for (const insulation of ["PVC", "XLPE"] as const)
      for (const [temperature, factor] of ambientFactors.rows[insulation])
        expect(Math.abs(ambientFactorByHeat(insulation, temperature) - factor)).toBeLessThanOrEqual(0.0101);
  });
  test("between listed entries the worse neighbour counts; beyond the table nothing is guessed", () => {
    expect(groupingFactor("bunched", 10)).toBe(0.45);
    expect(groupingFactor("layer-on-wall", 12)).toBeUndefined();
    expect(ambientFactor("PVC", 37)).toBe(0.87);
    expect(ambientFactor("PVC", 61)).toBeUndefined();
    expect(insulationFactor(0.15)).toBe(0.63);
    expect(insulationFactor(2)).toBe(0.5);
    expect(harmonicFactor(0.15)).toBe(1);
    expect(harmonicFactor(0.3)).toBe(0.86);
    expect(harmonicFactor(0.4)).toBeCloseTo(0.86 / 1.2, 12);
    expect(
      currentCarryingCapacity({
        ...cable,
        material: "aluminium",
        section: 16,
        method: "C",
        ambient: 30,
        grouping: bunched(1),
      }).kind,
    ).toBe("unknown");
  });
  test("trap: two loaded conductors in method A1 carry 14.5 A, not the 13.5 A of three", () => {
    expect(capacities.rows.PVC[2][1.5]!.A1).toBe(14.5);
    expect(capacities.rows.PVC[3][1.5]!.A1).toBe(13.5);
  });
  test("14 AWG behind 15 A, 12 AWG behind 20 A at most [M]; six conductors count 80 % [V]", () => {
    expect(ampacityOf({ gauge: 14, terminals: 75, conductors: 3, ambient: 30 })).toEqual({
      ampacity: 20,
      device: 15,
    });
    expect(ampacityOf({ gauge: 12, terminals: 75, conductors: 6, ambient: 30 })!.ampacity).toBe(20);
    expect(ampacityOf({ gauge: 6, terminals: 75, conductors: 3, ambient: 30 })).toBeUndefined();
  });
});

describe("fault protection", () => {
  const loop = (type: "B" | "C" | "D", rating: number, voltageFactor = 0.95) => ({
    voltage: 230,
    type,
    rating,
    voltageFactor,
  });
  test.each([
    [6, 7.283, 5.827, 3.642, 2.913, 1.821, 1.457, 7.667],
    [10, 4.37, 3.496, 2.185, 1.748, 1.0925, 0.874, 4.6],
    [16, 2.731, 2.185, 1.366, 1.0925, 0.683, 0.546, 2.875],
    [20, 2.185, 1.748, 1.0925, 0.874, 0.546, 0.437, 2.3],
    [25, 1.748, 1.398, 0.874, 0.699, 0.437, 0.35, 1.84],
    [32, 1.366, 1.0925, 0.683, 0.546, 0.341, 0.273, 1.4375],
  ])("largest loop at %s A agrees with the table [D, V]", (rating, b, b8, c, c8, d, d8, plain) => {
    const tabulated = [b, b8, c, c8, d, d8, plain];
    const computed = [
      ...(["B", "C", "D"] as const).flatMap((type) => [
        largestLoopImpedance(loop(type, rating)),
        largestLoopReading(loop(type, rating), "four-fifths"),
      ]),
      largestLoopImpedance(loop("B", rating, 1)),
    ];
    // Half a unit of the third decimal: the table is printed to three.
    for (const [i, ohms] of computed.entries())
      expect(Math.abs(ohms - (tabulated[i] as number))).toBeLessThanOrEqual(0.00051);
  });
  test("two thirds of the plain value [M]: B10 3.067, B16 1.917, C10 1.533, C16 0.958 Ω", () => {
    const reading = (type: "B" | "C", rating: number) => largestLoopReading(loop(type, rating), "two-thirds");
    expect(reading("B", 10)).toBeCloseTo(3.067, 3);
    expect(reading("B", 16)).toBeCloseTo(1.917, 3);
    expect(reading("C", 10)).toBeCloseTo(1.533, 3);
    expect(reading("C", 16)).toBeCloseTo(0.958, 3);
  });
  test("trap: 120 V belongs to the lower band and 230 V to 0.4 s [V]", () => {
    const time = (voltage: number, system: "TN-S" | "TT" = "TN-S") =>
      disconnectionTime({ system, voltage, circuit: "final" });
    expect([time(120), time(120.1), time(230), time(230.1), time(277), time(400), time(401)]).toEqual([
      0.8, 0.4, 0.4, 0.2, 0.2, 0.2, 0.1,
    ]);
    expect([time(120, "TT"), time(230, "TT"), time(400, "TT"), time(500, "TT")]).toEqual([
      0.3, 0.2, 0.07, 0.04,
    ]);
    expect(disconnectionTime({ system: "TN-S", voltage: 230, circuit: "distribution" })).toBe(5);
    expect(disconnectionTime({ system: "IT", voltage: 230, circuit: "final" })).toBeUndefined();
  });
  test("trap: without the voltage factor the loop would be allowed 5 % more", () => {
    expect(largestLoopImpedance(loop("B", 10, 1)) / largestLoopImpedance(loop("B", 10))).toBeCloseTo(
      1 / 0.95,
      12,
    );
  });
  test("TT with 30 mA [D]: 1666.7 Ω", () => expect(largestEarthResistance(0.03)).toBeCloseTo(1666.67, 2));
  test("adiabatic [D]: 2.7498, 1.2649 and 5.2174 mm²", () => {
    const section = (amperes: number, seconds: number) =>
      adiabaticSection({ integral: amperes ** 2 * seconds, k: 115 });
    expect(section(1000, 0.1)).toBeCloseTo(2.7498, 4);
    expect(section(230, 0.4)).toBeCloseTo(1.2649, 4);
    expect(section(6000, 0.01)).toBeCloseTo(5.2174, 4);
  });
  test("withstand in A²s, not kA²s [D]", () => {
    expect([1, 1.5, 2.5, 4].map((s) => Math.round(withstand(s, 115)))).toEqual([13225, 29756, 82656, 211600]);
    expect([1.5, 2.5].map((s) => Math.round(withstand(s, 143)))).toEqual([46010, 127806]);
  });
  test.each([
    [1.5, "B", 6, 204.44],
    [1.5, "C", 6, 102.22],
    [1.5, "B", 10, 122.67],
    [1.5, "C", 10, 61.33],
    [1.5, "D", 10, 30.67],
    [1.5, "B", 16, 76.67],
    [1.5, "C", 16, 38.33],
    [2.5, "B", 16, 127.78],
    [2.5, "C", 16, 63.89],
  ] as const)("conventional length [D]: %s mm² %s%s is %s m", (section, type, rating, metres) => {
    expect(conventionalLength({ voltage: 230, section, protective: section, type, rating })).toBeCloseTo(
      metres,
      2,
    );
  });
  test("R1 + R2 [D; 36.2 V], trap: 1.5 with 1.0 is 30.2, 1.5 with 1.5 is 24.2 mΩ/m", () => {
    const milli = (line: number, earth: number) => 1000 * (loopResistance(line, earth) as number);
    expect(
      [milli(1, 1), milli(1.5, 1), milli(1.5, 1.5), milli(2.5, 1.5), milli(2.5, 2.5)].map(
        (x) => Math.round(100 * x) / 100,
      ),
    ).toEqual([36.2, 30.2, 24.2, 19.51, 14.82]);
  });
  test("length by the loop [D]: 63.19, 50.63, 138.43 m; published exercise [V] 185.6 m", () => {
    const length = (largest: number, earth: number) =>
      longestByLoop({ largest, external: 0.35, perMetre: loopResistance(1.5, earth)! });
    expect(length(2.185, 1.5)).toBeCloseTo(63.19, 2);
    expect(length(2.185, 1)).toBeCloseTo(50.63, 2);
    expect(length(4.37, 1.5)).toBeCloseTo(138.43, 2);
    expect((7.17 - 0.45) / loopResistance(1, 1)!).toBeCloseTo(185.6, 1);
    expect(longestByLoop({ largest: 0.2, external: 0.35, perMetre: 0.02 })).toBe(0);
  });
});

describe("checks of a circuit", () => {
  const verdicts = (model: WiringModel) =>
    Object.fromEntries(
      circuitChecks(model, "circuit").map(({ what, verdict }) => [
        english(what).split(" ").slice(0, 3).join(" "),
        verdict,
      ]),
    );
  const of = (model: WiringModel, code: string) =>
    circuitChecks(model, "circuit").filter((check) => check.code === code);

  test("a sound row passes everything", () => {
    expect(circuitChecks(row(), "circuit").filter(({ verdict }) => verdict !== "pass")).toEqual([]);
  });
  test("what was only taken for granted fails a circuit, and never passes one", () => {
    const { dropUsed: _, ...unmeasured } = board;
    const [drop] = of(row({ boards: [unmeasured] }), "voltage-drop-too-large");
    expect(drop).toMatchObject({ verdict: "not-proven" });
    expect(drop!.missing!.map(english)).toEqual(["the voltage drop already used up to the board"]);
    const far = row({
      boards: [unmeasured],
      segments: [segment("board", "e0", 300)],
      loads: [load("e0", { power: 2300 })],
    });
    expect(of(far, "voltage-drop-too-large")[0]).toMatchObject({ verdict: "fail" });
    for (const [field, missing] of [
      ["ambient", "the temperature of the air around the cable"],
      ["grouping", "how many loaded circuits lie beside it"],
      ["inInsulation", "how much of the cable lies in thermal insulation"],
    ] as const) {
      const segments = row().segments.map(({ [field]: _, ...one }) => one);
      const [cable] = of(row({ segments }), "cable-too-thin");
      expect(cable).toMatchObject({ verdict: "not-proven", missing: [{ text: missing }] });
      const [thin] = of(row({ segments, devices: [{ ...breaker, rating: 32 }] }), "cable-too-thin");
      expect(thin).toMatchObject({ verdict: "fail" });
    }
    const three = row({
      circuits: [{ ...circuit, phases: "three-phase", lines: ["L1", "L2", "L3"] }],
    });
    expect(of(three, "cable-too-thin")[0]).toMatchObject({
      verdict: "not-proven",
      missing: [{ text: "the third harmonic of its current" }],
    });
    const factorless = (power: number) =>
      row({ loads: row().loads.map(({ powerFactor: _, ...one }) => ({ ...one, power })) });
    expect(
      [46, 100, 230].map((power) => of(factorless(power), "design-current-over-rating")[0]!.verdict),
    ).toEqual(["pass", "not-proven", "fail"]);
  });
  test("10 A over 30 m of 1.5 mm² loses too much", () => {
    const model = row({ segments: [segment("board", "e", 30)], loads: [load("e", { power: 2300 })] });
    const [drop] = of(model, "voltage-drop-too-large");
    expect(drop).toMatchObject({ verdict: "fail", limit: 3 });
    expect(drop!.actual).toBeCloseTo(4.913, 3);
  });
  test("thermal insulation that nobody entered is no question where half a metre of it would pass too", () => {
    const { inInsulation: _, ...untold } = segment("board", "e", 5);
    const with10A = (section: 1.5 | 2.5) =>
      of(
        row({ segments: [{ ...untold, size: { kind: "metric", section } }], loads: [load("e")] }),
        "cable-too-thin",
      )[0]!;
    // 19.5 · 0.5 = 9.75 A do not bear 10 A; 27 · 0.5 = 13.5 A do.
    expect(with10A(1.5).verdict).toBe("not-proven");
    expect(with10A(2.5)).toMatchObject({ verdict: "pass", limit: 27, missing: [] });
    expect(with10A(2.5).assumptions.map(english)).toContain(
      "No part of the cable in thermal insulation; half a metre, factor 0.5, would pass too",
    );
  });
  test("cable of 11.88 A: a 10 A device passes, 16 A fails", () => {
    const hot = (rating: number) =>
      row({
        devices: [{ ...breaker, rating }],
        segments: [
          segment("board", "e", 5, { ambient: 40, grouping: { arrangement: "bunched", circuits: 3 } }),
        ],
        loads: [load("e")],
      });
    expect(of(hot(10), "cable-too-thin")[0]).toMatchObject({ verdict: "pass" });
    expect(of(hot(16), "cable-too-thin")[0]).toMatchObject({ verdict: "fail", actual: 16 });
  });
  test("what nobody knows is never a pass", () => {
    const { rating, breakingCapacity, letThrough, rcd, ...bare } = breaker;
    const unknown = verdicts(
      row({
        devices: [bare],
        boards: [{ id: "board", name: "Board" }],
        loads: row().loads.map(({ power, ...rest }) => rest),
        segments: row().segments.map(({ method, ...rest }) => rest),
      }),
    );
    expect(
      Object.entries(unknown).filter(
        ([what, verdict]) => verdict === "pass" && !english(what).startsWith("Smallest"),
      ),
    ).toEqual([]);
  });
  test("over the design current, the loop and the breaking capacity", () => {
    expect(of(row({ loads: [load("e0", { count: 100 })] }), "design-current-over-rating")[0]).toMatchObject({
      verdict: "fail",
      actual: 20,
    });
    const long = row({ segments: [segment("board", "e0", 400)], loads: [load("e0")] });
    expect(of(long, "fault-loop-too-large")[0]).toMatchObject({ verdict: "fail" });
    expect(
      of(row({ boards: [{ ...row().boards[0]!, faultCurrent: 10_000 }] }), "breaking-capacity-too-small")[0],
    ).toMatchObject({ verdict: "fail" });
    expect(
      of(row({ devices: [{ ...breaker, letThrough: 40_000 }] }), "cable-burns-in-a-fault")[0],
    ).toMatchObject({ verdict: "fail" });
    expect(
      of(
        row({
          segments: [segment("board", "e0", 10, { size: { kind: "metric", section: 1 } })],
          loads: [load("e0")],
        }),
        "section-below-smallest",
      )[0],
    ).toMatchObject({ verdict: "fail" });
  });
  test("TT needs an RCD, an earth that suits it, and an isolator that breaks N", () => {
    const tt = (more: object, device = breaker) =>
      row({
        supply: { ...row().supply, system: "TT" },
        boards: [{ ...row().boards[0]!, ...more }],
        devices: [device],
      });
    expect(
      of(tt({ earthResistance: 100, isolatesNeutral: "yes" }), "earth-resistance-too-large")[0],
    ).toMatchObject({ verdict: "pass" });
    expect(of(tt({ earthResistance: 2000 }), "earth-resistance-too-large")[0]).toMatchObject({
      verdict: "fail",
    });
    expect(
      of(tt({ earthResistance: 100 }, { ...breaker, rcd: "none" }), "earth-resistance-too-large")[0],
    ).toMatchObject({ verdict: "fail" });
    expect(of(tt({}), "earth-resistance-too-large")[0]).toMatchObject({ verdict: "not-proven" });
    expect(of(tt({ isolatesNeutral: "no" }), "neutral-not-isolated")[0]).toMatchObject({ verdict: "fail" });
  });
  test("a shared RCD counts what leaks on every circuit behind it", () => {
    const two = row({
      devices: [breaker, { ...breaker, id: "second" }],
      circuits: [circuit, { ...circuit, id: "other", device: "second" }],
      loads: [load("e0", { leakage: 0.0035, count: 2 }), load("x", { circuit: "other", leakage: 0.0035 })],
    });
    expect(of(two, "standing-leakage-too-large")[0]).toMatchObject({
      verdict: "fail",
      actual: 10.5,
      limit: 9,
    });
  });
  test("without an RCD more than 10 mA asks for a protective conductor of high integrity", () => {
    const bare = row({
      devices: [{ ...breaker, rcd: "none" }],
      loads: [load("e0", { leakage: 0.0035, count: 4 })],
    });
    expect(of(bare, "protective-conductor-current")[0]).toMatchObject({
      verdict: "fail",
      actual: 14,
      limit: 10,
    });
  });
  test("a luminaire that no cable reaches, and a ring, are doubts", () => {
    const gap = row({ loads: [...row().loads, load("lost")] });
    expect(of(gap, "voltage-drop-too-large")[0]).toMatchObject({ verdict: "not-proven" });
    const ring = row({ segments: [...row().segments, segment("e9", "board", 5)] });
    expect(of(ring, "voltage-drop-too-large")[0]).toMatchObject({ verdict: "not-proven" });
  });
  test("in the United States the loop is not asked, and a continuous load counts 125 %", () => {
    const american = row({
      supply: { ...row().supply, region: "US", voltage: 120, frequency: 60 },
      segments: [segment("board", "e0", 20, { size: { kind: "gauge", gauge: 14, form: "solid" } })],
      loads: [load("e0", { power: 960 })],
    });
    expect(of(american, "fault-loop-too-large")).toEqual([]);
    expect(of(american, "design-current-over-rating")[0]).toMatchObject({ verdict: "pass", actual: 10 });
  });
});
