import { describe, expect, test } from "vitest";
import { english, say, sentenceOf } from "../../check/index.ts";
import type { Site } from "../../site/index.ts";
import { circuitNamed } from "./circuits-of.ts";
import type { FoundCircuit, FoundInstallation } from "./found.ts";
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

const second: FoundCircuit = { ...circuit, id: "c2", name: "Lighting 2", rcdName: "RCD 2" };
const two = installation({ circuits: [circuit, second] });
const built = (own: Site = site(), found: FoundInstallation = installation()) => wiringOfSite(own, found);
const sentences = (own: Site, found: FoundInstallation = installation()) =>
  reviewWiring(own, found)!.problems.map(sentenceOf);

describe("what a detector switches", () => {
  const lines = (own: Site, found?: FoundInstallation) => {
    const { loads, detectors } = built(own, found).model;
    return detectors.map(({ id, output, line }) => ({
      id,
      circuit: line.kind === "line" ? line.circuit : line.kind,
      loads: loads.filter(({ switchedLine }) => output && switchedLine === output).map((one) => one.id),
    }));
  };
  test("the luminaires of its rooms that are on one circuit; with two circuits there it does not choose", () => {
    expect(lines(site())).toEqual([{ id: "d1", circuit: "c1", loads: ["e2", "e4", "e6", "e8"] }]);
    const mixed = site({
      luminaires: [...site().luminaires, luminaire("x", [9, 1], { circuit: "Lighting 2" })],
    });
    expect(lines(mixed, two)).toEqual([{ id: "d1", circuit: "unknown", loads: [] }]);
    expect(sentences(mixed, two)).toContain(
      "Not proven for D1: which of the circuits Lighting 1, Lighting 2 it switches.",
    );
    const told = site({ ...mixed, detectors: [detector("d1", { circuit: "lighting 2" })] });
    expect(lines(told, two)).toEqual([{ id: "d1", circuit: "c2", loads: ["x"] }]);
  });
  test("a person's list of luminaires wins, and the others of the room stay for another detector", () => {
    const shared = site({
      detectors: [detector("d1", { luminaires: ["e2", "e4"] }), detector("d2", { luminaires: ["e6", "e8"] })],
    });
    expect(lines(shared).map(({ loads }) => loads)).toEqual([
      ["e2", "e4"],
      ["e6", "e8"],
    ]);
    expect(built(shared).model.detectors.map(({ role }) => role)).toEqual(["alone", "alone"]);
  });
  test("detectors that share a luminaire are joined, however many steps apart, and the assumption names them", () => {
    const chain = site({
      detectors: [
        detector("d1", { luminaires: ["e2", "e4"] }),
        detector("d2", { luminaires: ["e4", "e6"] }),
        detector("d3", { luminaires: ["e6", "e8"] }),
      ],
    });
    const { model: wiring, assumptions } = built(chain);
    expect(new Set(wiring.detectors.map(({ output }) => output)).size).toBe(1);
    expect(wiring.detectors.map(({ role }) => role)).toEqual(["parallel", "parallel", "parallel"]);
    expect(assumptions.find(({ text }) => /joined/.test(english(text)))?.records).toEqual(["d1", "d2", "d3"]);
  });
  test("one that only signals switches nothing and is a slave", () => {
    const signals = site({
      detectors: [detector("d1"), detector("d2", { output: "signals", circuit: "c1" })],
    });
    expect(lines(signals)[1]).toEqual({ id: "d2", circuit: "c1", loads: [] });
    expect(built(signals).model.detectors[1]!.role).toBe("slave");
  });
  test("luminaires that are gone, and a circuit that is not on record, are said with their detector", () => {
    const gone = site({
      detectors: [detector("d1", { luminaires: ["e2", "nowhere"], circuit: "Lighting 9" })],
    });
    expect(sentences(gone)).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^Not proven for D1: .*Lighting 9/),
        expect.stringMatching(/^Not proven for D1: .*since 1 of its luminaires/),
      ]),
    );
  });
  test("escape luminaires stay on their unswitched line", () => {
    const lit = luminaire("escape", [1, 1], {
      emergency: { taken: "before-contact", senses: "Lighting 1" },
    });
    const { loads } = built(site({ luminaires: [...site().luminaires, lit] })).model;
    const own = loads.find(({ id }) => id === "escape")!;
    expect([own.switchedLine, own.emergency]).toEqual([undefined, { taken: "before-contact", senses: "c1" }]);
  });
});

describe("names of circuits", () => {
  test("by id or by a name that one circuit has, large or small; not by a name that two have", () => {
    expect(circuitNamed(two, " LIGHTING 2 ")?.id).toBe("c2");
    expect(circuitNamed(two, "c1")?.id).toBe("c1");
    expect(
      circuitNamed(installation({ circuits: [circuit, { ...second, name: "Lighting 1" }] }), "Lighting 1"),
    ).toBeUndefined();
    expect(circuitNamed(two, "  ")).toBeUndefined();
  });
  test("findings name the circuit with its board, several circuits with their common board once", () => {
    const leaky = site({
      luminaires: site().luminaires.map((one, i) => ({
        ...one,
        leakage: 0.004,
        circuit: i < 2 ? "c1" : "c2",
      })),
      detectors: [],
    });
    const shared = installation({ circuits: [circuit, { ...second, rcdName: "RCD 1" }] });
    expect(sentences(leaky, shared)).toEqual([
      "Lighting 1 and Lighting 2 (Sub-board): 16 mA leak all the time behind the RCD; 9 mA is the most.",
    ]);
  });
});

describe("switches and buttons", () => {
  const withSwitch = (fields: Partial<typeof oldSwitch>, more: Partial<Site> = {}) =>
    site({ switches: [{ ...oldSwitch, ...fields }], ...more });
  test("a button fed from another circuit than its detector is found; one that goes is not", () => {
    const button = {
      kind: "push-button",
      planned: "button",
      detectors: ["d1"],
      circuit: "Lighting 2",
    } as const;
    expect(sentences(withSwitch(button), two)).toEqual([
      "Wiring of the button of D1: fed from another line or circuit than the detector.",
    ]);
    expect(sentences(withSwitch({ ...button, circuit: "Lighting 1" }), two)).toEqual([]);
    expect(sentences(withSwitch({ ...button, planned: "removed" }), two)).toEqual([]);
  });
  test("a switch that stays beside the contact defeats it, except in a plant room, where one is missed", () => {
    expect(sentences(withSwitch({ planned: "parallel" }))).toEqual([
      "Manual override in 0.1 Hall: a switch beside the contact keeps the light on for good.",
    ]);
    const plant = { rooms: [{ ...room, use: "plant" as const, wet: false }] };
    expect(sentences(withSwitch({ planned: "parallel" }, plant))).toEqual([]);
    expect(sentences(withSwitch({ planned: "removed" }, plant))).toEqual([
      "No manual override in 0.1 Hall: somebody at work there can be left in the dark.",
    ]);
  });
  test("a two-way switch that nobody has decided about may stay: its light counts as on when power returns", () => {
    const { planned: _, ...undecided } = oldSwitch;
    const { switchedLines } = built(site({ switches: [undecided] })).model;
    expect(switchedLines.map(({ override }) => override)).toEqual(["unknown"]);
  });
});

describe("boards and supply", () => {
  test("a reading near a covered voltage stands for it; one near none has the calculation refused", () => {
    const supply = (voltage: number) =>
      built(site(), installation({ boards: [{ ...board, voltage }] })).model.supply;
    expect([supply(236).voltage, supply(118).region, supply(281).frequency]).toEqual([230, "US", 60]);
    expect(
      reviewWiring(site(), installation({ boards: [{ ...board, voltage: 180 }] }))!.problems.map(sentenceOf),
    ).toEqual(["The supply of 180 V, 50 Hz is not among those that are covered."]);
  });
  test("readings that somebody only assumed are assumptions that name their board", () => {
    const { assumptions } = built(site(), installation({ boards: [{ ...board, readings: "assumed" }] }));
    expect(assumptions).toContainEqual({
      text: say`Readings at ${"Sub-board"} were not measured`,
      records: ["b1"],
    });
  });
  test("circuits behind RCDs without a name may share one, and each says so", () => {
    const nameless = ({ rcdName: _, ...rest }: FoundCircuit): FoundCircuit => rest;
    const own = site({
      luminaires: [...site().luminaires, luminaire("x", [9, 1], { circuit: "c2" })],
      detectors: [],
    });
    expect(sentences(own, installation({ circuits: [circuit, second].map(nameless) }))).toEqual([
      "Not proven for Lighting 1 and Lighting 2 (Sub-board): leakage behind its RCD, which other circuits may share.",
    ]);
  });
});

describe("cables", () => {
  const lengths = (own: Site, found?: FoundInstallation) =>
    built(own, found).model.segments.map(({ to, length }) => [to, Math.round(length * 1000) / 1000]);
  const cabled = (length: number) =>
    installation({ circuits: [{ ...circuit, cable: { ...circuit.cable!, length } }] });
  const row = site({ luminaires: [3, 6].map((x) => luminaire(`e${x}`, [x, 0])) });
  test("what the entered length exceeds the ways on the plan lies before the first luminaire", () => {
    expect(lengths(row, cabled(12))).toEqual([
      ["e3", 9],
      ["e6", 3],
    ]);
    expect(built(row, cabled(12)).atFarEnd).toEqual([]);
  });
  test("a length too short for a loop has all luminaires at its end; one too short for the plan is said", () => {
    const both = site({ luminaires: [luminaire("a", [6, 0]), luminaire("b", [0, 4])] });
    expect([lengths(both, cabled(8)), built(both, cabled(8)).atFarEnd]).toEqual([
      [
        ["a", 8],
        ["b", 0],
      ],
      ["c1"],
    ]);
    expect(sentences(site({ luminaires: row.luminaires }), cabled(4))).toEqual([
      "Not proven for Lighting 1 (Sub-board): its cable, since 4 m are entered and the last luminaire is 6 m away.",
    ]);
  });
  test.each([-5, Number.NaN, Number.POSITIVE_INFINITY, 0])(
    "a length of %s is none, and is said with its circuit",
    (length) => {
      const { segments } = built(row, cabled(length)).model;
      expect(segments).toEqual([]);
      expect(sentences(row, cabled(length))).toContainEqual(
        expect.stringContaining(
          `Lighting 1 (Sub-board): its cable, of which a length of ${length} is entered`,
        ),
      );
    },
  );
  test("a drop that fails with all luminaires at the far end is not proven, and says what would prove it", () => {
    const { at: _, ...lost } = board;
    const far = {
      ...installation({
        boards: [lost],
        circuits: [{ ...circuit, cable: { ...circuit.cable!, length: 400 } }],
      }),
    };
    const { circuits } = reviewWiring(site(), far)!;
    const [drop] = circuits[0]!.checks;
    expect(english(drop!.what)).toMatch(/^Voltage drop/);
    expect(drop!.verdict).toBe("not-proven");
    expect(reviewWiring(site(), far)!.problems.map(({ code }) => code)).not.toContain(
      "voltage-drop-too-large",
    );
  });
});

describe("assumptions and missing parts", () => {
  test("every assumption names records that the job has", () => {
    const bare = site({
      luminaires: site().luminaires.map(({ id, at }) => ({
        ...luminaire(id, at),
        ...{ load: undefined, drivers: undefined, powerFactor: undefined },
      })) as unknown as Site["luminaires"],
      detectors: [detector("d1"), detector("d2")],
    });
    const found = installation({
      boards: [{ id: "b1", name: "", system: "TN-S", readings: "assumed", loopImpedance: 0.3 }],
      circuits: [
        {
          id: "c1",
          board: "b1",
          name: "Lighting 1",
          breaker: "C",
          rcd: "unknown",
          protectiveConductor: "unknown",
          sharedNeutral: "unknown",
          cable: { section: 1.5, length: 20 },
        },
      ],
    });
    const ids = new Set(
      [...bare.luminaires, ...bare.detectors, ...found.boards, ...found.circuits].map(({ id }) => id),
    );
    const { assumptions } = built(bare, found);
    expect(assumptions.length).toBeGreaterThan(8);
    for (const { text, records } of assumptions) {
      expect({ text, some: records.length > 0 }).toEqual({ text, some: true });
      expect(records.filter((id) => !ids.has(id))).toEqual([]);
    }
  });
  test("a detector whose model is not on record leaves its contact unproven, and nothing breaks", () => {
    const lost = site({ models: [{ ...model, id: "other" }] });
    expect(sentences(lost).some((text) => /^Not proven for D1: .*contact/.test(english(text)))).toBe(true);
  });
  test("a circuit without a board and one without a breaker say what to enter", () => {
    const { board: _, ...loose } = circuit;
    expect(sentences(site(), installation({ circuits: [loose] }))).toContainEqual(
      expect.stringMatching(/^Not proven for Lighting 1: .*its board is not on record\.$/),
    );
    const blank: FoundCircuit = { ...circuit, breaker: "unknown" };
    const { rating: __, ...unrated } = blank;
    expect(sentences(site(), installation({ circuits: [unrated] })).join(" ")).toMatch(
      /Lighting 1 \(Sub-board\): .*design current.*/,
    );
  });
});
