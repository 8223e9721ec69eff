import { beforeAll, expect, test } from "vitest";
import { loadSolver } from "#solver";
import { coverageOf, prepareRoom } from "../coverage/index.ts";
import type { Detector, Site } from "../site/index.ts";
import { alignmentOf } from "./alignment.ts";
import type { CoverSolver, PlacementOptions } from "./contract.ts";
import { placeRoom } from "./place-room.ts";
import { doorOf, obstacleOf, rectangle, roomOf, siteOf, worldOf } from "./rooms.fixture.ts";

let solver: CoverSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const options: PlacementOptions = {
  room: "room",
  seconds: 30,
  seed: 1,
  bound: "candidates",
  alternatives: 3,
};
const door = doorOf([1, 0], [1.9, 0]);

test("Devices in one line and in the middle are in line; one out of place takes its share", () => {
  const room = roomOf(rectangle(0, 0, 6, 4));
  expect(alignmentOf(room, [[3, 2]])).toBe(1);
  expect(alignmentOf(room, [[3, 1.5]])).toBe(0.5);
  expect(
    alignmentOf(room, [
      [1.5, 2],
      [4.5, 2],
    ]),
  ).toBe(0.5);
  expect(
    alignmentOf(room, [
      [1, 1],
      [1, 3],
      [5, 1],
      [5, 3],
    ]),
  ).toBe(1);
});

test("A single device moves to the middle of its room where nothing speaks against it", async () => {
  const site = siteOf(roomOf(rectangle(0, 0, 4, 3)), { openings: [door] });
  const result = await placeRoom(site, { ...options, alternatives: 0 }, worldOf(solver));
  expect(result.best?.traits.alignment).toBeGreaterThanOrEqual(0.5);
  expect(result.best?.traits.worstDarkWalk).toBeLessThanOrEqual(2);
});

test("The reach in hand is what the farthest corner of the standing area leaves of the reach", async () => {
  const site = siteOf(roomOf(rectangle(0, 0, 4, 3)), { openings: [door] });
  const { best } = await placeRoom(site, { ...options, alternatives: 0 }, worldOf(solver));
  const [x, y] = best!.devices[0]!.at;
  // Standing area: the room less a body radius of 0.2 m, and the strip of the doorway; reach 4 m after the margin.
  const far = Math.max(
    ...[
      [0.2, 0.2],
      [3.8, 0.2],
      [0.2, 2.8],
      [3.8, 2.8],
      [1.2, 0],
      [1.7, 0],
    ].map(([a, b]) => Math.hypot(a! - x, b! - y)),
  );
  expect(best!.traits.leastMargin).toBeGreaterThan(4 - far - 1e-6);
  expect(best!.traits.leastMargin).toBeLessThan(4 - far + 0.03);
});

/** A room with a corridor next door, into which its detectors may spill. */
const besideCorridor = (width: number, depth: number, more: Partial<Site>): Site => {
  const room = roomOf(rectangle(0, 0, width, depth));
  const corridor = roomOf(rectangle(-1, -2.15, width + 2, 2), {
    id: "corridor",
    number: "2",
    use: "passing",
  });
  return siteOf(room, {
    rooms: [room, corridor],
    openings: [doorOf([1, 0], [1.9, 0], { rooms: ["room", "corridor"] })],
    ...more,
  });
};

const rooms: readonly (readonly [string, number, Site])[] = [
  ["a room of one device", 1, besideCorridor(4.5, 3.5, {})],
  [
    "a room with a rack",
    2,
    besideCorridor(9, 6, { obstacles: [obstacleOf("rack", rectangle(3, 2, 3, 0.5))] }),
  ],
  ["a long room", 1, besideCorridor(14, 5, {})],
];

test("Where the best is best in every trait, no alternative is made up", async () => {
  const site = siteOf(roomOf(rectangle(0, 0, 5, 4)), { openings: [door] });
  const result = await placeRoom(site, options, worldOf(solver));
  expect(result.best?.traits.alignment).toBe(1);
  expect(result.alternatives).toEqual([]);
});

test.each(rooms)(
  "Alternatives of %s are strict, at the same number, better in one trait than the best and worse in another",
  async (_, least, site) => {
    const result = await placeRoom(site, options, worldOf(solver));
    const best = result.best!;
    expect(best.gaps).toEqual([]);
    expect(result.alternatives.length).toBeGreaterThanOrEqual(least);
    const prepared = prepareRoom(site, "room");
    for (const layout of result.alternatives) {
      expect(coverageOf(prepared, layout.devices).gaps).toEqual([]);
      expect(layout.devices).toHaveLength(best.devices.length);
      expect(places(layout.devices)).not.toBe(places(best.devices));
      const { traits } = layout;
      const gains = [
        best.traits.worstDarkWalk - traits.worstDarkWalk,
        best.traits.spillArea - traits.spillArea,
        traits.leastMargin - best.traits.leastMargin,
        traits.alignment - best.traits.alignment,
      ];
      expect(Math.max(...gains)).toBeGreaterThan(0.04);
      expect(Math.min(...gains)).toBeLessThan(0);
    }
  },
);

test("Where the fewest devices leave a way in the dark beyond the limit, an alternative with one more keeps it", async () => {
  const room = roomOf(rectangle(0, 0, 14, 4), { demand: { catch: true, walk: false, hold: true } });
  const desk = {
    id: "desk",
    room: "room",
    kind: "desk" as const,
    name: "Desk",
    at: [12.5, 2] as const,
    radius: 0.6,
  };
  const result = await placeRoom(
    siteOf(room, { openings: [door], dwellPlaces: [desk] }),
    { ...options, alternatives: 2 },
    worldOf(solver),
  );
  expect(result.problems.map((problem) => problem.code)).toContain("dark-walk-not-kept");
  expect(result.best?.devices).toHaveLength(1);
  const [more] = result.alternatives;
  expect(more?.devices).toHaveLength(2);
  expect(more?.cost).toBe(2);
  expect(more?.gaps).toEqual([]);
  expect(more?.traits.worstDarkWalk).toBeLessThanOrEqual(2);
  expect(result.best?.traits.worstDarkWalk).toBeGreaterThan(2);
});

const places = (devices: readonly Detector[]): string => devices.map(({ at }) => at.join(" ")).join(", ");
