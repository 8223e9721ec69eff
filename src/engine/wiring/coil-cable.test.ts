import { expect, test } from "vitest";
import { english, sentenceOf } from "../check/index.ts";
import { coilCable } from "./coil-cable.ts";
import { wiringFindings } from "./findings.ts";
import type { Contactor, WiringModel } from "./model.ts";
import { board, breaker, row, segment } from "./wiring.fixture.ts";

const coil: Contactor["coil"] = {
  switchedLine: "switched",
  current: 0.02,
  pullIn: 0.2,
  least: 0.85,
  wire: { length: 30, section: 1.5, from: "entered" },
  suppressor: "yes",
};
const contactor = (more: Partial<Contactor["coil"]> = {}): Contactor => ({
  id: "q",
  name: "Q1",
  coil: { ...coil, ...more },
  main: { circuit: "circuit", switchedLine: "power", rated: 20 },
  labelled: "yes",
  isolatesAllPoles: "yes",
});
const model = (more: Partial<Contactor["coil"]> = {}, change: Partial<WiringModel> = {}): WiringModel =>
  row({ contactors: [contactor(more)], ...change });
const checksOf = (own: WiringModel) => {
  const cable = coilCable(own, own.contactors[0]!);
  return cable.kind === "calculated" ? cable.checks : [];
};

test("0.2 A over 30 m of 1.5 mm² lose 0.18 V beside the drop of the circuit and what is used already [D]", () => {
  const [drop] = checksOf(model());
  // 1 % on the way to the board; 1.71 V to the last luminaire; 2 · 0.0225 / 1.5 · 30 · 0.2 V to the coil.
  expect(drop).toMatchObject({ verdict: "pass", unit: "%" });
  expect(drop!.limit).toBeCloseTo(15, 9);
  expect(drop!.actual).toBeCloseTo(1 + (100 * (1.71 + 0.18)) / 230, 9);
});

test("the drop grows with the current, the length and a thinner wire; below the voltage of the data sheet the coil may not close", () => {
  const at = (more: Partial<Contactor["coil"]>) => checksOf(model(more))[0]!.actual!;
  const wire = (length: number, section: number) => ({ wire: { length, section, from: "entered" } }) as const;
  expect(at({ pullIn: 0.4 })).toBeGreaterThan(at({}));
  expect(at(wire(60, 1.5))).toBeGreaterThan(at({}));
  expect(at(wire(30, 1))).toBeGreaterThan(at({}));
  // 2 A over 200 m: 12 V, 6.97 % in all, against 5 % that the coil bears.
  const far = model({ pullIn: 2, least: 0.95, ...wire(200, 1.5) });
  expect(checksOf(far)[0]).toMatchObject({ verdict: "fail" });
  const told = wiringFindings(far).find(({ code }) => code === "coil-drop-too-large")!;
  expect(sentenceOf(told)).toBe(
    "Q1: 6.96 % of the voltage is lost at its coil while it closes; with more than 5 % it may not close.",
  );
});

test("its protective device is held against the cable to the coil, which lies as that of its circuit", () => {
  const thick = { devices: [{ ...breaker, rating: 20 }] };
  expect(checksOf(model())[1]).toMatchObject({ verdict: "pass", actual: 10 });
  expect(checksOf(model({}, thick))[1]).toMatchObject({ verdict: "fail", actual: 20, limit: 19.5 });
});

test("what nobody entered leaves it open by name, and what was only assumed leaves it unproven", () => {
  const { pullIn: _, least: __, ...silent } = coil;
  const open = { ...contactor(), coil: { ...silent, wire: { from: "entered" } as const } };
  const cable = coilCable(row({ contactors: [open] }), open);
  expect(cable.kind === "open" && cable.missing.map(english)).toEqual([
    "the current of its coil while it closes",
    "the least voltage at which its coil closes",
    "the length of the cable to its coil",
    "the section of the cable to its coil",
  ]);
  const { dropUsed: ___, ...unmeasured } = board;
  expect(checksOf(model({}, { boards: [unmeasured] }))[0]).toMatchObject({ verdict: "not-proven" });
  const { method: ____, ...loose } = segment("board", "e0", 15);
  expect(checksOf(model({}, { segments: [loose, ...row().segments.slice(1)] }))[1]).toMatchObject({
    verdict: "not-proven",
  });
  expect(checksOf(model({}, { segments: [] }))[0]).toMatchObject({ verdict: "not-proven" });
});

test("where it is calculated nobody is asked whether somebody has; a word to the contrary does not undo a failing cable", () => {
  const rule = (own: WiringModel) =>
    wiringFindings(own).filter(({ code, values }) => code === "coil-cable-wrong" || values.rule === "W-24");
  expect(rule(model())).toEqual([]);
  expect(rule(model({ wire: { from: "entered" } }))).toHaveLength(1);
  expect(rule(model({ wire: { from: "entered" }, cable: "yes" }))).toEqual([]);
  const far = model({
    pullIn: 2,
    least: 0.95,
    wire: { length: 200, section: 1.5, from: "entered" },
    cable: "yes",
  });
  expect(wiringFindings(far).map(({ code }) => code)).toContain("coil-drop-too-large");
});
