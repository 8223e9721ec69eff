import { describe, expect, test } from "vitest";
import { box, detectorLike, doorLike, roomLike, roundModel, siteLike } from "../../../test/engine/records.ts";
import { dayAfter, isDay } from "./days.ts";
import { careOccasions, isInSummer, type Occasion } from "./occasions.ts";
import { type CareQuestion, careOfJob, carePoints } from "./points.ts";
import { type CareEntry, careDue, careStates } from "./state.ts";

const none = new Set<string>();
const datesOf = (handedOver: string, today: string, begun: ReadonlySet<string> = none) =>
  careOccasions(handedOver, { today, begun }).map(({ id, due }) => `${id} ${due}`);

describe("Days", () => {
  test("later by days and years, over ends of months and leap years", () => {
    expect(dayAfter("2026-11-26", { days: 28 })).toBe("2026-12-24");
    expect(dayAfter("2026-12-10", { days: 28 })).toBe("2027-01-07");
    expect(dayAfter("2028-02-29", { years: 1 })).toBe("2029-02-28");
    expect(dayAfter("2028-02-29", { years: 4 })).toBe("2032-02-29");
    expect(dayAfter("2026-11-26", { years: 2.5 })).toBe("2029-05-26");
    expect(dayAfter("soon", { days: 1 })).toBeUndefined();
    expect(isDay("2026-02-30")).toBe(false);
  });
});

describe("Visits", () => {
  test("[CA-1] four weeks after hand-over, in the first summer, and every year", () => {
    expect(datesOf("2026-11-26", "2026-11-27")).toEqual([
      "trim-weeks 2026-12-24",
      "trim-summer 2027-07-01",
      "yearly-1 2027-11-26",
    ]);
    expect(datesOf("2026-09-10", "2026-09-10")).toContain("trim-summer 2027-07-01");
  });

  test("[CA-1] where the four weeks end in summer, one visit is both", () => {
    const occasions = careOccasions("2026-06-20", { today: "2026-06-20", begun: none });
    expect(occasions.map(({ id }) => id)).toEqual(["trim-weeks", "yearly-1"]);
    expect(occasions.map(isInSummer)).toEqual([true, false]);
  });

  test("[CA-2] of missed checks the latest stands, with the next; what was begun stays", () => {
    const trims = ["trim-weeks 2026-12-24", "trim-summer 2027-07-01"];
    expect(datesOf("2026-11-26", "2030-01-15")).toEqual([
      ...trims,
      "yearly-3 2029-11-26",
      "yearly-4 2030-11-26",
    ]);
    expect(datesOf("2026-11-26", "2030-01-15", new Set(["yearly-1"]))).toContain("yearly-1 2027-11-26");
    expect(datesOf("2026-11-26", "2027-11-26")).toContain("yearly-1 2027-11-26");
    expect(careOccasions(undefined, { today: "2027-01-01", begun: none })).toEqual([]);
    expect(datesOf("first of May", "2027-01-01")).toEqual([]);
  });
});

const yearly: Occasion = { id: "yearly-1", kind: "yearly", due: "2027-11-26" };
const summer: Occasion = { id: "trim-summer", kind: "trim-summer", due: "2027-07-01" };
const site = siteLike({
  rooms: [
    roomLike({ id: "hall", outline: box(0, 0, 5, 4) }),
    roomLike({ id: "dryer", outline: box(0, 5, 5, 4) }),
  ],
  openings: [doorLike({ id: "in", rooms: ["hall", null], from: [0, 1], to: [0, 1.9] })],
  interference: [{ id: "fan", room: "dryer", kind: "air-outlet", at: [1, 6], height: 2.5 }],
  models: [roundModel()],
  detectors: [
    detectorLike({ id: "d1", tag: "B1.01", room: "hall", at: [2.5, 2] }),
    detectorLike({
      id: "d2",
      tag: "B1.02",
      room: "dryer",
      at: [2.5, 7],
      masks: [{ from: 0, to: 1, inner: 0, outer: 1 }],
    }),
  ],
});
const reading = { id: "r", station: "enter:in", basis: "", seen: true, recorded: "2026-11-20T10:00:00Z" };
const question: CareQuestion = {
  settings: new Map([["d1", { offDelay: 600, threshold: "off" as const }]]),
  found: { boards: [], circuits: [] },
  entries: [
    {
      id: "e",
      time: "2026-11-20T10:00:00Z",
      about: { kind: "detector", id: "d1" },
      step: "delay",
      outcome: "read",
      value: 605,
    },
  ],
  readings: () => [
    { ...reading, distance: 1.2 },
    { ...reading, id: "s", distance: 0.9, recorded: "2026-11-21T10:00:00Z" },
  ],
};
const pointsOf = (room: string, occasion: Occasion = yearly) =>
  carePoints(site, room, { occasion, question });
const entry = (given: Partial<CareEntry>): CareEntry => ({
  id: "x",
  time: "2027-11-26T10:00:00Z",
  about: { kind: "detector", id: "d1" },
  step: "care-delay",
  outcome: "read",
  occasion: "yearly-1",
  ...given,
});

describe("What is looked at", () => {
  test("[CA-3] only what the room has, in five minutes of attention", () => {
    expect(pointsOf("hall").map(({ name }) => name)).toEqual(["lens", "layout", "door-walk", "delay"]);
    expect(pointsOf("dryer").map(({ name }) => name)).toEqual(["lens", "mask", "layout", "fans-on"]);
    expect(pointsOf("hall", summer).map(({ name }) => name)).toEqual(["asked", "false-on", "door-walk"]);
    expect(pointsOf("dryer", summer).map(({ name }) => name)).toContain("fans-on");
    expect(pointsOf("nowhere")).toEqual([]);
    for (const room of ["hall", "dryer"])
      for (const occasion of [yearly, summer]) {
        const points = pointsOf(room, occasion);
        expect(points.reduce((sum, { seconds }) => sum + seconds, 0)).toBeLessThanOrEqual(300);
        expect(new Set(points.map(({ id }) => id)).size).toBe(points.length);
        for (const { step, name } of points) expect(step).toBe(`care-${name}`);
      }
  });

  test("what was found before stands beside it: the last reading of the worst door, and the delay by stop-watch", () => {
    const [walk, delay] = pointsOf("hall").slice(2);
    expect(walk!.result).toMatchObject({
      stored: { value: 0.9 },
      limit: { most: site.defaults.darkWalkLimit },
    });
    expect(delay!.result).toMatchObject({
      stored: { value: 605 },
      limit: { least: 540, most: 660 },
      drift: 60,
    });
  });

  test("RCD buttons where there may be one, emergency luminaires, the inspection once it falls due", () => {
    const circuit = {
      id: "c",
      name: "L3",
      breaker: "B",
      rcd: "unknown",
      protectiveConductor: "yes",
      sharedNeutral: "no",
    } as const;
    const found = { boards: [], circuits: [circuit, { ...circuit, id: "n", rcd: "no" } as const] };
    const of = (inspection: string | undefined) =>
      careOfJob(site, { occasion: yearly, found, inspection }).map(({ id }) => id);
    expect(of("2030-11-26")).toEqual(["rcd-button:circuit:c"]);
    expect(of("2028-03-01")).toEqual(["rcd-button:circuit:c", "inspection:job:job"]);
    expect(careOfJob(site, { occasion: summer, found, inspection: undefined })).toEqual([]);
  });
});

describe("Where a visit stands", () => {
  const stateOf = (...entries: readonly CareEntry[]) =>
    careStates(pointsOf("hall"), "yearly-1", entries).find(({ point }) => point.name === "delay")!;

  test("[CA-4] beyond the limit it fails; within it, but far from what was found, it is pointed out", () => {
    expect(stateOf(entry({ value: 640 }))).toMatchObject({ check: { verdict: "pass" }, drifted: undefined });
    expect(stateOf(entry({ value: 700 }))).toMatchObject({ check: { verdict: "fail", actual: 700 } });
    expect(stateOf(entry({ value: 543 }))).toMatchObject({ check: { verdict: "pass" }, drifted: -62 });
  });

  test("[CA-5] nothing entered, another visit's entry, a withdrawn one, or no figure: not proven", () => {
    for (const entries of [
      [],
      [entry({ value: 600, occasion: "yearly-2" })],
      [
        entry({ value: 600 }),
        entry({ id: "y", time: "2027-11-26T10:01:00Z", outcome: "withdrawn", of: "x" }),
      ],
      [entry({})],
      [entry({ value: Number.NaN })],
    ])
      expect(stateOf(...entries).check.verdict).toBe("not-proven");
    const later = entry({ id: "z", time: "2027-11-26T11:00:00Z", value: 900 });
    expect(stateOf(later, entry({ value: 600 })).check).toMatchObject({ verdict: "fail", actual: 900 });
  });

  test("what recurs falls due from the hand-over, or from when it was last passed", () => {
    const due = (entries: readonly CareEntry[]) =>
      careDue("2026-11-26", { entries, luminaires: ["l1", "l2"], years: 5 });
    expect(due([])).toEqual({ emergency: "2027-11-26", inspection: "2031-11-26" });
    const passed = { step: "care-emergency", outcome: "passed" } as const;
    const first = entry({ ...passed, about: { kind: "luminaire", id: "l1" } });
    expect(due([first]).emergency).toBe("2027-11-26");
    const second = entry({ ...passed, id: "y", about: { kind: "luminaire", id: "l2" } });
    expect(due([first, second]).emergency).toBe("2028-11-26");
    const failed = entry({ step: "care-inspection", outcome: "failed", about: { kind: "job", id: "job" } });
    expect(due([failed]).inspection).toBe("2031-11-26");
    expect(due([{ ...failed, outcome: "passed" }]).inspection).toBe("2032-11-26");
    expect(careDue("2026-11-26", { entries: [], luminaires: [] }).inspection).toBe("2030-11-26");
  });
});
