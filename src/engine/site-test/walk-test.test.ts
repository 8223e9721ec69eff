import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  dwellLike,
  obstacleLike,
  roomLike,
  roundModel,
  siteLike,
  sourceLike,
} from "../../../test/engine/records.ts";
import { deviceZone, roomCoverage } from "../coverage/index.ts";
import { contains, distanceBetween, outset, type Point } from "../geometry/index.ts";
import type { Site } from "../site/index.ts";
import { allowanceOf, boundaryAsked, type Station, walkTest } from "./index.ts";

/** An office 7 × 5 m with a corridor before its door, a partition, two desks and a heater; all of it is planned to be seen. */
const office = (given: Partial<Site> = {}): Site =>
  siteLike({
    rooms: [
      roomLike({ id: "office", outline: box(0, 0, 7, 5), use: "sitting" }),
      roomLike({ id: "corridor", outline: box(-2, -2.2, 11, 2), use: "passing" }),
    ],
    openings: [
      doorLike({
        id: "door",
        rooms: ["office", "corridor"],
        from: [1, 0],
        to: [1.9, 0],
        opensInto: "corridor",
      }),
    ],
    obstacles: [
      obstacleLike({
        id: "screen",
        room: "office",
        kind: "partition",
        footprint: box(4.6, 2.2, 0.1, 1.4),
        top: 1.2,
      }),
    ],
    dwellPlaces: [
      dwellLike({ id: "desk-1", room: "office", at: [2.5, 4.2] }),
      dwellLike({ id: "desk-2", room: "office", at: [3, 1.5] }),
    ],
    interference: [sourceLike({ id: "heater", room: "office", at: [6.9, 0.5] })],
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
    ...given,
  });

const named = (stations: readonly Station[], id: string): Station => {
  const found = stations.find((station) => station.id === id);
  if (!found) throw new Error(`${id} is not among ${stations.map((station) => station.id).join(", ")}`);
  return found;
};
const full = (site: Site): readonly Station[] => walkTest(site, "office", { extent: "full" }).stations;
/** The office as it is, planned once. */
const plain = full(office());
const short = walkTest(office(), "office");
const far = (path: readonly Point[], at: Point): number => distanceBetween(path[0] as Point, at);

describe("stations", () => {
  test("[WT-1] a room without detector has nothing to test, and its gap is named", () => {
    const { stations, openGaps } = walkTest(office({ detectors: [] }), "office");
    expect(stations).toEqual([]);
    expect(openGaps).toBeGreaterThan(0);
  });

  test("[WT-1] a corner that the plan does not see has no station", () => {
    const near = office({ detectors: [detectorLike({ id: "d1", room: "office", at: [1.5, 2] })] });
    const corners = full(near).filter((station) => station.kind === "corner");
    expect(corners.length).toBeGreaterThan(0);
    const zone = outset(deviceZone(near, { device: "d1", kind: "towards", doors: "closed" }), 5e-3);
    for (const { path } of corners) expect(contains(zone, path.at(-1) as Point)).toBe(true);
    expect(corners.every(({ path }) => (path.at(-1) as Point)[0] < 6)).toBe(true);
  });

  test("[WT-2] ids name what is tested, and none occurs twice", () => {
    const ids = plain.map((station) => station.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(
      expect.arrayContaining([
        "enter:door",
        "still:desk-1",
        "still:desk-2",
        "pass-by:door",
        "empty:office",
        "behind:screen",
      ]),
    );
  });

  test("[WT-2] a detector moved by a metre keeps the ids of doors and places, with another basis", () => {
    const moved = office({ detectors: [detectorLike({ id: "d1", room: "office", at: [3.4, 3] })] });
    const [before, after] = [named(plain, "enter:door"), named(full(moved), "enter:door")];
    expect(after.basis).not.toBe(before.basis);
    expect(named(full(moved), "still:desk-1").kind).toBe("still");
  });

  test("[WT-3] headroom at a dwell place is the planned reach less the distance", () => {
    // Seated 4 m less 20 % is 3.2 m; desk 1 is √(0.9² + 1.6²) = 1.8358 m away.
    const desk = named(plain, "still:desk-1");
    expect(desk.headroom).toBeCloseTo(3.2 - Math.hypot(0.9, 1.6), 6);
    expect(desk.devices).toEqual(["d1"]);
    expect(desk.seconds).toBeGreaterThanOrEqual(60);
  });

  test("[WT-4] the distance asked for by hand: boundary of the reach, start nearby, boundary of a solid", () => {
    expect(boundaryAsked({ start: 4.4, boundary: 3.4, reach: 3.4, onset: 0.5 })).toBeCloseTo(3.4, 9);
    expect(boundaryAsked({ start: 3.4, boundary: 3.4, reach: 3.4, onset: 0.5 })).toBeCloseTo(2.9, 9);
    expect(boundaryAsked({ start: 3, boundary: 2, reach: 3.4, onset: 0.5 })).toBeCloseTo(1.5, 9);
  });

  test("[WT-4] in a hall one walks in from a metre outside and is seen from the planned boundary on", () => {
    const hall = siteLike({
      rooms: [roomLike({ id: "office", outline: box(0, 0, 20, 20) })],
      models: [roundModel()],
      detectors: [detectorLike({ id: "d1", room: "office", at: [10, 10] })],
    });
    const towards = full(hall).filter((station) => station.kind === "towards");
    expect(towards).toHaveLength(8);
    for (const station of towards) {
      expect(far(station.path, [10, 10])).toBeCloseTo(4.4, 2);
      expect(station.planned).toBeCloseTo(3.4, 2);
      expect(station.expected).toMatchObject({ kind: "seen-from" });
      expect("distance" in station.expected && station.expected.distance).toBeCloseTo(3.4, 2);
    }
  });

  test("[WT-5] the walk across runs at right angles to the line to the detector, inside the zone", () => {
    const across = plain.filter((station) => station.kind === "across");
    expect(across.length).toBeGreaterThan(0);
    const at: Point = [3.4, 2.6];
    for (const { path, planned } of across) {
      const [a, b] = path as readonly [Point, Point];
      const [ux, uy] = [(b[0] - a[0]) / distanceBetween(a, b), (b[1] - a[1]) / distanceBetween(a, b)];
      expect(Math.abs((a[0] - at[0]) * uy - (a[1] - at[1]) * ux)).toBeCloseTo(planned as number, 6);
      expect(planned as number).toBeLessThanOrEqual(7 * 0.85 + 1e-6);
    }
  });

  test("[WT-6] a door is entered from outside, along the way that the plan says is longest in the dark", () => {
    const door = named(plain, "enter:door");
    const [walk] = roomCoverage(office(), "office").darkWalks;
    expect(door.planned).toBe(walk?.metres);
    expect(door.expected).toEqual({ kind: "lit-within", distance: 2 });
    expect((door.path[0] as Point)[1]).toBeCloseTo(-1.2, 6);
  });

  test("[WT-6] where the plan exceeds the limit, the plan is what must be found", () => {
    const late = office({ models: [roundModel({ ...office().models[0], response: 2 })] });
    const door = named(full(late), "enter:door");
    expect(door.planned).toBeGreaterThan(2);
    expect(door.expected).toEqual({ kind: "lit-within", distance: door.planned });
    expect(door.headroom).toBe(0);
  });

  test("[WT-8] passers-by walk along the wall outside, in the corridor, and must not be seen", () => {
    const pass = named(plain, "pass-by:door");
    expect(pass.expected).toEqual({ kind: "not-seen" });
    for (const at of pass.path) expect(at[1]).toBeCloseTo(-1, 6);
  });

  test("[WT-8] a corridor whose light the same detector switches has no passers-by", () => {
    const shared = office({
      detectors: [
        detectorLike({ id: "d1", room: "office", at: [3.4, 2.6], controls: ["office", "corridor"] }),
      ],
    });
    expect(full(shared).some((station) => station.kind === "pass-by")).toBe(false);
  });

  test("[WT-10] the empty room waits five minutes that nobody attends", () => {
    const { stations, seconds } = short;
    expect(named(stations, "empty:office").waiting).toBe(300);
    expect(seconds.waiting).toBe(300);
    expect(seconds.attended).toBeLessThan(240);
  });

  test("whatever its kind, what ends below the height of one who walks hides nobody and has no station behind it, and what reaches above has", () => {
    const withTop = (top: number) =>
      full(
        office({
          obstacles: [
            obstacleLike({
              id: "thing",
              room: "office",
              kind: "other",
              footprint: box(4.6, 2.2, 0.1, 1.4),
              top,
            }),
          ],
        }),
      ).some((station) => station.id === "behind:thing");
    expect([withTop(0.95), withTop(1), withTop(1.2)]).toEqual([false, false, true]);
  });

  test("behind a low partition one is seen over it, beyond its shadow", () => {
    const behind = named(plain, "behind:screen");
    expect(behind.why).toBe("seen-over-obstacle");
    expect((behind.path[0] as Point)[0]).toBeGreaterThan(4.7);
  });
});

describe("short tests", () => {
  test("[WT-9] the allowance grows with every 60 m² or 6 devices begun", () => {
    expect(allowanceOf({ area: 60, devices: 6 })).toEqual({ stations: 8, seconds: 240 });
    expect(allowanceOf({ area: 60.1, devices: 1 })).toEqual({ stations: 16, seconds: 480 });
    expect(allowanceOf({ area: 10, devices: 13 })).toEqual({ stations: 24, seconds: 720 });
  });

  test("[WT-9] an ordinary room has one station of each kind that exists, in at most 8 stations and 4 minutes", () => {
    const all = new Set(plain.map((station) => station.kind));
    const { stations, seconds, left } = short;
    expect(stations.length).toBeLessThanOrEqual(8);
    expect(seconds.attended).toBeLessThanOrEqual(240);
    expect(new Set(stations.map((station) => station.kind))).toEqual(all);
    expect(left.stations).toBe(plain.length - stations.length);
    const ids = [...stations, ...short.others].map((station) => station.id);
    expect(ids.toSorted()).toEqual(plain.map((station) => station.id).toSorted());
  });

  test("[WT-9] of each kind the thinnest margin is taken first", () => {
    const { stations } = short;
    const still = plain.filter((station) => station.kind === "still");
    const thinnest = Math.min(...still.map((station) => station.headroom));
    expect(stations.find((station) => station.kind === "still")?.headroom).toBe(thinnest);
  });

  test("[WT-9] rooms of any size and number of devices stay within their allowance", () => {
    fc.assert(
      fc.property(
        fc.record({
          width: fc.double({ min: 3, max: 9, noNaN: true }),
          depth: fc.double({ min: 3, max: 6.5, noNaN: true }),
          places: fc.array(
            fc.tuple(
              fc.double({ min: 0.1, max: 0.9, noNaN: true }),
              fc.double({ min: 0.1, max: 0.9, noNaN: true }),
            ),
            {
              minLength: 1,
              maxLength: 4,
            },
          ),
        }),
        ({ width, depth, places }) => {
          const site = office({
            rooms: [
              roomLike({ id: "office", outline: box(0, 0, width, depth), use: "sitting" }),
              roomLike({ id: "corridor", outline: box(-2, -2.2, 11, 2) }),
            ],
            obstacles: [],
            interference: [],
            dwellPlaces: places.map(([x, y], i) =>
              dwellLike({ id: `desk-${i}`, room: "office", at: [x * width, y * depth] }),
            ),
            detectors: places.map(([x, y], i) =>
              detectorLike({ id: `d${i}`, room: "office", at: [y * width, x * depth] }),
            ),
          });
          const { stations, seconds } = walkTest(site, "office");
          const most = allowanceOf({ area: width * depth, devices: places.length });
          expect(stations.length).toBeLessThanOrEqual(most.stations);
          expect(seconds.attended).toBeLessThanOrEqual(most.seconds);
          expect(stations.length).toBeGreaterThan(0);
        },
      ),
      { seed: 511, numRuns: 12 },
    );
  });

  test("[WT-11] devices that no chosen station names are listed, and a full test names all that see floor", () => {
    const crowd = office({
      detectors: [1, 3, 5].map((x) => detectorLike({ id: `d${x}`, room: "office", at: [x, 2.5] })),
    });
    const few = walkTest(crowd, "office");
    const tested = new Set(
      few.stations.flatMap((station) =>
        station.expected.kind !== "not-seen" && station.devices.length === 1 ? station.devices : [],
      ),
    );
    expect([...tested, ...few.left.devices].toSorted()).toEqual(["d1", "d3", "d5"]);
    expect(walkTest(crowd, "office", { extent: "full" }).left).toEqual({
      stations: 0,
      devices: [],
      tags: {},
    });
  });

  test("[WT-11] a corner or a door that several devices answer for proves none of them", () => {
    const pair = office({
      detectors: [
        detectorLike({ id: "d1", room: "office", at: [3.4, 2.6] }),
        detectorLike({ id: "d2", room: "office", at: [3.6, 2.4] }),
      ],
    });
    const enter = named(full(pair), "enter:door");
    expect(enter.devices.toSorted()).toEqual(["d1", "d2"]);
    const { stations, left } = walkTest(pair, "office");
    const watched = stations.filter((one) => one.kind === "towards" || one.kind === "across");
    expect(new Set(watched.flatMap((one) => one.devices))).toEqual(new Set(["d1", "d2"]));
    expect(left.devices).toEqual([]);
  });

  test("[TO-2] the empty room comes last, and the way is that of the tour", () => {
    const { stations, way, seconds } = short;
    expect(stations.at(-1)?.kind).toBe("empty");
    const own = stations.reduce((sum, station) => sum + station.seconds, 0);
    expect(seconds.attended).toBeCloseTo(own + way / 1, 9);
  });
});
