import { describe, expect, test } from "vitest";
import { english } from "../check/index.ts";
import { breakerChecks } from "./breaker-checks.ts";
import { contactChecks } from "./contact-checks.ts";
import { requiredPeak } from "./contact-inrush.ts";
import type { Known, Load, WiringModel } from "./model.ts";
import { closingTogether, summedInrush } from "./switched-group.ts";
import { breaker, circuit, detector, load, row } from "./wiring.fixture.ts";

const inrush = { peak: 10, width: 0.00015 };
const pulsing = (more: Partial<Load> = {}): readonly Load[] =>
  row().loads.map((one) => ({ ...one, inrush, ...more }));
const find = (model: WiringModel, what: string) =>
  contactChecks(model).filter((check) => english(check.what).startsWith(what));
const led = detector("d").contact!;

describe("duty of a contact", () => {
  test("steady current by kind of load: 2 A of 4 A", () => {
    expect(find(row(), "Steady")[0]).toMatchObject({
      verdict: "pass",
      limit: 4,
      unit: "A",
      code: "contact-overloaded",
    });
    expect(find(row(), "Steady")[0]!.actual).toBeCloseTo(2, 9);
  });
  test("a lower power factor draws more", () => {
    const poor = row({ loads: row().loads.map((one) => ({ ...one, powerFactor: 0.45 })) });
    expect(find(poor, "Steady")[0]).toMatchObject({ verdict: "fail" });
  });
  test("without a declared power factor only that passes which would by the worst: 2.5 A by the usual, 5 A at worst", () => {
    const loads = row().loads.map(({ powerFactor: _, ...one }) => one);
    const verdict = (amperes: number) =>
      find(
        row({ loads, detectors: [detector("d1", { contact: { ...led, rated: { led: amperes } } })] }),
        "Steady",
      )[0];
    expect([2, 2.5, 4, 5].map((amperes) => verdict(amperes)!.verdict)).toEqual([
      "fail",
      "not-proven",
      "not-proven",
      "pass",
    ]);
    const worstToo = "Power factor 0.8 where none is declared; 0.4 would pass too";
    expect([2, 4, 5].map((amperes) => verdict(amperes)!.assumptions.map(english).includes(worstToo))).toEqual(
      [false, false, true],
    );
    const unknown = [
      row({ loads, detectors: [detector("d1", { contact: { ...led, rated: {} } })] }),
      row({ loads: loads.map(({ power: _, ...one }) => one) }),
    ].map((model) => find(model, "Steady")[0]!);
    for (const { verdict, assumptions } of unknown) {
      expect(verdict).toBe("not-proven");
      expect(assumptions.map(english)).toContain("Power factor 0.8 where none is declared");
      expect(assumptions.map(english)).not.toContain(worstToo);
    }
    expect(verdict(4)).toMatchObject({ missing: [{ text: "the power factor of each luminaire" }] });
    expect(verdict(4)!.actual).toBeCloseTo(2.5, 9);
    const main = (rated: number) =>
      find(
        row({
          loads,
          detectors: [],
          contactors: [
            {
              id: "q",
              name: "Q1",
              coil: { switchedLine: "coil", suppressor: "yes" },
              main: { circuit: "circuit", switchedLine: "switched", rated },
              labelled: "yes",
              isolatesAllPoles: "yes",
            },
          ],
        }),
        "Steady current on the main",
      )[0]!.verdict;
    expect([main(2), main(4), main(5)]).toEqual(["fail", "not-proven", "pass"]);
  });
  test("joined contacts never add up: two of 1.5 A on 2 A both fail", () => {
    const contact = { ...led, rated: { led: 1.5 } };
    const model = row({
      detectors: [
        detector("d1", { contact, role: "parallel" }),
        detector("d2", { contact, role: "parallel" }),
      ],
    });
    expect(find(model, "Steady").map(({ verdict }) => verdict)).toEqual(["fail", "fail"]);
  });
  test("loads of two kinds share the contact: half of each is all of it", () => {
    const model = row({ loads: [load("e0", { count: 10 }), load("e1", { kind: "resistive", power: 1150 })] });
    expect(find(model, "Steady")[0]!.actual).toBeCloseTo(100, 6);
  });
  test("ten peaks of 10 A are 100 A of 165 A; ten of 30 A are too much", () => {
    expect(find(row({ loads: pulsing() }), "Inrush")[0]).toMatchObject({ verdict: "pass", actual: 100 });
    expect(
      find(row({ loads: pulsing({ inrush: { peak: 30, width: 0.00015 } }) }), "Inrush")[0],
    ).toMatchObject({ verdict: "fail", actual: 300, code: "contact-inrush-too-large" });
  });
  test("a longer pulse than declared, and drivers without data, are not proven", () => {
    expect(find(row({ loads: pulsing({ inrush: { peak: 10, width: 0.0003 } }) }), "Inrush")[0]).toMatchObject(
      { verdict: "not-proven" },
    );
    expect(find(row(), "Inrush")[0]).toMatchObject({ verdict: "not-proven" });
    const { contact, ...bare } = detector("d1");
    expect(
      contactChecks(row({ loads: pulsing(), detectors: [bare] })).every(
        ({ verdict }) => verdict === "not-proven",
      ),
    ).toBe(true);
  });
  test("I²t passes only if it would even with all pulses at once", () => {
    const joule = (integral: number) =>
      find(row({ loads: pulsing({ inrush: { ...inrush, integral } }) }), "Joule")[0]!.verdict;
    expect([joule(0.04), joule(0.1), joule(0.6)]).toEqual(["pass", "not-proven", "fail"]);
    expect(summedInrush(pulsing({ inrush: { peak: 30, width: 0.0002 } }))).toMatchObject({
      peak: 300,
      width: 0.0002,
    });
  });
  test("number of drivers, capacitance, device upstream, cycles", () => {
    expect(find(row({ loads: pulsing({ drivers: 3 }) }), "Number")[0]).toMatchObject({
      verdict: "fail",
      actual: 30,
      limit: 20,
    });
    const rich = detector("d1", {
      contact: { ...led, capacitance: 140e-6, life: 100_000 },
      cyclesPerYear: 20_000,
    });
    const model = row({ loads: pulsing({ inputCapacitance: 10e-6 }), detectors: [rich] });
    expect(find(model, "Input")[0]).toMatchObject({ verdict: "pass", unit: "µF" });
    const uncounted = pulsing({ inputCapacitance: 10e-6 }).map(({ drivers: _, ...one }) => one);
    expect(find({ ...model, loads: uncounted }, "Input")[0]).toMatchObject({ verdict: "not-proven" });
    expect(find(model, "Switching")[0]).toMatchObject({
      verdict: "fail",
      actual: 200_000,
      code: "contact-worn-out",
    });
    expect(find(row({ devices: [{ ...breaker, rating: 20 }] }), "Protective")[0]).toMatchObject({
      verdict: "fail",
      code: "contact-not-protected",
    });
  });
  test("a coil counts as an inductive load, and main contacts carry the loads", () => {
    const model = row({
      switchedLines: [...row().switchedLines, { id: "power", name: "S2", suppressors: [] }],
      contactors: [
        {
          id: "q",
          name: "Q1",
          coil: { switchedLine: "switched", current: 0.05, suppressor: "yes" },
          main: { circuit: "circuit", switchedLine: "power", rated: 1 },
          labelled: "yes",
          isolatesAllPoles: "yes",
        },
      ],
      loads: row().loads.map((one) => ({ ...one, switchedLine: "power" })),
    });
    expect(find(model, "Steady load")[0]).toMatchObject({ verdict: "pass", actual: 0.05, limit: 1 });
    expect(find(model, "Steady current on the main")[0]).toMatchObject({ verdict: "fail", limit: 1 });
  });
  test("main contacts in three lines carry each its own: the heaviest line counts, not the sum", () => {
    const lines = ["L1", "L2", "L3"] as const;
    const model = row({
      circuits: [{ ...circuit, phases: "three-phase", lines }],
      switchedLines: [...row().switchedLines, { id: "power", name: "S2", suppressors: [] }],
      contactors: [
        {
          id: "q",
          name: "Q1",
          coil: { switchedLine: "switched", current: 0.05, suppressor: "yes" },
          main: { circuit: "circuit", switchedLine: "power", rated: 1 },
          labelled: "yes",
          isolatesAllPoles: "yes",
        },
      ],
      // Four, three and three of 0.2 A.
      loads: row().loads.map((one, i) => ({ ...one, switchedLine: "power", line: lines[i % 3]! })),
    });
    expect(find(model, "Steady current on the main")[0]).toMatchObject({ verdict: "pass", limit: 1 });
    expect(find(model, "Steady current on the main")[0]!.actual).toBeCloseTo(0.8, 9);
  });
  test("what control devices in the United States must make [M]: the next larger row", () => {
    expect(requiredPeak(120, 4)).toEqual({ steady: 5, peak: 192, integral: 74 });
    expect(requiredPeak(277, 20)).toBeUndefined();
    // Rows from 5 A on are the peak squared times 2 ms [D].
    expect(192 ** 2 * 0.002).toBeCloseTo(74, 0);
  });
});

describe("what closes together", () => {
  const two = (warmUp: readonly ("on" | "off" | undefined)[], override: Known = "no") =>
    row({
      switchedLines: [...row().switchedLines, { id: "other", name: "S2", suppressors: [], override }],
      detectors: warmUp.map((warmUpOutput, i) => {
        const { warmUpOutput: _, ...rest } = detector(`d${i}`, { output: i === 0 ? "switched" : "other" });
        return warmUpOutput ? { ...rest, warmUpOutput } : rest;
      }),
      loads: pulsing()
        .map((one, i) =>
          i < 4
            ? one
            : i < 8
              ? { ...one, switchedLine: "other" }
              : load(one.id, { inrush, switchedLine: undefined as never }),
        )
        .map((one) => {
          const { switchedLine, ...rest } = one;
          return switchedLine ? { ...rest, switchedLine } : rest;
        }),
    });
  const count = (model: WiringModel) => closingTogether(model, "breaker").loads.length;

  test("after a power cut: unswitched loads, and outputs that are on while they warm up, or of which nobody knows", () => {
    expect(count(two(["off", "off"]))).toBe(2);
    expect(count(two(["on", "off"]))).toBe(6);
    expect(count(two(["on", "on"]))).toBe(10);
    expect(count(two([undefined, "off"]))).toBe(6);
    expect(closingTogether(two([undefined, "off"]), "breaker").assumed).toHaveLength(1);
  });
  test("a switch beside the contact, and one of which nobody knows, counts as closed after a power cut", () => {
    expect(count(two(["off", "off"], "yes"))).toBe(6);
    expect(count(two(["off", "off"], "unknown"))).toBe(6);
    expect(closingTogether(two(["off", "off"], "unknown"), "breaker").assumed.map(english)).toEqual([
      "A switch may keep S2 on; nobody said that there is none",
    ]);
  });
  test("without the breaker's curve nothing is proven; with it the sum of peaks is held against k · 3 · In", () => {
    expect(breakerChecks(two(["on", "on"]))[0]).toMatchObject({
      verdict: "not-proven",
      code: "breaker-trips-on-inrush",
    });
    const curve = (factor: number) =>
      row({
        loads: pulsing(),
        devices: [
          {
            ...breaker,
            pulseCurve: [
              [0.0001, factor],
              [0.01, 1],
            ],
          },
        ],
      });
    expect(breakerChecks(curve(10))[0]).toMatchObject({ verdict: "pass", actual: 100 });
    expect(breakerChecks(curve(2))[0]).toMatchObject({ verdict: "fail", actual: 100 });
  });
  test("a number declared for just this breaker decides; one scaled by habit never passes", () => {
    const declared = (type: "B" | "C", rating: number, many: number) =>
      breakerChecks(
        row({
          loads: row().loads.map((one) => ({ ...one, driversPerBreaker: [{ type, rating, count: many }] })),
        }),
      )[0];
    expect(declared("B", 10, 12)).toMatchObject({ verdict: "pass" });
    expect(declared("B", 10, 8)).toMatchObject({ verdict: "fail", unit: "%" });
    expect(declared("C", 16, 40)).toMatchObject({ verdict: "not-proven", source: "CUSTOMARY-SCALING" });
    expect(declared("C", 16, 20)).toMatchObject({ verdict: "fail" });
  });
});
