import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  flightLike,
  obstacleLike,
  roomLike,
  roundModel,
  siteLike,
} from "../../../test/engine/records.ts";
import { english } from "../check/index.ts";
import { onsetOfPass } from "../detector/index.ts";
import type { Point, Way } from "../geometry/index.ts";
import { lookUp, planningDefaults, type Site } from "../site/index.ts";
import { placeAlong, type Watcher, walkInTheDark, worstWalk } from "./dark-walk.ts";
import { prepareRoom, roomCoverage } from "./index.ts";
import { watchersOf } from "./watchers.ts";
import { countedDevices, zoneBook } from "./zone-book.ts";

const straight = (...path: Point[]): Way => ({
  path,
  length: path
    .slice(1)
    .reduce((sum, p, i) => sum + Math.hypot(p[0] - (path[i] as Point)[0], p[1] - (path[i] as Point)[1]), 0),
});
const watcher = (sees: Watcher["sees"], given: Partial<Watcher> = {}): Watcher => ({
  device: "d",
  onset: 0.5,
  response: 1,
  sees,
  ...given,
});

describe("a walk in the dark", () => {
  const way = straight([0, 0], [10, 0]);

  test("in sight from the start: onset + speed × response", () => {
    expect(walkInTheDark(way, { watchers: [watcher(() => true)], speed: 1.4 })).toEqual({
      lightAt: 1.9,
      device: "d",
    });
  });

  test("in sight from 3 m on: 3 + 0.5 + 1.4", () => {
    const walked = walkInTheDark(way, { watchers: [watcher(([x]) => x >= 3)], speed: 1.4 });
    expect(walked.lightAt).toBeCloseTo(4.9, 2);
  });

  test("a break in sight starts the count again", () => {
    // Seen from 0 to 0.4 m, and from 2 m on.
    const walked = walkInTheDark(way, { watchers: [watcher(([x]) => x <= 0.4 || x >= 2)], speed: 1.4 });
    expect(walked.lightAt).toBeCloseTo(2 + 0.5 + 1.4, 2);
  });

  test("a stretch shorter than the onset never counts, one a little longer does", () => {
    const seen = (width: number) =>
      walkInTheDark(way, { watchers: [watcher(([x]) => x >= 4 && x <= 4 + width)], speed: 1.4 });
    expect(seen(0.45).device).toBeUndefined();
    expect(seen(0.55).lightAt).toBeCloseTo(4 + 0.5 + 1.4, 2);
  });

  test("the count goes on round a corner of the way while the walker stays in sight", () => {
    const bent = straight([0, 0], [1, 0], [1, 5]);
    const walked = walkInTheDark(bent, { watchers: [watcher(([x, y]) => x >= 0.8 || y > 0)], speed: 1.4 });
    expect(walked.lightAt).toBeCloseTo(0.8 + 0.5 + 1.4, 2);
  });

  test("of several devices the first light counts, not the first reaction", () => {
    const slow = watcher(() => true, { device: "slow", response: 3 });
    const quick = watcher(([x]) => x >= 1, { device: "quick", response: 0.5 });
    expect(walkInTheDark(way, { watchers: [slow, quick], speed: 1.4 }).device).toBe("quick");
    expect(walkInTheDark(way, { watchers: [quick, slow], speed: 1.4 }).lightAt).toBeCloseTo(1 + 0.5 + 0.7, 2);
  });

  test("the worst walk is the longest in the dark, and no longer than its way", () => {
    const toward = (id: string, at: Point) => ({ kind: "corner" as const, id, at });
    const short = {
      toward: toward("near", [1, 0]),
      way: straight([0, 0], [1, 0]),
      walked: { lightAt: 1.9, device: "d" },
    };
    const dark = {
      toward: toward("far", [5, 0]),
      way: straight([0, 0], [5, 0]),
      walked: { lightAt: Number.POSITIVE_INFINITY, device: undefined },
    };
    expect(worstWalk("door", [short])?.metres).toBe(1);
    expect(worstWalk("door", [short, dark])).toMatchObject({ metres: 5, lit: false, toward: { id: "far" } });
    expect(worstWalk("door", [])).toBeUndefined();
    expect(placeAlong(straight([0, 0], [2, 0], [2, 2]), 3)).toEqual([2, 1]);
  });
});

describe("reach in the direction of walking", () => {
  // detection.md 2.5: towards 4 m, across 8 m; x_on = Rr·sqrt(1 − b²/Rt²) for b = 0, 1, 2, 4, 6 m.
  const published: readonly (readonly [b: number, onset: number])[] = [
    [0, 4.0],
    [1, 3.9686],
    [2, 3.873],
    [4, 3.4641],
    [6, 2.6458],
  ];
  const hall = roomLike({ id: "hall", outline: box(-20, -10, 40, 20), ceilingHeight: 2.5 });
  const model = roundModel({
    zones: { towards: [{ height: 2.5, radius: 4 }], across: [{ height: 2.5, radius: 8 }] },
    onset: 0,
  });
  const site = siteLike({
    rooms: [hall],
    models: [model],
    detectors: [detectorLike({ id: "d", room: "hall", at: [0, 0], height: 2.5 })],
    defaults: { ...planningDefaults, margin: { seated: 0, towards: 0, across: 0, spill: 0 }, response: 0 },
  });
  const watching = (plan: Site): readonly Watcher[] => {
    const prepared = prepareRoom(plan, "hall");
    const book = zoneBook(prepared);
    return watchersOf({
      look: lookUp(plan),
      room: hall,
      devices: countedDevices(prepared, plan.detectors),
      zoneOf: (device, kind) => book.zone({ device, kind, open: undefined }),
    });
  };
  const watchers = watching(site);

  test.each(published)(
    "one who walks straight past at %d m is first seen %d m before the nearest point",
    (b, onset) => {
      const walked = walkInTheDark(straight([-15, b], [15, b]), { watchers, speed: 1 });
      // Bisection stops at 1 mm.
      expect(15 - walked.lightAt).toBeCloseTo(onset, 2);
      expect(onset).toBeCloseTo(onsetOfPass({ towards: 4, across: 8 }, b) as number, 3);
    },
  );

  test("one who walks past further away than the reach across is never seen", () => {
    expect(walkInTheDark(straight([-15, 8.5], [15, 8.5]), { watchers, speed: 1 }).device).toBeUndefined();
  });

  test("the planning margin shortens both reaches: at b = 2 m, 3.4·sqrt(1 − 4/6.8²)", () => {
    const careful: Site = { ...site, defaults: { ...site.defaults, margin: planningDefaults.margin } };
    const less = watching(careful);
    const walked = walkInTheDark(straight([-15, 2], [15, 2]), { watchers: less, speed: 1 });
    expect(15 - walked.lightAt).toBeCloseTo(3.4 * Math.sqrt(1 - 4 / 6.8 ** 2), 2);
  });
});

describe("walks in the dark of a room", () => {
  const corridor = roomLike({ id: "corridor", outline: box(0, 0, 20, 2), use: "passing" });
  const doors = [
    doorLike({ id: "west", rooms: ["corridor", null], from: [0, 0.5], to: [0, 1.5] }),
    doorLike({ id: "east", rooms: ["corridor", null], from: [20, 0.5], to: [20, 1.5] }),
  ];
  const at = (...places: Point[]) =>
    siteLike({
      rooms: [corridor],
      openings: doors,
      detectors: places.map((place, i) => detectorLike({ id: `d${i}`, room: "corridor", at: place })),
    });

  test("with a detector over each door the light comes after onset and response", () => {
    const { darkWalks, covered, demanded } = roomCoverage(at([1, 1], [19, 1]), "corridor");
    expect(darkWalks.map((walk) => [walk.opening, walk.lit])).toEqual([
      ["west", true],
      ["east", true],
    ]);
    for (const walk of darkWalks) expect(walk.metres).toBeCloseTo(1.9, 2);
    expect([demanded.catch, covered.catch]).toEqual([2, 2]);
  });

  test("a response known from the data sheet takes the place of the assumed one, with the lamp's start added", () => {
    const site = at([1, 1], [19, 1]);
    const quick = { ...site, models: site.models.map((model) => ({ ...model, response: 0.2 })) };
    for (const walk of roomCoverage(quick, "corridor").darkWalks)
      expect(walk.metres).toBeCloseTo(0.5 + 1.4 * (0.2 + planningDefaults.lampStart), 2);
  });

  test("one detector in the middle is reached after walking into its reach towards: 10 − 3.4 + 0.5 + 1.4", () => {
    const { darkWalks, covered, problems } = roomCoverage(at([10, 1]), "corridor");
    expect(darkWalks[0]?.metres).toBeCloseTo(10 - 3.4 + 0.5 + 1.4, 1);
    expect(darkWalks[0]?.lit).toBe(true);
    expect(covered.catch).toBe(0);
    expect(problems.map((problem) => problem.code)).toContain("dark-walk-too-long");
  });

  test("no detector in sight: the whole way, not lit", () => {
    const wall = obstacleLike({ id: "wall", room: "corridor", footprint: box(4, 0, 0.2, 1), top: 2.7 });
    const blind = {
      ...at([10, 1]),
      obstacles: [wall],
      models: [roundModel({ zones: { towards: [{ height: 2.7, radius: 0.3 }] } })],
    };
    const { darkWalks, problems } = roomCoverage(blind, "corridor");
    expect(darkWalks[0]?.lit).toBe(false);
    // The longest way is to the far corner, and bends round the end of the wall.
    expect(darkWalks[0]?.metres).toBeGreaterThan(19.8);
    expect(darkWalks[0]?.path.length).toBeGreaterThan(2);
    expect(problems.map((problem) => problem.code)).toContain("dark-walk-unlit");
  });

  test("an added detector never makes a walk in the dark longer", () => {
    const one = roomCoverage(at([6, 1]), "corridor").darkWalks;
    const two = roomCoverage(at([6, 1], [14, 1]), "corridor").darkWalks;
    for (const [i, walk] of two.entries())
      expect(walk.metres).toBeLessThanOrEqual((one[i]?.metres ?? 0) + 1e-9);
  });

  test("stairs are lit a metre before the first step, or it must be mended", () => {
    const stair = roomLike({ id: "stair", outline: box(0, 0, 8, 2), use: "stair", ceilingHeight: 4 });
    const flight = flightLike({
      id: "flight",
      room: "stair",
      footprint: box(4, 0, 3, 2),
      from: [4, 1],
      to: [7, 1],
    });
    const withDetector = (x: number) =>
      roomCoverage(
        siteLike({
          rooms: [stair],
          openings: [doorLike({ id: "door", rooms: ["stair", null], from: [0, 0.5], to: [0, 1.5] })],
          floorPieces: [flight],
          detectors: [detectorLike({ id: "d", room: "stair", at: [x, 1], height: 2.7 })],
        }),
        "stair",
      );
    // First step 4 m from the door; light after 1.9 m.
    const good = withDetector(1).checks.find((check) =>
      english(check.what).startsWith("Light before the first step"),
    );
    expect(good).toMatchObject({ verdict: "pass", limit: 1, unit: "m" });
    expect(good?.actual).toBeCloseTo(2.1, 1);
    const bad = withDetector(5.9);
    expect(bad.problems.map((problem) => problem.code)).toContain("stair-lit-too-late");
  });
});
