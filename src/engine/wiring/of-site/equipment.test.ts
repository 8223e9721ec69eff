import { describe, expect, test } from "vitest";
import { english, sentenceOf, type Words } from "../../check/index.ts";
import type { Site } from "../../site/index.ts";
import { deriveWiring } from "../derive/derive-wiring.ts";
import type { FoundCircuit, FoundContactor, FoundInstallation } from "./found.ts";
import {
  board,
  circuit,
  detector,
  installation,
  luminaire,
  model,
  oldSwitch,
  room,
  site,
} from "./of-site.fixture.ts";
import { wiringOfSite } from "./of-site.ts";
import { reviewWiring } from "./review-wiring.ts";

const contactor: FoundContactor = {
  id: "k1",
  name: "K1",
  detectors: ["d1"],
  rated: 16,
  makingPeak: 500,
  makingWidth: 0.0005,
  drivers: 40,
  backUp: 16,
  coilCurrent: 0.02,
  coilCable: "yes",
  suppressor: "yes",
  labelled: "no",
  isolatesAllPoles: "no",
};
const inductive = { ...model, contact: { ...model.contact!, rated: { led: 2, inductive: 1 } } };
const sentences = (own: Site, found: FoundInstallation) => reviewWiring(own, found)!.problems.map(sentenceOf);
const withContactor = (more: Partial<FoundContactor> = {}, others: readonly FoundCircuit[] = []) =>
  installation({ circuits: [{ ...circuit, contactors: [{ ...contactor, ...more }] }, ...others] });
/** Ten drivers of 26 A, too much for the detector's own contact. */
const heavy = site({
  models: [inductive],
  luminaires: Array.from({ length: 10 }, (_, i) => luminaire(`e${i}`, [i, 2])),
});

describe("a contactor", () => {
  test("takes the luminaires off the detector's contact, which then carries its coil alone", () => {
    expect(sentences(heavy, installation())).toEqual([
      "D1: inrush peak on the contact is 260 A; 165 A is the most.",
    ]);
    expect(sentences(heavy, withContactor())).toEqual([]);
    const { model: wiring } = wiringOfSite(heavy, withContactor());
    expect(wiring.detectors.map(({ output }) => output)).toEqual(["coil of c1 k1"]);
    expect(new Set(wiring.loads.map(({ switchedLine }) => switchedLine))).toEqual(new Set(["main of c1 k1"]));
  });
  test("is overloaded by more than its main contacts bear, and says what nobody knows of it", () => {
    expect(sentences(heavy, withContactor({ rated: 1 }))).toEqual([
      "K1: steady current on the main contacts is 1.46 A; 1 A is the most.",
    ]);
    const { rated: _, coilCurrent: __, ...bare } = contactor;
    const unknown = { ...bare, suppressor: "unknown" } as const;
    const found = installation({ circuits: [{ ...circuit, contactors: [unknown] }] });
    expect(sentences(heavy, found).sort()).toEqual([
      "Not proven for D1: steady load on the contact.",
      "Not proven for K1: steady current on the main contacts.",
      "Rule W-09 is not proven for K1. Not on record: whether the coil has a suppressor.",
    ]);
  });
  test("makes no more than its main contacts are declared for, and nothing is proven without their figures", () => {
    const { makingPeak: _, makingWidth: __, drivers: ___, ...silent } = contactor;
    expect(
      sentences(heavy, installation({ circuits: [{ ...circuit, contactors: [silent] }] })).sort(),
    ).toEqual([
      "Not proven for K1: inrush peak on the main contacts.",
      "Not proven for K1: number of drivers on the main contacts.",
    ]);
    expect(sentences(heavy, withContactor({ makingPeak: 200, drivers: 8 })).sort()).toEqual([
      "K1: inrush peak on the main contacts is 260 A; 200 A is the most.",
      "K1: number of drivers on the main contacts is 10; 8 is the most.",
    ]);
  });
  test("coil and main contacts of two circuits want a label and isolation on all poles", () => {
    const second: FoundCircuit = { ...circuit, id: "c2", name: "Lighting 2", rcdName: "RCD 2" };
    const own = {
      ...heavy,
      detectors: [
        detector("d1", { circuit: "Lighting 2", luminaires: heavy.luminaires.map(({ id }) => id) }),
      ],
    };
    expect(
      sentences(own, withContactor({}, [second])).filter((text) => text.startsWith("Contactor")),
    ).toEqual([
      "Contactor K1: coil and main contacts have two supplies, and no label says so.",
      "Contactor K1: the two supplies are not isolated on all poles.",
    ]);
  });
  test("its findings name the circuit that it stands at", () => {
    const [problem] = reviewWiring(heavy, withContactor({ suppressor: "no" }))!.problems;
    expect([problem!.code, problem!.records]).toEqual(["coil-without-suppressor", ["c1"]]);
  });
});

test("contactors that one detector holds hang on its one output; their coils add up on its contact", () => {
  const two = [contactor, { ...contactor, id: "k2", name: "K2", luminaires: ["e9"] }];
  const found = installation({ circuits: [{ ...circuit, contactors: two }] });
  const { model: wiring } = wiringOfSite(heavy, found);
  expect(new Set(wiring.contactors.map(({ coil }) => coil.switchedLine))).toEqual(
    new Set([wiring.detectors[0]!.output]),
  );
  expect(wiring.switchedLines.map(({ name }) => english(name))).toContain("the coil line of K1, K2");
  const steady = reviewWiring(heavy, found)!.contacts[0]!.checks.find(({ what }) =>
    english(what).startsWith("Steady"),
  )!;
  expect(steady).toMatchObject({ verdict: "pass", actual: 0.04, unit: "A" });
});

describe("the cable to a coil", () => {
  const { coilCable: _, ...unsaid } = contactor;
  const coilOf = (more: Partial<FoundContactor>) => {
    const contactors = [{ ...unsaid, coilPullIn: 0.2, coilLeast: 0.85, ...more }];
    const found = installation({ circuits: [{ ...circuit, contactors }] });
    return reviewWiring(site({ models: [inductive] }), found)!.circuits[0]!.checks.filter(({ what }) =>
      english(what).includes("coil"),
    );
  };
  test("goes along the plan to the board in which the contactor stands, or has the length that somebody entered", () => {
    expect(coilOf({})).toEqual([]);
    const [drop, protection] = coilOf({ inBoard: "yes" });
    // From (5, 2) to the board at (0, 0): 7 m along the walls, 0.9 m down to its top, 0.3 m at each end; 0.03 Ω/m there and back.
    expect(english(drop!.assumptions[0]!)).toBe(
      "0.051 V of it on 8.50 m to the coil, 3 cores of 1.5 mm² copper",
    );
    expect(drop!.verdict).toBe("pass");
    expect(protection).toMatchObject({ verdict: "pass", actual: 10 });
    expect(english(coilOf({ inBoard: "yes", coilLength: 20, coilSection: 1 })[0]!.assumptions[0]!)).toBe(
      "0.18 V of it on 20.0 m to the coil, 3 cores of 1 mm² copper",
    );
  });
});

describe("what hangs at an output", () => {
  test("a suppressor across the contact makes lamps glow, unless a base load hangs beside them", () => {
    const across = [{ across: "contact", capacitance: 1e-7 }] as const;
    const glowing = site({ detectors: [detector("d1", { suppressors: across })] });
    expect(sentences(glowing, installation())).toEqual([
      "Lamps on the line switched by D1 may glow when off: 7.2 mA leak past the open contact.",
    ]);
    const cured = site({ detectors: [detector("d1", { suppressors: across, baseLoad: "yes" })] });
    expect(sentences(cured, installation())).toEqual([]);
  });
  test("a plant room's override entered at the detector is there without a switch on the plan", () => {
    const plant = { rooms: [{ ...room, use: "plant" as const, wet: false }], switches: [] };
    expect(
      sentences(site({ ...plant, detectors: [detector("d1", { override: "yes" })] }), installation()),
    ).toEqual([]);
    expect(
      sentences(site({ ...plant, detectors: [detector("d1", { override: "no" })] }), installation()),
    ).toEqual(["No manual override in 0.1 Hall: somebody at work there can be left in the dark."]);
    expect(oldSwitch.planned).toBe("removed");
  });
});

describe("pinned routes", () => {
  const via = (places: FoundCircuit["via"]) =>
    deriveWiring(site(), installation({ circuits: [{ ...circuit, ...(places ? { via: places } : {}) }] }))
      .circuits[0]!.route!;
  test("the cable from the board passes the places that a person pinned, in their order", () => {
    const plain = via(undefined).cables[0]!;
    const pinned = via([
      [0, 4],
      [9, 4],
    ]).cables[0]!;
    expect(pinned.points).toContainEqual([0, 4]);
    expect(pinned.points).toContainEqual([9, 4]);
    // 4 m up, 9 m along, then 4 m back and 2 m down to the detector at (5, 2).
    expect(pinned.length - plain.length).toBeCloseTo(4 + 9 + 4 + 2 - 7, 9);
    expect(via(undefined).cables.length).toBe(via([[0, 4]]).cables.length);
  });
  test("any stretch between two devices is led past places, from whichever end they were given, and keeps its neighbours", () => {
    const routeOf = (pinned: NonNullable<FoundCircuit["pinned"]>) =>
      deriveWiring(site(), installation({ circuits: [{ ...circuit, pinned }] })).circuits[0]!.route!;
    const plain = routeOf([]);
    const ends = (route: typeof plain) => route.cables.map(({ from, to }) => `${from} ${to}`);
    for (const [i, { from, to, length, points }] of plain.cables.entries()) {
      if (i === 0) continue;
      const [a, b] = [points[0]!, points.at(-1)!];
      const [aside, on] = [
        [a[0], 0.5],
        [b[0], 0.5],
      ] as const;
      const led = routeOf([{ from, to, via: [aside, on] }]);
      expect(ends(led)).toEqual(ends(plain));
      expect(led.cables[i]!.points).toEqual([a, aside, on, b]);
      // Down to 0.5 m, along, and up again.
      const longer = Math.abs(a[1] - 0.5) + Math.abs(b[0] - a[0]) + Math.abs(b[1] - 0.5);
      const flat = Math.abs(b[0] - a[0]) + Math.abs(b[1] - a[1]);
      expect(led.cables[i]!.length - length).toBeCloseTo(longer - flat, 9);
      expect(led.layLength - plain.layLength).toBeCloseTo(longer - flat, 9);
      const back = routeOf([{ from: to, to: from, via: [on, aside] }]);
      expect(back.cables[i]!.points).toEqual(led.cables[i]!.points);
    }
    expect(routeOf([{ from: "gone", to: "d1", via: [[1, 1]] }])).toEqual(plain);
  });
});

describe("supplies of the United States", () => {
  const { section: _, ...cable } = circuit.cable!;
  const american = (gauge: 14 | 12, more: Partial<FoundCircuit> = {}) =>
    installation({
      boards: [{ ...board, voltage: 120 }],
      circuits: [{ ...circuit, rating: 15, cable: { ...cable, gauge }, ...more }],
    });
  const checks = (found: FoundInstallation) => reviewWiring(site(), found)!.circuits[0]!.checks;
  test("14 AWG bears 15 A and not 20 A; the load counts 125 % and the drop goes by the gauge", () => {
    const what = (found: FoundInstallation, pattern: RegExp) =>
      checks(found).find((one) => pattern.test(english(one.what)))!;
    expect(what(american(14), /weakest cable/).verdict).toBe("pass");
    expect(what(american(14, { rating: 20 }), /weakest cable/)).toMatchObject({ verdict: "fail", limit: 15 });
    expect(what(american(12, { rating: 20 }), /weakest cable/)).toMatchObject({ verdict: "pass", limit: 20 });
    expect(what(american(14), /^Design current/).actual).toBeCloseTo((1.25 * 4 * 32) / (120 * 0.95), 9);
    const [thick, thin] = [
      what(american(12), /^Voltage drop/).actual!,
      what(american(14), /^Voltage drop/).actual!,
    ];
    expect((thin - 1) / (thick - 1)).toBeCloseTo(3.14 / 1.98, 6);
  });
  test("loop and disconnection are not asked there", () => {
    expect(
      checks(american(14)).filter(({ what }) => /Fault loop|Heat|Let-through/.test(english(what))),
    ).toEqual([]);
  });
});

describe("several boards", () => {
  const other = (more: Partial<typeof board>) => ({ ...board, id: "b2", name: "Annex board", ...more });
  const second: FoundCircuit = { ...circuit, id: "c2", board: "b2", name: "Lighting 2" };
  const own = site({
    luminaires: [
      ...site().luminaires,
      ...[1, 3].map((x) => luminaire(`x${x}`, [x, 3], { circuit: "Lighting 2" })),
    ],
    detectors: [],
  });
  const review = (more: Partial<typeof board>, fields: Partial<FoundCircuit> = {}) =>
    reviewWiring(
      own,
      installation({ boards: [board, other(more)], circuits: [circuit, { ...second, ...fields }] }),
    )!;
  const whats = (circuits: readonly { readonly checks: readonly { readonly what: Words }[] }[]) =>
    circuits.map(({ checks }) => checks.some(({ what }) => /^Fault loop/.test(english(what))));

  test("each has its own supply, loop and fault current for its own circuits", () => {
    const { circuits, supply } = review({ loopImpedance: 2, faultCurrent: 200 });
    expect(supply.voltage).toBe(230);
    const loop = (index: number) =>
      circuits[index]!.checks.find(({ what }) => /^Fault loop/.test(english(what)))!;
    expect([loop(0).verdict, loop(1).verdict]).toEqual(["pass", "fail"]);
    expect(loop(1).actual! - loop(0).actual!).toBeCloseTo(2 - 0.35, 9);
  });
  test("one of 120 V beside one of 230 V: current by its own voltage, and no loop is asked there", () => {
    const { circuits } = review({ voltage: 120 });
    expect(circuits[1]!.current).toBeCloseTo((2 * 32) / (120 * 0.95), 9);
    expect(circuits[0]!.current).toBeCloseTo((4 * 32) / (230 * 0.95), 9);
    expect(whats(circuits)).toEqual([true, false]);
  });
  test("one of an IT system is refused with its name; the circuits of the other are judged", () => {
    const { circuits, problems } = review({ system: "IT" });
    expect(problems.map(({ code, records }) => [code, records])).toEqual([["supply-it-system", ["b2"]]]);
    expect(circuits.map(({ checks }) => checks.length > 0)).toEqual([true, false]);
  });
  test("an RCD of the same name at each board is not one RCD", () => {
    const leaky = own.luminaires.map((one) => ({ ...one, leakage: 0.002 }));
    const found = installation({ boards: [board, other({})], circuits: [circuit, second] });
    // 8 mA and 4 mA behind two RCDs named alike; 12 mA would be too much behind one.
    expect(sentences({ ...own, luminaires: leaky }, found)).toEqual([]);
  });
});

test("what nobody entered of a contactor is not proven: its main contacts' inrush and protection, and the cable to its coil", () => {
  const {
    makingPeak: _,
    makingWidth: __,
    drivers: ___,
    backUp: ____,
    coilCable: _____,
    ...silent
  } = contactor;
  const own = site({ models: [inductive] });
  expect(sentences(own, installation({ circuits: [{ ...circuit, contactors: [silent] }] })).sort()).toEqual([
    "Not proven for K1: inrush peak on the main contacts.",
    "Not proven for K1: number of drivers on the main contacts.",
    "Not proven for K1: protective device upstream against what the contact needs.",
    "Rule W-24 is not proven for K1. Not on record: the current of its coil while it closes, the least voltage at which its coil closes, the length of the cable to its coil.",
  ]);
});
