import { describe, expect, test } from "vitest";
import { english, sentenceOf } from "../../check/index.ts";
import type { FoundCircuit, FoundContactor, FoundInstallation } from "./found.ts";
import { board, circuit, detector, installation, model, site } from "./of-site.fixture.ts";
import { wiringOfSite } from "./of-site.ts";
import { reviewWiring } from "./review-wiring.ts";

const { contact: _, standby: __, leakage: ___, ...sheet } = model;
const low = { ...sheet, supply: "low-voltage", supplyCurrent: 0.03, standby: 0.7 } as const;
const pack: FoundContactor = {
  id: "p1",
  name: "P1",
  kind: "relay-pack",
  detectors: ["d1", "d2"],
  rated: 16,
  makingPeak: 500,
  makingWidth: 0.0005,
  drivers: 40,
  backUp: 20,
  supplies: 0.15,
  apart: "yes",
  suppressor: "unknown",
  labelled: "unknown",
  isolatesAllPoles: "unknown",
};
const own = site({ models: [low], detectors: [detector("d1"), detector("d2", { at: [8, 2] })] });
const { section: ____, ...cable } = circuit.cable!;
const american = (
  more: Partial<FoundContactor> = {},
  change: Partial<FoundCircuit> = {},
): FoundInstallation =>
  installation({
    boards: [{ ...board, voltage: 120 }],
    circuits: [
      {
        ...circuit,
        rating: 15,
        cable: { ...cable, gauge: 14 },
        contactors: [{ ...pack, ...more }],
        ...change,
      },
    ],
  });
const told = (found: FoundInstallation, of = own) => reviewWiring(of, found)!.problems.map(sentenceOf);

describe("low-voltage detectors on a relay pack, 120 V", () => {
  test("no conductor of the mains comes to them, and nothing is asked of them that only the mains needs", () => {
    const { model: wiring } = wiringOfSite(own, american());
    expect(
      wiring.detectors.map(({ line, neutral, lowVoltage }) => [line.kind, neutral.kind, lowVoltage]),
    ).toEqual([
      ["none", "none", { current: 0.03 }],
      ["none", "none", { current: 0.03 }],
    ]);
    expect(told(american())).toEqual([]);
  });
  test("the relay of the pack has the duty of the contact", () => {
    expect(told(american({ rated: 1 }))).toEqual([
      expect.stringMatching(/^P1: steady current on the main contacts is .* A; 1 A is the most\.$/),
    ]);
  });
  test("what they draw together is held against what the pack gives, and unknown draws leave it unproven", () => {
    const check = (found: FoundInstallation, of = own) =>
      reviewWiring(of, found)!.circuits[0]!.checks.find(({ what }) => english(what).includes("relay pack"))!;
    expect(check(american())).toMatchObject({ verdict: "pass", actual: 0.06, limit: 0.15 });
    expect(told(american({ supplies: 0.05 }))).toEqual([
      "P1: its detectors draw 0.06 A; the relay pack gives 0.05 A.",
    ]);
    const { supplyCurrent: _____, ...silent } = low;
    expect(check(american(), { ...own, models: [silent] })).toMatchObject({ verdict: "not-proven" });
    const { supplies: ______, ...mute } = pack;
    expect(check(american({}, { contactors: [mute] }))).toMatchObject({
      verdict: "not-proven",
      limit: undefined,
    });
  });
  test("without a pack they have no supply, and wires beside the mains are told", () => {
    expect(told(american({}, { contactors: [] }))).toEqual([
      "No permanent supply at D1 and D2: a low-voltage detector without a relay pack.",
    ]);
    expect(told(american({ apart: "no" }))).toEqual([
      "P1: low-voltage wires of the relay pack run with mains, not separated.",
    ]);
    expect(told(american({ apart: "unknown" }))).toEqual([
      "Rule W-14 is not proven for P1. Not on record: whether the low-voltage wires of the relay pack keep apart from the mains.",
    ]);
  });
});

describe("equipment grounding conductor [M]", () => {
  const check = (rating: number, gauge: 14 | 12 | 10, protectiveGauge?: 14 | 12 | 10) =>
    reviewWiring(
      own,
      american(
        {},
        {
          rating,
          cable: { ...cable, gauge, ...(protectiveGauge === undefined ? {} : { protectiveGauge }) },
        },
      ),
    )!.circuits[0]!.checks.find(({ what }) => english(what).startsWith("Equipment grounding"))!;
  test("14 AWG up to 15 A, 12 up to 20 A, 10 up to 60 A; as thick as the lines where nobody entered it", () => {
    expect(check(15, 14)).toMatchObject({ verdict: "pass", actual: 14, limit: 14 });
    expect(check(20, 12, 14)).toMatchObject({ verdict: "fail", actual: 14, limit: 12 });
    expect(check(20, 12)).toMatchObject({ verdict: "pass" });
    expect(check(30, 10, 12)).toMatchObject({ verdict: "fail", limit: 10 });
    expect(check(80, 10)).toMatchObject({ verdict: "not-proven" });
    expect(told(american({}, { rating: 20, cable: { ...cable, gauge: 12, protectiveGauge: 14 } }))).toEqual([
      "Lighting 1 (Sub-board): its equipment grounding conductor is 14 AWG; 12 AWG is the thinnest.",
    ]);
  });
  test("elsewhere it is not asked", () => {
    const checks = reviewWiring(site(), installation())!.circuits[0]!.checks;
    expect(checks.some(({ what }) => english(what).startsWith("Equipment grounding"))).toBe(false);
  });
});
