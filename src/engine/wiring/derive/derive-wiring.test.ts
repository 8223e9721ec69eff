import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { english, say } from "../../check/index.ts";
import type { Site } from "../../site/index.ts";
import type { FoundInstallation } from "../of-site/found.ts";
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
} from "../of-site/of-site.fixture.ts";
import { deriveWiring } from "./derive-wiring.ts";

const { length: _, section: __, ...unmeasured } = circuit.cable!;
const planned = installation({ circuits: [{ ...circuit, cable: unmeasured }] });
const route = (own: Site = site(), found: FoundInstallation = planned) =>
  deriveWiring(own, found).circuits[0]!.route!;
const cables = (own?: Site, found?: FoundInstallation) =>
  route(own, found).cables.map(({ from, to, use, cores }) => `${use} ${cores}: ${from} – ${to}`);

describe("routes of a circuit", () => {
  test("from the board to the detector, behind its contact from luminaire to luminaire, no box", () => {
    const own = site({ detectors: [detector("d1", { at: [4.5, 2] })] });
    expect(cables(own)).toEqual([
      "supply 3: b1 – d1",
      "switched 3: d1 – e4",
      "switched 3: e4 – e2",
      "switched 3: e2 – e6",
      "switched 3: e6 – e8",
    ]);
    const { boxes, layLength, boughtLength, toLast, least, exact } = route(own);
    // Board (0, 0) to (4.5, 2) is 6.5 m, and 0.9 m up from its top; 0.5 + 2 + 4 + 2 m behind the contact.
    expect(layLength).toBeCloseTo(15.9, 9);
    expect([exact, boxes]).toEqual([true, []]);
    expect(boughtLength).toBeCloseTo((15.9 + 5 * 0.6) * 1.1, 9);
    expect(toLast).toBeCloseTo(15.9 + 5 * 0.6, 9);
    expect(least).toBeLessThanOrEqual(layLength);
  });
  test("the line goes along with the switched line as far as the last of joined detectors", () => {
    const own = site({ detectors: [detector("d1", { at: [1, 2] }), detector("d2", { at: [5, 2] })] });
    expect(cables(own)).toEqual([
      "supply 3: b1 – d1",
      "both 4: d1 – e2",
      "both 4: e2 – e4",
      "both 4: e4 – d2",
      "switched 3: d2 – e6",
      "switched 3: e6 – e8",
    ]);
  });
  test("a button hangs on its detector, and with the next device that makes a box there", () => {
    const own = site({
      switches: [{ ...oldSwitch, kind: "push-button", planned: "button", detectors: ["d1"] }],
    });
    const { boxes, cables: laid } = route(own);
    const button = laid.find(({ use }) => use === "button")!;
    expect([button.from, button.to, boxes]).toEqual(["d1", "s1", ["d1"]]);
    // 4.5 m and 2 m along the ceiling, 1.6 m down the wall.
    expect(button.length).toBeCloseTo(4.5 + 2 + 1.6, 9);
    const said = (of: typeof own) =>
      deriveWiring(of, installation()).assumptions.some(({ text }) =>
        english(text).startsWith("To buttons straight down"),
      );
    expect([said(own), said(site())]).toEqual([true, false]);
  });
  test("a second storey is reached straight above the board", () => {
    const above = { ...room, id: "above", storey: "first" };
    const own = site({
      storeys: [...site().storeys, { id: "first", name: "First floor", elevation: 3.4 }],
      rooms: [room, above],
      luminaires: [...site().luminaires, luminaire("up", [0, 3], { room: "above" })],
    });
    const riser = route(own).cables.find(({ to }) => to === "up")!;
    // From 1.8 m to the ceiling of the other storey at 3.4 + 2.7 m, and 3 m along it.
    expect([riser.from, riser.storey]).toEqual(["b1", "first"]);
    expect(riser.length).toBeCloseTo(3.4 + 2.7 - 1.8 + 3, 9);
    expect(
      deriveWiring(own, planned).assumptions.some(({ text }) => /storey to storey/.test(english(text))),
    ).toBe(true);
  });
  test("without the board's place there is no route, and the assumption names the board", () => {
    const { at: ___, ...lost } = board;
    const derived = deriveWiring(site(), installation({ boards: [lost] }));
    expect(derived.circuits[0]!.route).toBeUndefined();
    expect(derived.assumptions).toEqual([
      { text: say`No route without the place of the board on the plan`, records: ["b1"] },
    ]);
  });
  test("every device of the circuit is reached once, by a tree that no shorter branching undercuts", () => {
    const places = fc.array(fc.tuple(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 4 })), {
      minLength: 1,
      maxLength: 14,
    });
    fc.assert(
      fc.property(places, places, (lamps, detectors) => {
        const own = site({
          luminaires: lamps.map((at, i) => luminaire(`e${i}`, at)),
          detectors: detectors.slice(0, 4).map((at, i) => detector(`d${i}`, { at })),
        });
        const { cables: laid, nodes, layLength, least } = route(own);
        expect(laid.map(({ to }) => to).sort()).toEqual(
          [...own.luminaires, ...own.detectors].map(({ id }) => id).sort(),
        );
        expect(nodes.length).toBe(laid.length + 1);
        const reached = new Set(["b1"]);
        for (const { from, to, points } of laid) {
          expect(reached.has(from)).toBe(true);
          reached.add(to);
          expect(points.length).toBeGreaterThanOrEqual(2);
        }
        expect(least).toBeLessThanOrEqual(layLength + 1e-6);
      }),
      { seed: 72, numRuns: 60 },
    );
  });
});

describe("section and length", () => {
  test("without a length the route decides; with all else on record the section is proven", () => {
    const [own] = deriveWiring(site(), planned).circuits;
    expect(own).toMatchObject({ length: { from: "route" }, section: { section: 1.5, standing: "proven" } });
  });
  test("a length that a person entered stays, and decides", () => {
    const entered = (length: number) =>
      deriveWiring(site(), installation({ circuits: [{ ...circuit, cable: { ...unmeasured, length } }] }))
        .circuits[0]!;
    expect(entered(30).length).toEqual({ value: 30, from: "entered" });
    expect(entered(30).section).toMatchObject({ section: 1.5 });
    // 0.35 Ω and 90 m of 1.5 mm² are over 2.3 Ω; 2.5 mm² are not.
    expect(entered(90).section).toMatchObject({ section: 2.5, standing: "proven" });
    expect(entered(5000).section).toMatchObject({ section: undefined, standing: "none" });
  });
  test("what no cable can mend does not ask for a thicker one", () => {
    const own = site({ luminaires: site().luminaires.map((one) => ({ ...one, leakage: 0.004 })) });
    expect(deriveWiring(own, planned).circuits[0]!.section).toMatchObject({
      section: 1.5,
      standing: "proven",
    });
  });
});

describe("groups on contacts", () => {
  const corridor = (detectors: number, lamps: number) =>
    site({
      luminaires: Array.from({ length: lamps }, (_value, i) => luminaire(`e${i}`, [i, 2])),
      detectors: Array.from({ length: detectors }, (_value, i) => detector(`d${i}`, { at: [1 + 4 * i, 2] })),
    });
  const choice = (own: Site) => deriveWiring(own, planned).groups[0]!;
  test("one contact bears four; two detectors over four: a master and a slave", () => {
    expect(choice(corridor(1, 4)).choice).toBe("one-contact");
    expect(choice(corridor(2, 4)).choice).toBe("master-and-slaves");
  });
  test("eight drivers of 26 A are too much for 165 A: shared between two detectors, a contactor for one", () => {
    const split = choice(corridor(2, 8));
    expect([split.choice, split.shares.map(({ luminaires }) => luminaires.length)]).toEqual([
      "split",
      [4, 4],
    ]);
    expect(split.shares.flatMap(({ luminaires }) => luminaires).sort()).toEqual([...split.luminaires].sort());
    expect(choice(corridor(1, 8)).choice).toBe("contactor");
    expect(choice(corridor(2, 14)).choice).toBe("contactor");
  });
  test("no share is offered on figures that nobody knows", () => {
    const own = corridor(2, 8);
    const { inrush: ____, ...blind } = own.luminaires[0]!;
    const partly = choice({ ...own, luminaires: [blind, ...own.luminaires.slice(1)] });
    expect(partly.choice).not.toBe("split");
    const { makingPeak: _____, ...contact } = model.contact!;
    expect(choice({ ...own, models: [{ ...model, contact }] }).choice).toBe("master-and-slaves");
  });
});
