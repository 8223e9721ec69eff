import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { english, remedyOf, type Verdict } from "../../check/index.ts";
import type { Luminaire, Site } from "../../site/index.ts";
import { wiringChecks } from "../findings.ts";
import type { FoundCircuit, FoundInstallation } from "./found.ts";
import { board, circuit, installation, luminaire, model, site } from "./of-site.fixture.ts";
import { wiringOfSite } from "./of-site.ts";
import { reviewWiring, type WiringReview } from "./review-wiring.ts";

const reviewed = (own: Site = site(), found: FoundInstallation = installation()): WiringReview =>
  reviewWiring(own, found)!;
const codes = (own?: Site, found?: FoundInstallation) =>
  reviewed(own, found).problems.map(({ code }) => code);
const changed = (fields: Partial<FoundCircuit>): FoundInstallation =>
  installation({ circuits: [{ ...circuit, ...fields }] });
const without = <Record extends object>(record: Record, field: PropertyKey): Record =>
  Object.fromEntries(Object.entries(record).filter(([name]) => name !== field)) as Record;
const figures = (own: Site, found: FoundInstallation = installation()) => {
  const checks = wiringChecks(wiringOfSite(own, found).model);
  const actual = (what: RegExp) => checks.find((check) => what.test(english(check.what)))?.actual ?? 0;
  return {
    current: actual(/^Design current/),
    drop: actual(/^Voltage drop/),
    peak: actual(/^Inrush peak/),
    returning: actual(/^Inrush of everything/),
    leakage: actual(/^Standing leakage/),
  };
};

describe("a site with everything on record", () => {
  test("passes every check, and nothing is left open", () => {
    const { problems, circuits } = reviewed();
    expect(problems).toEqual([]);
    expect(circuits).toMatchObject([
      {
        id: "c1",
        name: "Lighting 1",
        board: "Sub-board",
        luminaires: 4,
        drivers: 4,
        power: 128,
        detectors: ["D1"],
      },
    ]);
    expect(circuits[0]!.current).toBeCloseTo((4 * 32) / (230 * 0.95), 9);
    expect(new Set(circuits[0]!.checks.map(({ verdict }) => verdict))).toEqual(new Set(["pass"]));
  });
  test("without circuits and figures there is nothing to review", () => {
    const bare = site({ luminaires: [], detectors: [] });
    expect(reviewWiring(bare, { boards: [board], circuits: [] })).toBeUndefined();
  });
  test("an IT system is refused with its sentence alone, and no circuit is judged", () => {
    const { problems, circuits } = reviewed(site(), installation({ boards: [{ ...board, system: "IT" }] }));
    expect(problems.map(({ code }) => code)).toEqual(["supply-it-system"]);
    expect(circuits.map(({ checks, current }) => [checks, current])).toEqual([[[], undefined]]);
  });
});

describe("laws", () => {
  const places = fc.array(fc.tuple(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 4 })), {
    minLength: 1,
    maxLength: 9,
  });
  const siteOf = (at: readonly (readonly [number, number])[]) =>
    site({ luminaires: at.map(([x, y], i) => luminaire(`e${i}`, [x, y])) });

  test("a luminaire added beside another never lowers current, drop, inrush or leakage", () => {
    fc.assert(
      fc.property(places, fc.nat(), (at, pick) => {
        const fewer = siteOf(at);
        const beside = fewer.luminaires[pick % fewer.luminaires.length]!;
        const more = { ...fewer, luminaires: [...fewer.luminaires, luminaire("added", beside.at)] };
        const [before, after] = [figures(fewer), figures(more)];
        for (const name of Object.keys(before) as (keyof typeof before)[])
          expect({ name, kept: after[name] >= before[name] - 1e-9 }).toEqual({ name, kept: true });
      }),
      { seed: 61, numRuns: 60 },
    );
  });
  test("with the board's place unknown a luminaire added anywhere never lowers them", () => {
    const { at: _, ...lost } = board;
    fc.assert(
      fc.property(
        places,
        fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 4 })),
        (at, there) => {
          const fewer = siteOf(at);
          const more = { ...fewer, luminaires: [...fewer.luminaires, luminaire("added", there)] };
          const found = installation({ boards: [lost] });
          const [before, after] = [figures(fewer, found), figures(more, found)];
          for (const name of Object.keys(before) as (keyof typeof before)[])
            expect({ name, kept: after[name] >= before[name] - 1e-9 }).toEqual({ name, kept: true });
        },
      ),
      { seed: 62, numRuns: 60 },
    );
  });
  test("luminaires in a row lose less than all of them at its end", () => {
    fc.assert(
      fc.property(places, (at) => {
        const { at: _, ...lost } = board;
        const [known, unknown] = [
          figures(siteOf(at)).drop,
          figures(siteOf(at), installation({ boards: [lost] })).drop,
        ];
        expect(known).toBeLessThanOrEqual(unknown + 1e-9);
      }),
      { seed: 63, numRuns: 60 },
    );
  });
  test("turning and shifting the plan changes no verdict and no figure", () => {
    const turned = (angle: number, [dx, dy]: readonly [number, number]) => {
      const moved = ([x, y]: readonly [number, number]): [number, number] => [
        x * Math.cos(angle) - y * Math.sin(angle) + dx,
        x * Math.sin(angle) + y * Math.cos(angle) + dy,
      ];
      const own = site();
      return reviewed(
        {
          ...own,
          rooms: own.rooms.map((one) => ({ ...one, outline: one.outline.map(moved) })),
          luminaires: own.luminaires.map((one) => ({ ...one, at: moved(one.at) })),
          detectors: own.detectors.map((one) => ({ ...one, at: moved(one.at) })),
        },
        installation({ boards: [{ ...board, at: moved(board.at!) }] }),
      );
    };
    const still = reviewed();
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6.3, noNaN: true }),
        fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 })),
        (angle, by) => {
          const there = turned(angle, by);
          expect(there.problems).toEqual(still.problems);
          for (const [index, check] of there.circuits[0]!.checks.entries()) {
            const same = still.circuits[0]!.checks[index]!;
            expect([check.what, check.verdict]).toEqual([same.what, same.verdict]);
            // A micrometre of rounding over hundreds of metres.
            if (same.actual !== undefined) expect(check.actual).toBeCloseTo(same.actual, 6);
          }
        },
      ),
      { seed: 64, numRuns: 40 },
    );
  });
  test("the order of luminaires and circuits changes nothing", () => {
    const other: FoundCircuit = { ...circuit, id: "c2", name: "Lighting 2", rcdName: "RCD 2" };
    const own = site({
      luminaires: [...site().luminaires, luminaire("x", [9, 3], { circuit: "Lighting 2" })],
      detectors: [],
    });
    const figuresOf = (review: WiringReview) =>
      Object.fromEntries(
        review.circuits.map(({ id, checks }) => [
          id,
          checks.map(({ verdict, actual }) => [verdict, actual?.toFixed(9)]),
        ]),
      );
    expect(
      figuresOf(
        reviewed(
          { ...own, luminaires: own.luminaires.toReversed() },
          installation({ circuits: [other, circuit] }),
        ),
      ),
    ).toEqual(figuresOf(reviewed(own, installation({ circuits: [circuit, other] }))));
  });
});

describe("what nobody knows never passes", () => {
  const rank: Record<Verdict, number> = { fail: 0, "not-proven": 1, pass: 2 };
  const verdicts = (own: Site, found: FoundInstallation) =>
    new Map(
      wiringChecks(wiringOfSite(own, found).model).map((check) => [
        `${check.name}: ${english(check.what).split(",")[0]}`,
        check,
      ]),
    );
  /** Something on record taken away must show: somewhere a pass becomes open, and nothing open or failed passes. */
  const taken = (own: Site, found: FoundInstallation) => {
    const [before, after] = [verdicts(site(), installation()), verdicts(own, found)];
    for (const [what, { verdict }] of before) {
      const now = after.get(what)?.verdict;
      if (now) expect({ what, better: rank[now] > rank[verdict] }).toEqual({ what, better: false });
    }
    return reviewed(own, found).problems;
  };

  test.each([
    "rating",
    "breakingCapacity",
    "letThrough",
    "pulseCurve",
    "residualCurrent",
    "isolator",
    "cable",
    "board",
  ] as const)("%s of a circuit", (field) => {
    const problems = taken(site(), installation({ circuits: [without(circuit, field)] }));
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.map(({ code }) => code).every((code) => /not-proven/.test(code))).toBe(true);
    expect(problems.every(({ records = [] }) => records.includes("c1") || records.includes("d1"))).toBe(true);
  });
  test.each(["section", "length", "method", "concealed", "withSignals"] as const)(
    "%s of a cable",
    (field) => {
      const cable = without(circuit.cable!, field);
      const problems = taken(site(), changed({ cable, ...(field === "concealed" ? { rcd: "no" } : {}) }));
      expect(problems.map(({ records }) => records)).toEqual(problems.map(() => ["c1"]));
      expect(problems.length).toBeGreaterThan(0);
    },
  );
  test.each(["loopImpedance", "faultCurrent"] as const)("%s of a board", (field) => {
    const problems = taken(site(), installation({ boards: [without(board, field)] }));
    expect(problems.map(({ code }) => code)).toEqual(["wiring-not-proven"]);
    expect(problems[0]!.values.name).toBe("Lighting 1 (Sub-board)");
  });
  test.each(["power", "drivers", "inrush"] as const)("%s of a luminaire's driver", (field) => {
    const [first, ...others] = site().luminaires;
    const problems = taken(
      site({ luminaires: [without(first!, field) as Luminaire, ...others] }),
      installation(),
    );
    expect(new Set(problems.map(({ code }) => code))).toEqual(new Set(["wiring-not-proven"]));
    const missing = problems.map(remedyOf).join(" ");
    expect(missing).toMatch(field === "power" ? /the power of each/ : /drivers in each luminaire/);
    expect(problems.some(({ records = [] }) => records.includes("d1") || records.includes("c1"))).toBe(true);
  });
  test.each(["rated", "makingPeak", "makingWidth", "drivers", "backUp"] as const)(
    "%s of a contact",
    (field) => {
      const contact = field === "rated" ? { ...model.contact!, rated: {} } : without(model.contact!, field);
      const problems = taken(site({ models: [{ ...model, contact }] }), installation());
      expect(problems.map(({ code, records }) => [code, records])).toEqual([["wiring-not-proven", ["d1"]]]);
    },
  );
  test("a detector that leaks nobody knows what, unless it has no protective conductor to leak into", () => {
    const silent = without(model, "leakage");
    expect(codes(site({ models: [silent] }))).toEqual(["wiring-not-proven"]);
    expect(
      codes(site({ models: [{ ...silent, terminals: ["line-in", "neutral", "switched-line"] }] })),
    ).toEqual([]);
  });
  test("a luminaire without a circuit makes its detector's circuit an assumption that names it", () => {
    const [first, ...others] = site().luminaires;
    const { problems, assumptions } = reviewed(site({ luminaires: [without(first!, "circuit"), ...others] }));
    expect(problems).toMatchObject([{ code: "wiring-not-proven", records: [first!.id] }]);
    expect(
      assumptions
        .filter(({ records }) => records.length === 1 && records[0] === first!.id)
        .map(({ text }) => english(text)),
    ).toEqual(["On the circuit of the others that the same detector switches"]);
  });
});
