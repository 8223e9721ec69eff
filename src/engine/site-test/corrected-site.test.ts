import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  dwellLike,
  roomLike,
  roundModel,
  siteLike,
} from "../../../test/engine/records.ts";
import { deviceZone, roomCoverage } from "../coverage/index.ts";
import { areaOf } from "../geometry/index.ts";
import {
  countedFactor,
  type FoundReach,
  foundReach,
  observationsOf,
  type StationReading,
  walkTest,
  withFoundReach,
} from "./index.ts";

const site = siteLike({
  rooms: [
    roomLike({ id: "office", outline: box(0, 0, 7, 5) }),
    roomLike({ id: "hall", outline: box(0, -2.2, 7, 2) }),
  ],
  openings: [
    doorLike({ id: "door", rooms: ["office", "hall"], from: [1, 0], to: [1.9, 0], opensInto: "hall" }),
  ],
  dwellPlaces: [dwellLike({ id: "desk", room: "office", at: [4.5, 3] })],
  models: [
    roundModel({
      zones: {
        towards: [{ height: 2.5, radius: 5 }],
        across: [{ height: 2.5, radius: 7 }],
        seated: [{ height: 2.5, radius: 4 }],
      },
    }),
  ],
  detectors: [detectorLike({ id: "d1", room: "office", at: [3.4, 2.6] })],
});
const found = (given: Partial<FoundReach> = {}): FoundReach => ({
  device: "d1",
  kind: "towards",
  readings: 9,
  enough: true,
  factor: 0.6,
  interval: [0.55, 0.66],
  seenTo: 0.6,
  unseenFrom: 0.7,
  spread: 0.1,
  ...given,
});
const unseen = (one: typeof site): number =>
  roomCoverage(one, "office").gaps.reduce((sum, gap) => sum + gap.area, 0);
const zoneArea = (one: typeof site, kind: "towards" | "across" | "seated"): number =>
  areaOf(deviceZone(one, { device: "d1", kind, doors: "closed" }));

describe("observations", () => {
  const { stations } = walkTest(site, "office", { extent: "full" });
  const towards = stations
    .filter((station) => station.kind === "towards")
    .toSorted((a, b) => (b.planned ?? 0) - (a.planned ?? 0))[0]!;
  const still = stations.find((station) => station.kind === "still")!;
  const reading = (station: typeof towards, given: Partial<StationReading> = {}): StationReading => ({
    id: "r1",
    station: station.id,
    basis: station.basis,
    seen: true,
    recorded: "2026-03-02T09:00:00Z",
    ...given,
  });
  const observed = (...readings: readonly StationReading[]) => observationsOf(site, stations, readings);

  test("first seen on the way in is a distance, with the declared reach in that direction", () => {
    const [one] = observed(reading(towards, { distance: 2 }));
    expect(one).toEqual({ device: "d1", kind: "towards", outcome: "first-seen", distance: 2, declared: 5 });
  });

  test("seen at once where the walk began only says that it reaches so far", () => {
    const start = Math.hypot(towards.path[0]![0] - 3.4, towards.path[0]![1] - 2.6);
    const [one] = observed(reading(towards, { distance: start - 0.5 }));
    expect(one?.outcome).toBe("seen");
  });

  test("never seen says that it does not even reach the nearest place of the walk", () => {
    const [one] = observed(reading(towards, { seen: false }));
    const nearest = Math.hypot(towards.path[1]![0] - 3.4, towards.path[1]![1] - 2.6);
    expect(one).toMatchObject({ outcome: "not-seen" });
    expect(one?.distance).toBeCloseTo(nearest, 9);
  });

  test("a desk tells of the seated zone at its own place", () => {
    const [one] = observed(reading(still));
    expect(one).toMatchObject({ kind: "seated", outcome: "seen", declared: 4 });
    expect(one?.distance).toBeCloseTo(Math.hypot(1.1, 0.4), 9);
  });

  test("a reading of a detector that was moved since, of a door or of a passer-by, tells nothing of reach", () => {
    expect(observed(reading(towards, { basis: "elsewhere", distance: 2 }))).toEqual([]);
    for (const kind of ["enter", "pass-by", "empty"]) {
      const other = stations.find((station) => station.kind === kind);
      if (other) expect(observed(reading(other))).toEqual([]);
    }
    expect(stations.some((station) => station.kind === "enter")).toBe(true);
  });
});

describe("corrected site", () => {
  test("[CS-1] nothing found, or the planned reach found, changes no area of coverage", () => {
    const before = unseen(site);
    expect(unseen(withFoundReach(site, { reach: [] }))).toBeCloseTo(before, 9);
    const asPlanned = [
      found({ factor: 0.85, interval: [0.8, 0.9] }),
      found({ kind: "across", factor: 0.85, interval: [0.8, 0.9] }),
      found({ kind: "seated", factor: 0.8, interval: [0.7, 0.9] }),
    ];
    const corrected = withFoundReach(site, { reach: asPlanned });
    expect(unseen(corrected)).toBeCloseTo(before, 9);
    for (const kind of ["towards", "across", "seated"] as const)
      expect(zoneArea(corrected, kind)).toBeCloseTo(zoneArea(site, kind), 9);
  });

  test("a found factor scales the zone of its device and kind, and no other", () => {
    const corrected = withFoundReach(
      { ...site, detectors: [...site.detectors, detectorLike({ id: "d2", room: "office", at: [3, 2] })] },
      { reach: [found({ factor: 0.425 })] },
    );
    // Half of the planned 0.85 lies wholly inside the room: a quarter of the disc of 4.25 m.
    expect(zoneArea(corrected, "towards")).toBeCloseTo(Math.PI * (5 * 0.425) ** 2, 1);
    expect(zoneArea(corrected, "seated")).toBeCloseTo(zoneArea(site, "seated"), 9);
    expect(areaOf(deviceZone(corrected, { device: "d2", kind: "towards", doors: "closed" }))).toBeCloseTo(
      areaOf(
        deviceZone(
          { ...site, detectors: [detectorLike({ id: "d2", room: "office", at: [3, 2] })] },
          { device: "d2", kind: "towards", doors: "closed" },
        ),
      ),
      9,
    );
  });

  test("across found of a model that declares none is kept apart from towards", () => {
    const plain = { ...site, models: [roundModel({ zones: { towards: [{ height: 2.5, radius: 5 }] } })] };
    const corrected = withFoundReach(plain, { reach: [found({ kind: "across", factor: 0.4 })] });
    expect(zoneArea(corrected, "towards")).toBeCloseTo(zoneArea(plain, "towards"), 9);
    expect(zoneArea(corrected, "across")).toBeCloseTo(Math.PI * 2 ** 2, 1);
  });

  test("[CS-2] less than planned counts at once, more only by enough readings and then by its lower end", () => {
    const asked = { planned: 0.85, warmth: 1 };
    expect(countedFactor(undefined, asked)).toBe(0.85);
    expect(countedFactor(found({ factor: 0.7, enough: false }), asked)).toBe(0.7);
    expect(countedFactor(found({ factor: 0.95, interval: [0.88, 1.02], enough: false }), asked)).toBe(0.85);
    expect(countedFactor(found({ factor: 0.95, interval: [0.88, 1.02] }), asked)).toBe(0.88);
    expect(countedFactor(found({ factor: 1.3, interval: [1.2, 1.4] }), asked)).toBe(1);
  });

  test("[CS-2] always seen leaves the plan as it is; never seen counts to where it was not", () => {
    const asked = { planned: 0.85, warmth: 1 };
    const always = found({ factor: undefined, interval: [0.4, 1.5], unseenFrom: undefined });
    expect(countedFactor(always, asked)).toBe(0.85);
    const never = found({ factor: undefined, interval: [0, 0.9], seenTo: undefined, unseenFrom: 0.3 });
    expect(countedFactor(never, asked)).toBe(0.3);
  });

  test("what was found on a warm day is brought to 22 °C", () => {
    // 26 °C leaves 0.672 of the reach: 0.6 found is 0.893 at 22 °C.
    expect(countedFactor(found({ enough: false }), { planned: 0.9, warmth: 0.672 })).toBeCloseTo(
      0.6 / 0.672,
      9,
    );
  });

  test("less found never makes a room better covered", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.84, noNaN: true }),
        fc.double({ min: 0.02, max: 0.3, noNaN: true }),
        (factor, less) => {
          const at = (one: number): number =>
            unseen(withFoundReach(site, { reach: [found({ factor: one })] }));
          expect(at(Math.max(0.05, factor - less))).toBeGreaterThanOrEqual(at(factor) - 1e-6);
        },
      ),
      { seed: 561, numRuns: 6 },
    );
  });

  test("a walk test of a weak detector, read and corrected, shows the gap that the plan did not", () => {
    const { stations } = walkTest(site, "office", { extent: "full" });
    const readings = stations
      .filter((station) => station.kind === "towards")
      .map(
        (station, i): StationReading => ({
          id: `r${i}`,
          station: station.id,
          basis: station.basis,
          seen: true,
          distance: 1.5 + 0.05 * (i % 3),
          recorded: `2026-03-02T09:0${i}:00Z`,
        }),
      );
    expect(readings.length).toBeGreaterThanOrEqual(4);
    const reach = foundReach(observationsOf(site, stations, readings));
    expect(reach[0]?.factor).toBeCloseTo(0.31, 2);
    expect(unseen(site)).toBeLessThan(0.2);
    expect(unseen(withFoundReach(site, { reach }))).toBeGreaterThan(5);
  });
});
