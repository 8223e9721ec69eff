import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { english } from "../check/index.ts";
import { roomVerdict, type Station, type StationReading, stationVerdict, type WalkTest } from "./index.ts";

const station = (given: Partial<Station> = {}): Station => ({
  id: "towards:d1:0",
  room: "office",
  kind: "towards",
  subject: { kind: "device", id: "d1" },
  path: [
    [4, 0],
    [1, 0],
  ],
  passes: 2,
  expected: { kind: "seen-from", distance: 3.4 },
  planned: 3.4,
  devices: ["d1"],
  why: "planned-boundary",
  headroom: 0,
  seconds: 10,
  waiting: 0,
  heard: false,
  basis: "d1 here",
  ...given,
});
const reading = (given: Partial<StationReading> = {}): StationReading => ({
  id: "r1",
  station: "towards:d1:0",
  basis: "d1 here",
  seen: true,
  recorded: "2026-03-02T09:00:00Z",
  ...given,
});
const test1 = (stations: readonly Station[], given: Partial<WalkTest> = {}): WalkTest => ({
  room: "office",
  stations,
  way: 0,
  seconds: { attended: 0, waiting: 0 },
  left: { stations: 0, devices: [], tags: {} },
  others: [],
  openGaps: 0,
  ...given,
});
const verdictOf = (one: Station, readings: readonly StationReading[]) =>
  stationVerdict(one, readings).check.verdict;

describe("stations", () => {
  test("[VE-1] without a reading nothing is proven", () => {
    const { check } = stationVerdict(station(), []);
    expect(check).toMatchObject({ verdict: "not-proven", actual: undefined, limit: 3.4, unit: "m" });
    expect(check.assumptions.map(english)).toEqual(["Not yet tested"]);
  });

  test("[VE-1] seen without the distance that is asked for is not proven", () => {
    expect(verdictOf(station(), [reading()])).toBe("not-proven");
    expect(verdictOf(station(), [reading({ distance: Number.NaN })])).toBe("not-proven");
    expect(verdictOf(station(), [reading({ distance: -1 })])).toBe("not-proven");
  });

  test("seen at the planned boundary or farther passes, nearer fails", () => {
    expect(verdictOf(station(), [reading({ distance: 3.4 })])).toBe("pass");
    expect(verdictOf(station(), [reading({ distance: 3.9 })])).toBe("pass");
    expect(verdictOf(station(), [reading({ distance: 3.39 })])).toBe("fail");
    expect(verdictOf(station(), [reading({ seen: false })])).toBe("fail");
  });

  test("lit within the limit passes, later fails, never lit fails", () => {
    const door = station({ kind: "enter", expected: { kind: "lit-within", distance: 2 } });
    expect(verdictOf(door, [reading({ distance: 2 })])).toBe("pass");
    expect(verdictOf(door, [reading({ distance: 2.1 })])).toBe("fail");
    expect(verdictOf(door, [reading({ seen: false })])).toBe("fail");
  });

  test("one who must not be seen fails when seen", () => {
    const pass = station({ kind: "pass-by", expected: { kind: "not-seen" } });
    expect(verdictOf(pass, [reading({ seen: true })])).toBe("fail");
    expect(verdictOf(pass, [reading({ seen: false })])).toBe("pass");
  });

  test("[VE-2] the latest reading counts whatever the order, and all earlier ones are kept", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([1, 2, 3, 4, 5], { minLength: 1 }), (hours) => {
        const readings = hours.map((hour) =>
          reading({ id: `r${hour}`, distance: hour, recorded: `2026-03-02T0${hour}:00:00Z` }),
        );
        const newest = Math.max(...hours);
        const { latest, earlier, check } = stationVerdict(station(), readings);
        expect(latest?.distance).toBe(newest);
        expect(check.verdict).toBe(newest >= 3.4 ? "pass" : "fail");
        expect(earlier.map((one) => one.distance)).toEqual(
          hours.filter((hour) => hour !== newest).toSorted((a, b) => b - a),
        );
      }),
      { seed: 521 },
    );
  });

  test("[VE-2] of two readings of one moment every copy of the job takes the same", () => {
    const [a, b] = [reading({ id: "a", distance: 3 }), reading({ id: "b", distance: 4 })];
    expect(stationVerdict(station(), [a, b]).latest?.id).toBe("b");
    expect(stationVerdict(station(), [b, a]).latest?.id).toBe("b");
  });

  test("[VE-3] a reading of a detector that has been moved since proves nothing", () => {
    expect(verdictOf(station({ basis: "d1 there" }), [reading({ distance: 4 })])).toBe("not-proven");
    expect(verdictOf(station({ basis: "d1 there" }), [reading({ seen: false })])).toBe("not-proven");
  });
});

describe("rooms", () => {
  const [first, second] = [
    station(),
    station({ id: "still:desk", kind: "still", expected: { kind: "seen" } }),
  ];
  const good = [reading({ distance: 4 }), reading({ id: "r2", station: "still:desk" })];

  test("[VE-4] a room passes when every station passes", () => {
    expect(roomVerdict(test1([first, second]), good).check).toMatchObject({
      verdict: "pass",
      actual: 2,
      limit: 2,
    });
  });

  test("[VE-4] one station without reading leaves it not proven", () => {
    const { check } = roomVerdict(test1([first, second]), good.slice(0, 1));
    expect(check).toMatchObject({ verdict: "not-proven", actual: 1, limit: 2 });
    expect(check.assumptions.map(english)).toEqual(["Stations not proven: 1"]);
  });

  test("[VE-4] one failed station fails it, whatever is missing", () => {
    expect(roomVerdict(test1([first, second]), [reading({ seen: false })]).check.verdict).toBe("fail");
  });

  test("[VE-4] a gap that the plan leaves open is never passed over", () => {
    expect(roomVerdict(test1([first, second], { openGaps: 1 }), good).check.verdict).toBe("not-proven");
  });

  test("[VE-4] a detector that no walked station tests leaves the room not proven, named; once a station of the full test has seen it, it is tested", () => {
    const left = { stations: 1, devices: ["d2"], tags: { d2: "B2" } };
    const beside = station({ id: "towards:d2:0", devices: ["d2"] });
    const short = test1([first, second], { left, others: [beside] });
    const { check } = roomVerdict(short, good);
    expect(check).toMatchObject({ verdict: "not-proven", actual: 2, limit: 2 });
    expect(check.assumptions.map(english)).toEqual([
      "Take the full test: no station of the short one tests B2",
    ]);
    const more = reading({ id: "r4", station: "towards:d2:0", distance: 4 });
    expect(roomVerdict(short, [...good, more]).check).toMatchObject({ verdict: "pass", assumptions: [] });
  });

  test("[VE-4] a room without stations is not proven", () => {
    expect(roomVerdict(test1([]), []).check.verdict).toBe("not-proven");
  });

  test("[VE-4] what failed in a full test fails the room in a short one too", () => {
    const short = test1([first], { others: [second] });
    expect(roomVerdict(short, good).check).toMatchObject({ verdict: "pass", actual: 2, limit: 2 });
    const missed = [
      ...good,
      reading({ id: "r3", station: "still:desk", seen: false, recorded: "2026-03-02T10:00:00Z" }),
    ];
    expect(roomVerdict(short, missed).check.verdict).toBe("fail");
    // What nobody has read of it is not asked for.
    expect(roomVerdict(short, good.slice(0, 1)).check).toMatchObject({
      verdict: "pass",
      actual: 1,
      limit: 1,
    });
  });

  test("readings of stations that the plan no longer has are kept aside", () => {
    const { left, check } = roomVerdict(test1([first]), [
      ...good,
      reading({ id: "r9", station: "corner:gone" }),
    ]);
    expect(left.map((one) => one.id)).toEqual(["r9", "r2"]);
    expect(check.verdict).toBe("pass");
  });
});
