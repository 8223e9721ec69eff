import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  luminaireLike,
  roomLike,
  roundModel,
  siteLike,
} from "../../../test/engine/records.ts";
import { largestLoopReading } from "../wiring/index.ts";
import { breaker, circuit, detector, load, row } from "../wiring/wiring.fixture.ts";
import {
  countedEntries,
  deadPairs,
  isolationGroups,
  mayEnter,
  mayPowerUp,
  needsJudgement,
  readingRows,
  type SiteEntry,
  stagesOf,
  UNASSIGNED,
  type WorkOrder,
  type WorkStep,
  workOrder,
  workState,
} from "./index.ts";

const site = siteLike({
  rooms: [roomLike({ id: "room", outline: box(0, 0, 6, 4) })],
  models: [roundModel({ warmUp: 60 })],
  detectors: [detectorLike({ id: "d1", room: "room", at: [3, 2] })],
  luminaires: [
    luminaireLike({
      id: "exit",
      room: "room",
      at: [1, 1],
      emergency: { taken: "before-contact", senses: "circuit" },
    }),
  ],
});
const two = {
  ...site,
  detectors: [...site.detectors, detectorLike({ id: "d2", room: "room", at: [5, 2] })],
};
const order = workOrder(site, row());
const named = (all: WorkOrder, id: string): WorkStep => {
  const found = all.steps.find((step) => step.id === id);
  if (!found) throw new Error(`${id} is not among ${all.steps.map((step) => step.id).join(", ")}`);
  return found;
};

/** Entries at minutes after eight, in the order in which they are named. */
const at = (minute: number): string => `2026-03-02T08:${String(minute).padStart(2, "0")}:00Z`;
let number = 0;
const entry = (step: WorkStep, given: Partial<SiteEntry> = {}): SiteEntry => ({
  id: `e${String(++number).padStart(4, "0")}`,
  time: at(0),
  about: step.about,
  step: step.name,
  outcome: "done",
  ...given,
});

/** What a good day enters for a step: every part, a reading in the middle of its limits, an ordinary one where there are none. */
function goodEntries(step: WorkStep, time: string): readonly SiteEntry[] {
  const { result } = step;
  if (result.kind === "reading") {
    const limit = result.limit;
    const value =
      limit?.least !== undefined
        ? limit.least + 0.05
        : limit?.most !== undefined
          ? limit.most * 0.5
          : readingRows[result.reading].usual[0] + 1;
    return [entry(step, { time, outcome: "read", value })];
  }
  const outcome = result.kind === "done" ? "done" : "passed";
  const parts = step.parts.length === 0 ? [undefined] : step.parts;
  return parts.map((part) => entry(step, { time, outcome, part }));
}

/** All steps before one, done one minute after the other. */
function doneBefore(all: WorkOrder, id: string): SiteEntry[] {
  const index = all.steps.findIndex((step) => step.id === id);
  return all.steps.slice(0, index).flatMap((step, minute) => goodEntries(step, at(minute)));
}
const codes = (permission: { readonly problems: readonly { readonly code: string }[] }): string[] =>
  permission.problems.map((problem) => problem.code);

describe("isolation", () => {
  test("[WO-3] dead is proved between each pair of L, L′, N and PE once", () => {
    expect(deadPairs({ hasOutput: true })).toEqual(["L–L′", "L–N", "L–PE", "L′–N", "L′–PE", "N–PE"]);
    expect(deadPairs({ hasOutput: false })).toEqual(["L–N", "L–PE", "N–PE"]);
    expect(named(order, "prove-dead:detector:d1").parts).toEqual([
      "tester-before",
      "L–L′",
      "L–N",
      "L–PE",
      "L′–N",
      "L′–PE",
      "N–PE",
      "tester-after",
    ]);
  });

  test("the five steps come in the order of EN 50110-1, those of the US in theirs", () => {
    const names = (all: WorkOrder) => [
      ...new Set(all.steps.filter((step) => step.stage === "isolation").map((step) => step.name)),
    ];
    expect(names(order)).toEqual(["disconnect", "secure", "prove-dead", "earth", "adjacent"]);
    const american = row({ supply: { ...row().supply, region: "US", voltage: 120, frequency: 60 } });
    expect(names(workOrder(site, american))).toEqual([
      "prepare",
      "shut-down",
      "disconnect",
      "secure",
      "release-energy",
      "prove-dead",
    ]);
  });

  test("two circuits whose detectors share a switched line are isolated together, and back-feed is warned of", () => {
    const model = row({
      circuits: [circuit, { ...circuit, id: "second" }],
      detectors: [
        detector("d1"),
        detector("d2", {
          line: { kind: "line", circuit: "second", line: "L2" },
          neutral: { kind: "neutral", circuit: "second" },
        }),
      ],
    });
    const groups = isolationGroups(model, ["d1", "d2"]);
    expect(groups).toHaveLength(1);
    expect(groups[0]).toMatchObject({ circuits: ["circuit", "second"], mayBackFeed: true });
    const all = workOrder(two, model);
    expect(named(all, "disconnect:circuit:second").cautions).toContain("several-supplies");
    expect(named(all, "earth:circuit:circuit").cautions).toEqual(["back-feed"]);
    expect(named(all, "prove-dead:detector:d1").needs).toEqual([
      "secure:circuit:circuit",
      "secure:circuit:second",
    ]);
  });

  test("circuits that share nothing are isolated apart", () => {
    const model = row({
      circuits: [circuit, { ...circuit, id: "second" }],
      switchedLines: [...row().switchedLines, { id: "other", name: "S2", suppressors: [] }],
      loads: [load("e0"), load("f0", { circuit: "second", switchedLine: "other" })],
      detectors: [
        detector("d1"),
        detector("d2", {
          line: { kind: "line", circuit: "second", line: "L2" },
          neutral: { kind: "neutral", circuit: "second" },
          output: "other",
        }),
      ],
    });
    expect(isolationGroups(model, ["d1", "d2"]).map((group) => group.circuits)).toEqual([
      ["circuit"],
      ["second"],
    ]);
  });

  test("in a TT installation the neutral is isolated too, unless the isolator is known to break it", () => {
    const tt = row({ supply: { ...row().supply, system: "TT" } });
    expect(named(workOrder(site, tt), "isolate-neutral:circuit:circuit").cautions).toEqual([
      "isolator-breaks-neutral",
    ]);
    const breaks = row({ ...tt, boards: [{ ...row().boards[0]!, isolatesNeutral: "yes" }] });
    expect(workOrder(site, breaks).steps.some((step) => step.name === "isolate-neutral")).toBe(false);
  });

  test("of boards with different supplies that meet, each is tested by its own: one TT board is enough to ask for its neutral", () => {
    const model = row({
      boards: [
        row().boards[0]!,
        { ...row().boards[0]!, id: "second", supply: { ...row().supply, system: "TT" } },
      ],
      devices: [breaker, { ...breaker, id: "f2", board: "second" }],
      circuits: [circuit, { ...circuit, id: "second", device: "f2" }],
      detectors: [
        detector("d1"),
        detector("d2", {
          line: { kind: "line", circuit: "second", line: "L2" },
          neutral: { kind: "neutral", circuit: "second" },
        }),
      ],
    });
    const all = workOrder(two, model);
    expect(all.groups.map(({ circuits, neutralOpen }) => [circuits, neutralOpen])).toEqual([
      [["circuit", "second"], true],
    ]);
    const measured = all.steps.filter(({ name }) => name === "loop-impedance" || name === "earth-resistance");
    expect(measured.map(({ id }) => id)).toEqual([
      "loop-impedance:circuit:circuit",
      "earth-resistance:circuit:second",
    ]);
  });

  test("a detector whose circuit nobody has entered is still isolated, proved dead and tested", () => {
    const all = workOrder(site, row({ detectors: [] }));
    expect(all.groups.map((group) => group.id)).toEqual([UNASSIGNED]);
    expect(named(all, "disconnect:job:unassigned").cautions).toContain("supply-unknown");
    expect(named(all, "prove-dead:detector:d1").parts).toHaveLength(8);
    expect(mayPowerUp(workState(all, []), UNASSIGNED, site).allowed).toBe(false);
  });
});

describe("order", () => {
  test("every step needs only steps before it, and ids are unique", () => {
    const place = new Map(order.steps.map((step, i) => [step.id, i]));
    expect(place.size).toBe(order.steps.length);
    for (const [i, step] of order.steps.entries()) {
      for (const need of step.needs) expect(place.get(need)).toBeLessThan(i);
    }
  });

  test("dead tests follow the order of initial verification, links in before and out after", () => {
    const names = order.steps.filter((step) => step.stage === "dead-tests").map((step) => step.name);
    expect(names).toEqual(["link-in", "continuity", "insulation", "polarity", "link-out"]);
  });

  test("the stages of a room are walk test, readings and emergency luminaires", () => {
    const room = stagesOf(order, { room: "room" }).map(({ stage }) => stage);
    expect(room.slice(-3)).toEqual(["walk-test", "readings", "emergency"]);
    expect(named(order, "emergency:luminaire:exit").cautions).toEqual(["emergency-battery"]);
  });

  test("warm-up waits as the data sheet says, and says so where it does not", () => {
    expect(named(order, "warm-up:detector:d1")).toMatchObject({ wait: 60, cautions: [] });
    const silent = workOrder({ ...site, models: [roundModel()] }, row());
    expect(named(silent, "warm-up:detector:d1")).toMatchObject({ wait: 45, cautions: ["warm-up-unknown"] });
  });

  test("brightness is read only where a threshold is set, and the delay against what is set", () => {
    const settings = new Map([["d1", { offDelay: 600, threshold: 300 }]]);
    const set = workOrder(site, row(), { settings });
    expect(named(set, "brightness:detector:d1").planned).toBe(300);
    expect(named(set, "delay:detector:d1").result).toMatchObject({ limit: { least: 540, most: 660 } });
    expect(order.steps.some((step) => step.name === "brightness")).toBe(false);
  });

  test("the loop is held against two thirds, or four fifths where the job reckons with 0.95", () => {
    const limitOf = (voltageFactor: number): unknown => {
      const model = row({ supply: { ...row().supply, voltageFactor } });
      const { result } = named(workOrder(site, model), "loop-impedance:circuit:circuit");
      return result.kind === "reading" ? result.limit?.most : undefined;
    };
    const loop = { voltage: 230, type: "B", rating: 10 } as const;
    expect(limitOf(1)).toBeCloseTo(3.0667, 4);
    expect(limitOf(0.95)).toBe(largestLoopReading({ ...loop, voltageFactor: 0.95 }, "four-fifths"));
  });

  test("without an RCD none is tested, and in a TT installation the electrode stands in place of the loop", () => {
    const bare = workOrder(site, row({ devices: [{ ...breaker, rcd: "none" }] }));
    expect(bare.steps.some((step) => step.name === "rcd-time")).toBe(false);
    const tt = workOrder(site, row({ supply: { ...row().supply, system: "TT" } }));
    expect(tt.steps.some((step) => step.name === "loop-impedance")).toBe(false);
    expect(named(tt, "earth-resistance:circuit:circuit").result).toMatchObject({
      limit: { most: 50 / 0.03, source: "IEC-60364-4-41" },
    });
  });
});

describe("state", () => {
  test("[WO-1] at the start only steps without conditions are open", () => {
    const state = workState(order, []);
    for (const { step, status } of state.steps.values())
      expect(status).toBe(step.needs.length === 0 ? "open" : "waiting");
    expect(state.dead.size + state.live.size).toBe(0);
  });

  test("[WO-1] a step whose conditions are missing is refused with a problem that names them", () => {
    const state = workState(order, []);
    const found = mayEnter(state, "insulation:circuit:circuit", site);
    expect(codes(found)).toEqual(["step-out-of-order"]);
    expect(found.problems[0]?.records).toEqual(["continuity:circuit:circuit"]);
  });

  test("[WO-1] a whole job entered in its order is never refused, and ends done", () => {
    const entries: SiteEntry[] = [];
    for (const [minute, step] of order.steps.entries()) {
      expect(codes(mayEnter(workState(order, entries), step.id, site))).toEqual([]);
      entries.push(...goodEntries(step, at(minute)));
    }
    const state = workState(order, entries);
    expect([...state.steps.values()].map(({ status }) => status)).toEqual(order.steps.map(() => "done"));
    expect([...state.live]).toEqual(["circuit"]);
  });

  test("[WO-1] no step is allowed while one that it needs is not done, whichever entries are left out", () => {
    const all = order.steps.flatMap((step, minute) => goodEntries(step, at(minute)));
    fc.assert(
      fc.property(fc.subarray(all), (entries) => {
        const state = workState(order, entries);
        for (const step of order.steps) {
          const ready = step.needs.every((id) => state.steps.get(id)?.status === "done");
          if (mayEnter(state, step.id, site).allowed) expect(ready).toBe(true);
        }
      }),
      { seed: 541, numRuns: 40 },
    );
  });

  test("[WO-2] power is refused while the test link is in, and allowed once it is ticked as removed", () => {
    const entries = doneBefore(order, "link-out:detector:d1");
    const fitted = [named(order, "fitting:detector:d1")].flatMap((step) => goodEntries(step, at(40)));
    const still = mayPowerUp(workState(order, [...entries, ...fitted]), "circuit", site);
    expect(codes(still)).toEqual(["power-refused-link"]);
    expect(still.problems[0]?.values).toEqual({ tag: "D1" });
    const out = entry(named(order, "link-out:detector:d1"), { time: at(39) });
    expect(mayPowerUp(workState(order, [...entries, out, ...fitted]), "circuit", site).allowed).toBe(true);
  });

  test("[WO-2] a link put in again after it was taken out refuses the power again", () => {
    const entries = doneBefore(order, "power-up:circuit:circuit");
    expect(mayPowerUp(workState(order, entries), "circuit", site).allowed).toBe(true);
    const again = entry(named(order, "link-in:detector:d1"), { time: at(50) });
    expect(codes(mayPowerUp(workState(order, [...entries, again]), "circuit", site))).toEqual([
      "power-refused-link",
    ]);
  });

  test("[WO-2] power is refused when insulation has failed, and when it is missing", () => {
    const entries = doneBefore(order, "power-up:circuit:circuit");
    const insulation = named(order, "insulation:circuit:circuit");
    const bad = entry(insulation, { time: at(50), outcome: "read", value: 0.4 });
    expect(codes(mayPowerUp(workState(order, [...entries, bad]), "circuit", site))).toEqual([
      "power-refused-failed",
    ]);
    const without = entries.filter((one) => one.step !== "insulation");
    expect(codes(mayPowerUp(workState(order, without), "circuit", site))).toContain("power-refused-test");
  });

  test("[WO-4] continuity has no limit: an unusual figure lets no power on until the tester judges it passed", () => {
    const entries = doneBefore(order, "power-up:circuit:circuit");
    const continuity = named(order, "continuity:circuit:circuit");
    const power = (given: Partial<SiteEntry>): string[] =>
      codes(
        mayPowerUp(
          workState(order, [...entries, entry(continuity, { time: at(50), ...given })]),
          "circuit",
          site,
        ),
      );
    expect(power({ outcome: "read", value: 4000 })).toEqual(["power-refused-test"]);
    expect(power({ outcome: "passed", value: 4000 })).toEqual([]);
    expect(power({ outcome: "failed", value: 4000 })).toEqual(["power-refused-failed"]);
    expect(power({ outcome: "read", value: 0.8 })).toEqual([]);
    expect([4000, 0.8, undefined].map((value) => needsJudgement(continuity, value))).toEqual([
      true,
      false,
      false,
    ]);
  });

  test("[WO-2] whichever entry of a complete job is left out, the power is refused or the entry was no condition of it", () => {
    const entries = doneBefore(order, "power-up:circuit:circuit");
    const power = named(order, "power-up:circuit:circuit");
    for (const left of entries) {
      const state = workState(
        order,
        entries.filter((one) => one !== left),
      );
      const isNeeded = power.needs.some((id) => id.startsWith(`${left.step}:`) && id.endsWith(left.about.id));
      if (isNeeded) expect(mayPowerUp(state, "circuit", site).allowed).toBe(false);
    }
  });

  test("[WO-3] dead is not proved without the tester proved before and after", () => {
    const prove = named(order, "prove-dead:detector:d1");
    const entries = doneBefore(order, prove.id);
    const parts = (times: Readonly<Record<string, number>>): SiteEntry[] =>
      prove.parts.map((part) => entry(prove, { part, outcome: "passed", time: at(times[part] ?? 20) }));
    const statusOf = (more: SiteEntry[]) =>
      workState(order, [...entries, ...more]).steps.get(prove.id)?.status;
    expect(statusOf(parts({ "tester-before": 19, "tester-after": 21 }))).toBe("done");
    expect(statusOf(parts({ "tester-before": 22, "tester-after": 23 }))).toBe("part");
    expect(statusOf(parts({ "tester-before": 18, "tester-after": 19 }))).toBe("part");
    expect(statusOf(parts({}).filter((one) => one.part !== "L′–N"))).toBe("part");
  });

  test("[WO-3] voltage found at one pair leaves the circuit alive for the program", () => {
    const entries = doneBefore(order, "earth:circuit:circuit");
    expect([...workState(order, entries).dead]).toEqual(["circuit"]);
    const found = entry(named(order, "prove-dead:detector:d1"), {
      part: "L′–N",
      outcome: "failed",
      time: at(30),
    });
    expect(workState(order, [...entries, found]).dead.size).toBe(0);
  });

  test("after the power has been back, dead work needs isolation and a whole new proof", () => {
    const entries = doneBefore(order, "warm-up:detector:d1");
    const state = workState(order, entries);
    expect([...state.live]).toEqual(["circuit"]);
    expect(codes(mayEnter(state, "insulation:circuit:circuit", site))).toEqual(["step-needs-dead"]);
    const again = ["disconnect:circuit:circuit", "secure:circuit:circuit", "prove-dead:detector:d1"].flatMap(
      (id, i) => goodEntries(named(order, id), at(50 + i)),
    );
    expect(
      mayEnter(workState(order, [...entries, ...again]), "insulation:circuit:circuit", site).allowed,
    ).toBe(true);
    // One pair of the new proof missing: the old one does not stand in for it.
    const torn = again.filter((one) => one.part !== "N–PE");
    expect(workState(order, [...entries, ...torn]).dead.size).toBe(0);
  });

  test("[WO-6] what was isolated again is not walked before its power is back", () => {
    const entries = doneBefore(order, "walk-test:room:room");
    expect(mayEnter(workState(order, entries), "walk-test:room:room", site).allowed).toBe(true);
    const again = ["disconnect:circuit:circuit", "secure:circuit:circuit", "prove-dead:detector:d1"].flatMap(
      (id, i) => goodEntries(named(order, id), at(50 + i)),
    );
    const dead = workState(order, [...entries, ...again]);
    expect(codes(mayEnter(dead, "walk-test:room:room", site))).toEqual(["step-needs-power"]);
  });

  test("[WO-3] a power-up at a time that cannot be read, or a neutral isolated after the proof, leaves nothing proved dead", () => {
    const entries = doneBefore(order, "earth:circuit:circuit");
    const power = entry(named(order, "power-up:circuit:circuit"), { time: "some time" });
    expect(workState(order, entries).dead.size).toBe(1);
    expect(workState(order, [...entries, power]).dead.size).toBe(0);
    const tt = workOrder(site, row({ supply: { ...row().supply, system: "TT" } }));
    const proved = doneBefore(tt, "earth:circuit:circuit");
    expect(workState(tt, proved).dead.size).toBe(1);
    const late = entry(named(tt, "isolate-neutral:circuit:circuit"), { time: at(40) });
    expect(workState(tt, [...proved, late]).dead.size).toBe(0);
  });

  test("an entry that was withdrawn counts no more, and counts again when the withdrawal is withdrawn", () => {
    const out = entry(named(order, "link-out:detector:d1"), { id: "a" });
    const gone = { ...out, id: "b", time: at(1), outcome: "withdrawn", of: "a" } as const;
    const back = { ...gone, id: "c", time: at(2), of: "b" } as const;
    expect(countedEntries([gone, out])).toEqual([]);
    expect(countedEntries([back, gone, out])).toEqual([out]);
  });

  test("clocks of different zones are put into one order", () => {
    const out = entry(named(order, "link-out:detector:d1"), { id: "a", time: "2026-03-02T09:30:00+01:00" });
    const later = { ...out, id: "b", time: "2026-03-02T08:45:00Z" };
    expect(countedEntries([later, out]).map(({ id }) => id)).toEqual(["a", "b"]);
  });

  test("states do not hang on the order in which entries arrive", () => {
    const all = order.steps.flatMap((step, minute) => goodEntries(step, at(minute)));
    const statuses = (entries: readonly SiteEntry[]) =>
      [...workState(order, entries).steps.values()].map(({ status }) => status);
    fc.assert(
      fc.property(fc.shuffledSubarray(all), (entries) => {
        expect(statuses(entries)).toEqual(statuses(entries.toReversed()));
      }),
      { seed: 542, numRuns: 25 },
    );
  });
});
