import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shareAmongContacts, switchingChoices } from "./groups.ts";
import { labourTime, materialsList, quoteTotal } from "./materials.ts";
import { detector, row } from "./wiring.fixture.ts";

describe("materials, labour and quote", () => {
  test("equal items add up, spare makes whole pieces, a missing price stays unknown", () => {
    const lines = materialsList(
      [
        { item: "box", unit: "piece", quantity: 11 },
        { item: "box", unit: "piece", quantity: 10 },
        { item: "cable 3 × 1.5", unit: "metre", quantity: 42 },
      ],
      new Map([["box", 1.25]]),
    );
    expect(lines).toEqual([
      { item: "box", unit: "piece", quantity: 21, bought: 23, price: 1.25, total: 28.75 },
      { item: "cable 3 × 1.5", unit: "metre", quantity: 42, bought: 47, price: undefined, total: undefined },
    ]);
    expect(materialsList([{ item: "box", unit: "piece", quantity: 20 }], new Map())[0]!.bought).toBe(21);
  });
  test("minutes of the trade [C]: 25 + 5 + 15 per detector, half as much again above 3 m", () => {
    const one = (["fit-detector", "set-detector", "test-detector"] as const).map((kind) => ({
      kind,
      number: 1,
    }));
    expect(labourTime(one) / 60).toBe(45);
    expect(labourTime(one.map((work) => ({ ...work, reach: "hard" as const }))) / 60).toBe(67.5);
  });
  test("overhead, then tax; provisional items stay out of the sum, unpriced ones are named", () => {
    const lines = [
      { text: "Detectors", amount: 1000, standing: "firm" },
      { text: "Access equipment", amount: undefined, standing: "firm" },
      { text: "Making good", amount: 200, standing: "provisional" },
    ] as const;
    expect(quoteTotal(lines, { overhead: 0.1, tax: 0.2 })).toEqual({
      firm: 1000,
      overhead: 100,
      net: 1100,
      tax: 220,
      gross: 1320,
      provisional: 200,
      unpriced: ["Access equipment"],
    });
  });
});

describe("grouping on contacts", () => {
  test("a weak contact asks for a contactor, several detectors for a master, one for itself", () => {
    const choice = (more: object) => switchingChoices(row(more))[0]!.choice;
    expect(choice({})).toBe("one-contact");
    expect(choice({ detectors: [detector("d1"), detector("d2")] })).toBe("master-and-slaves");
    expect(choice({ detectors: [detector("d1", { contact: { kind: "relay", rated: { led: 1 } } })] })).toBe(
      "contactor",
    );
  });
  test("no contact is over its limits, nothing is lost, and the number is never below the least", () => {
    const load = fc.record({
      drivers: fc.integer({ min: 1, max: 12 }),
      current: fc.double({ min: 0.1, max: 5, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(load, { maxLength: 20 }), (some) => {
        const loads = some.map((one, i) => ({ ...one, id: `e${i}` }));
        const { contacts, tooLarge, least } = shareAmongContacts(loads, { drivers: 10, current: 4 });
        for (const ids of contacts) {
          const own = loads.filter(({ id }) => ids.includes(id));
          expect(own.reduce((sum, one) => sum + one.drivers, 0)).toBeLessThanOrEqual(10);
          expect(own.reduce((sum, one) => sum + one.current, 0)).toBeLessThanOrEqual(4 + 1e-9);
        }
        expect([...contacts.flat(), ...tooLarge].sort()).toEqual(loads.map(({ id }) => id).sort());
        expect(contacts.length).toBeGreaterThanOrEqual(least);
      }),
      { seed: 51, numRuns: 200 },
    );
  });
});
