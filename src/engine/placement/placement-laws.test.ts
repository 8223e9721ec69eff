import { beforeAll, expect, test } from "vitest";
import { loadSolver } from "#solver";
import type { Point } from "../geometry/index.ts";
import type { Site } from "../site/index.ts";
import { diceSite, gridOver, hungAt } from "./brute-force.fixture.ts";
import type { CoverSolver, PlacementOptions } from "./contract.ts";
import { placeRoom } from "./place-room.ts";
import { doorOf, rectangle, roomOf, siteOf, worldOf } from "./rooms.fixture.ts";

let solver: CoverSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const options: PlacementOptions = {
  room: "room",
  seconds: 20,
  seed: 1,
  bound: "candidates",
  alternatives: 0,
};
const door = doorOf([1, 0], [1.9, 0]);

test("More candidates never raise the fewest number", async () => {
  let compared = 0;
  for (const seed of [101, 104, 106, 109, 112]) {
    const site = diceSite(seed);
    const points = gridOver(site.rooms[0]!.outline, 0.55);
    const more = [...points, ...gridOver(site.rooms[0]!.outline, 0.7)];
    const few = await placeRoom(site, { ...options, points }, worldOf(solver));
    const many = await placeRoom(site, { ...options, points: more }, worldOf(solver));
    if (!few.fewest || !many.fewest) continue;
    compared++;
    expect(many.best!.cost, `seed ${seed}`).toBeLessThanOrEqual(few.best!.cost);
  }
  expect(compared).toBeGreaterThanOrEqual(3);
}, 30_000);

/** The whole site turned about the origin and moved. */
function carried(site: Site, { turn, by }: { readonly turn: number; readonly by: Point }): Site {
  const to = ([x, y]: readonly [number, number]): Point => [
    Math.cos(turn) * x - Math.sin(turn) * y + by[0],
    Math.sin(turn) * x + Math.cos(turn) * y + by[1],
  ];
  return {
    ...site,
    rooms: site.rooms.map((room) => ({ ...room, outline: room.outline.map(to) })),
    obstacles: site.obstacles.map((one) => ({ ...one, footprint: one.footprint.map(to) })),
    openings: site.openings.map((one) => ({ ...one, from: to(one.from), to: to(one.to) })),
  };
}

test("A room turned, or moved by 10 km, needs as many devices, with the same bound for any position", async () => {
  for (const seed of [300, 303, 306]) {
    const site = diceSite(seed);
    const asked = { ...options, bound: "any-position" as const };
    const plain = await placeRoom(site, asked, worldOf(solver));
    for (const way of [
      { turn: 0.61, by: [0, 0] as Point },
      { turn: 0, by: [10_000, -10_000] as Point },
    ]) {
      const there = await placeRoom(carried(site, way), asked, worldOf(solver));
      expect(there.best?.devices.length, `seed ${seed}`).toBe(plain.best?.devices.length);
      expect([there.bound, there.boundHolds], `seed ${seed}`).toEqual([plain.bound, plain.boundHolds]);
    }
  }
}, 60_000);

test("A pinned device stays where it is and counts; one that is not pinned is replaced", async () => {
  const room = roomOf(rectangle(0, 0, 9, 4));
  const base = siteOf(room, { openings: [door] });
  const at: Point = [1.13, 2.17];
  const pinned = { ...hungAt(base, at, 1), tag: "my tag", pinned: true };
  const loose = hungAt(base, [8.2, 0.9], 2);
  const result = await placeRoom({ ...base, detectors: [pinned, loose] }, options, worldOf(solver));
  expect(result.best?.devices).toContainEqual(pinned);
  expect(result.best?.devices.map((one) => one.id)).not.toContain(loose.id);
  expect(result.best?.gaps).toEqual([]);
  expect(result.best?.cost).toBe(result.best?.devices.length);
  const free = await placeRoom(base, options, worldOf(solver));
  expect(result.bound).toBeGreaterThanOrEqual(free.bound);
});

test("No device hangs in an area that a person forbids, also after it was moved for quality", async () => {
  const room = roomOf(rectangle(0, 0, 6, 4), { noDevices: [rectangle(2, 1, 2, 2)] });
  const result = await placeRoom(
    siteOf(room, { openings: [door] }),
    { ...options, alternatives: 3 },
    worldOf(solver),
  );
  expect(result.best?.gaps).toEqual([]);
  for (const layout of [result.best!, ...result.alternatives])
    for (const { at } of layout.devices)
      expect(at[0] > 2 && at[0] < 4 && at[1] > 1 && at[1] < 3, `${at}`).toBe(false);
});

test("With a ceiling grid every device hangs in the centre of a tile, also after it was moved for quality", async () => {
  const room = roomOf(rectangle(0, 0, 6, 4), {
    ceilingGrid: { tile: [0.6, 0.6], origin: [0.13, 0.07], turn: 0 },
  });
  const result = await placeRoom(
    siteOf(room, { openings: [door] }),
    { ...options, alternatives: 3 },
    worldOf(solver),
  );
  expect(result.boundHolds).toBe("candidates");
  for (const layout of [result.best!, ...result.alternatives])
    for (const { at } of layout.devices) {
      const [u, v] = [(at[0] - 0.13) / 0.6 - 0.5, (at[1] - 0.07) / 0.6 - 0.5];
      expect(Math.abs(u - Math.round(u)) + Math.abs(v - Math.round(v))).toBeLessThan(1e-9);
    }
});
