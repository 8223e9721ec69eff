import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { circuitTree, dropsOnTree, neutralCurrent } from "./circuit-tree.ts";
import { resistanceAt20, tabulatedDrop } from "./tables/resistance.ts";
import {
  dropLimit,
  dropPerAmpereMetre,
  gaugeVoltageDrop,
  lightLoadFactor,
  longestForDrop,
  rowVoltageDrop,
  tabulatedVoltageDrop,
  voltageDrop,
} from "./voltage-drop.ts";
import { row } from "./wiring.fixture.ts";

const copper = (section: number, powerFactor = 1) => ({ section, material: "copper", powerFactor }) as const;
const single = { phases: "single-phase" } as const;

describe("voltage drop, check values of the closed formula [D]", () => {
  test.each([
    [1.5, 30, 10, 1, "copper", "single-phase", 9.0, 3.913],
    [1.5, 25, 6, 0.95, "copper", "single-phase", 4.2825, 1.862],
    [2.5, 50, 10, 0.9, "copper", "single-phase", 8.1349, 3.5369],
    [1.5, 20, 16, 1, "copper", "single-phase", 9.6, 4.1739],
    [2.5, 40, 10, 0.9, "copper", "three-phase", 3.2539, 1.4148],
    [1, 12, 4, 1, "copper", "single-phase", 2.16, 0.9391],
    [2.5, 50, 10, 0.9, "aluminium", "single-phase", 12.9949, 5.6499],
  ] as const)(
    "%s mm² %s m %s A cos %s %s %s",
    (section, length, current, powerFactor, material, phases, volts, percent) => {
      const u = voltageDrop({ section, length, current, powerFactor, material, phases });
      expect(u).toBeCloseTo(volts, 4);
      expect((100 * u) / 230).toBeCloseTo(percent, 4);
    },
  );

  test("published training example [V]: 2.5 mm², 16 A, 18 m is 5.184 V, printed 5.18", () => {
    expect(tabulatedVoltageDrop({ section: 2.5, current: 16, length: 18, ...single })).toBeCloseTo(5.184, 9);
  });
  test("tabulated [D]: 1.5 mm², 10 A, 20 m is 5.8 V", () => {
    expect(tabulatedVoltageDrop({ section: 1.5, current: 10, length: 20, ...single })).toBeCloseTo(5.8, 9);
    expect(tabulatedVoltageDrop({ section: 1.7, current: 10, length: 20, ...single })).toBeUndefined();
  });
  test("14 AWG stranded 100 ft 10 A is 6.280 V, 12 AWG 16 A is 6.336 V [D]", () => {
    const feet = 100 * 0.3048;
    expect(
      gaugeVoltageDrop({ gauge: 14, form: "stranded", current: 10, length: feet, ...single }),
    ).toBeCloseTo(6.28, 9);
    const twelve = gaugeVoltageDrop({
      gauge: 12,
      form: "stranded",
      current: 16,
      length: feet,
      ...single,
    }) as number;
    expect(twelve).toBeCloseTo(6.336, 9);
    expect((100 * twelve) / 120).toBeCloseTo(5.28, 9);
  });
  test.each([
    [1.5, 10, 23.0],
    [1.5, 6, 38.3333],
    [1.5, 16, 14.375],
    [2.5, 10, 38.3333],
    [2.5, 16, 23.9583],
  ])("longest for 3 %% [D]: %s mm² at %s A is %s m", (section, current, metres) => {
    expect(longestForDrop({ ...copper(section), current, ...single }, 6.9)).toBeCloseTo(metres, 3);
  });
  test("longest by millivolts [D]: 1.5 at 10 A 23.79 m, 2.5 at 16 A 23.96 m", () => {
    expect(
      6.9 / (tabulatedVoltageDrop({ section: 1.5, current: 10, length: 1, ...single }) as number),
    ).toBeCloseTo(23.79, 2);
    expect(
      6.9 / (tabulatedVoltageDrop({ section: 2.5, current: 16, length: 1, ...single }) as number),
    ).toBeCloseTo(23.96, 2);
  });
  test("tabulated millivolts are within 2 % of twice the resistance at 70 °C [D]", () => {
    for (const [section, table] of Object.entries(tabulatedDrop.rows["single-phase"])) {
      const twice = 2 * (resistanceAt20.rows.copper.solid[Number(section)] as number) * (1 + 0.00393 * 50);
      expect(Math.abs(twice / table - 1)).toBeLessThan(0.02);
    }
  });
  test("lightly loaded cable [D]: 1.000, 0.900, 0.875", () => {
    const factor = (load: number) => lightLoadFactor({ hottest: 70, ambient: 1, grouping: 1, load });
    expect(factor(1)).toBeCloseTo(1, 12);
    expect(factor(0.5)).toBeCloseTo(0.9, 12);
    expect(factor(0.25)).toBeCloseTo(0.875, 12);
  });
  test("limits [M]: 3 % of 230 V is 6.9 V; 150 m adds 0.25 %, 300 m no more than 0.5 %", () => {
    const limit = (length: number) => dropLimit({ network: "public", load: "lighting", length });
    expect(230 * limit(50)).toBeCloseTo(6.9, 9);
    expect(limit(150)).toBeCloseTo(0.0325, 12);
    expect(limit(300)).toBeCloseTo(0.035, 12);
    expect(dropLimit({ network: "private", load: "other", length: 1 })).toBe(0.08);
  });
});

describe("distributed loads", () => {
  const loads = Array.from({ length: 10 }, (_, i) => ({ current: 0.2, distance: 15 + 3 * i }));
  test("ten of 0.2 A from 15 m every 3 m [D]: 57 A·m, 1.710 V, 0.743 %", () => {
    expect(loads.reduce((sum, { current, distance }) => sum + current * distance, 0)).toBeCloseTo(57, 9);
    const u = rowVoltageDrop({ ...copper(1.5), loads, ...single });
    expect(u).toBeCloseTo(1.71, 9);
    expect((100 * u) / 230).toBeCloseTo(0.743, 3);
  });
  test("the tree gives the same as the row", () => {
    const model = row();
    const { drop, length } = dropsOnTree(circuitTree(model, "circuit")!, model);
    expect(drop.get("e9")).toBeCloseTo(1.71, 9);
    expect(length.get("e9")).toBe(42);
  });
  test("the neutral of a star carries nothing when balanced, and the whole current of one line alone", () => {
    expect(neutralCurrent({ L1: 3, L2: 3, L3: 3 })).toBe(0);
    expect(neutralCurrent({ L1: 3, L2: 0, L3: 0 })).toBe(3);
  });
  test("balanced on three lines, the row loses less than on one", () => {
    const model = row({
      circuits: [{ ...row().circuits[0]!, phases: "three-phase", lines: ["L1", "L2", "L3"] }],
      loads: row()
        .loads.slice(0, 9)
        .map((one, i) => ({ ...one, line: (["L1", "L2", "L3"] as const)[i % 3]! })),
    });
    const star = dropsOnTree(circuitTree(model, "circuit")!, model).drop.get("e8")!;
    expect(star).toBeLessThan(dropsOnTree(circuitTree(row(), "circuit")!, row()).drop.get("e8")!);
    expect(star).toBeGreaterThan(0);
  });
});

describe("laws of the voltage drop", () => {
  const some = fc.record({
    section: fc.constantFrom(1, 1.5, 2.5, 4, 6, 10),
    length: fc.double({ min: 0.1, max: 500, noNaN: true }),
    current: fc.double({ min: 0.01, max: 63, noNaN: true }),
    powerFactor: fc.double({ min: 0.1, max: 1, noNaN: true }),
  });
  const of = (line: { section: number; length: number; current: number; powerFactor: number }) =>
    voltageDrop({ ...line, material: "copper", ...single });

  test("it is linear in length and in current, and halves for balanced three-phase", () => {
    fc.assert(
      fc.property(some, fc.double({ min: 0.1, max: 10, noNaN: true }), (line, k) => {
        const u = of(line);
        expect(of({ ...line, length: line.length * k }) / (u * k)).toBeCloseTo(1, 9);
        expect(of({ ...line, current: line.current * k }) / (u * k)).toBeCloseTo(1, 9);
        expect(voltageDrop({ ...line, material: "copper", phases: "three-phase" }) * 2).toBeCloseTo(u, 9);
      }),
      { seed: 11, numRuns: 300 },
    );
  });
  test("it falls as the section grows", () => {
    fc.assert(
      fc.property(some, (line) => {
        expect(of({ ...line, section: line.section * 1.5 })).toBeLessThan(of(line));
      }),
      { seed: 12, numRuns: 300 },
    );
  });
  test("distributed loads never lose more than the same load lumped at the end", () => {
    const loads = fc.array(
      fc.record({
        current: fc.double({ min: 0, max: 5, noNaN: true }),
        distance: fc.double({ min: 0, max: 100, noNaN: true }),
      }),
      { minLength: 1, maxLength: 30 },
    );
    fc.assert(
      fc.property(loads, (row) => {
        const far = Math.max(...row.map(({ distance }) => distance));
        const all = row.reduce((sum, { current }) => sum + current, 0);
        const distributed = rowVoltageDrop({ ...copper(1.5, 0.9), loads: row, ...single });
        expect(distributed).toBeLessThanOrEqual(
          of({ section: 1.5, length: far, current: all, powerFactor: 0.9 }) + 1e-9,
        );
      }),
      { seed: 13, numRuns: 300 },
    );
  });
});

describe("traps", () => {
  test("the reactance is not divided by the section", () => {
    const sine = Math.sqrt(1 - 0.81);
    const wrong = (0.0225 * 0.9 + 0.00008 * sine) / 2.5;
    expect(dropPerAmpereMetre(copper(2.5, 0.9))).toBeGreaterThan(wrong);
    expect(dropPerAmpereMetre(copper(2.5, 0.9))).toBeCloseTo((0.0225 / 2.5) * 0.9 + 0.00008 * sine, 12);
  });
  test("there and back is counted once, by b = 2, not again in the length", () => {
    expect(voltageDrop({ ...copper(1.5), length: 30, current: 10, ...single })).not.toBeCloseTo(18, 1);
  });
  test("resistances are ohms per metre inside, not per kilometre", () => {
    expect(resistanceAt20.rows.copper.solid[1.5]).toBeCloseTo(0.0121, 12);
    expect(resistanceAt20.rows.copper.flexible[2.5]).toBeCloseTo(0.00798, 12);
    expect(resistanceAt20.rows.tinned[1.5]).toBeCloseTo(0.0122, 12);
    expect(resistanceAt20.rows.aluminium[16]).toBeCloseTo(0.00191, 12);
  });
});
