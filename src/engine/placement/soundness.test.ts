import { beforeAll, expect, test } from "vitest";
import { loadSolver } from "#solver";
import { coverageOf, prepareRoom } from "../coverage/index.ts";
import { lookUp } from "../site/index.ts";
import { diceSite, gridOver, strictChoice } from "./brute-force.fixture.ts";
import { ceilingOf } from "./ceiling.ts";
import type { CoverSolver, PlacementOptions } from "./contract.ts";
import { placeRoom } from "./place-room.ts";
import { worldOf } from "./rooms.fixture.ts";

let solver: CoverSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const options: PlacementOptions = {
  room: "room",
  seconds: 8,
  seed: 1,
  bound: "any-position",
  alternatives: 0,
};
const seeds = (from: number, count: number): number[] => Array.from({ length: count }, (_, i) => from + i);

test("No choice of fewer of the given places is strict than the bound says, and one of the bound's number is", async () => {
  const counts = new Map<number, number>();
  for (const seed of seeds(100, 14)) {
    const site = diceSite(seed);
    const outline = site.rooms[0]!.outline;
    const ceiling = ceilingOf(lookUp(site), { room: site.rooms[0]!, walls: "clear" });
    const points = gridOver(outline, 0.55).filter((at) => ceiling.refusal(at) === undefined);
    const result = await placeRoom(site, { ...options, bound: "candidates", points }, worldOf(solver));
    if (result.best === undefined || result.best.gaps.length > 0) continue;
    expect(result.boundHolds).toBe("candidates");
    expect(result.best.devices.length, `seed ${seed}`).toBeGreaterThanOrEqual(result.bound);
    expect(strictChoice(site, { points, count: result.bound - 1 }), `seed ${seed}`).toBeUndefined();
    if (result.fewest)
      expect(strictChoice(site, { points, count: result.bound }), `seed ${seed}`).toBeDefined();
    counts.set(result.bound, (counts.get(result.bound) ?? 0) + 1);
  }
  // The trial says something: several rooms, and some of them need three or more.
  expect(
    [...counts].reduce((sum, [bound, rooms]) => sum + (bound >= 2 ? rooms : 0), 0),
  ).toBeGreaterThanOrEqual(6);
}, 60_000);

test("No strict layout of fewer devices than the bound hangs anywhere on a fine grid of the allowed ceiling", async () => {
  const counts = new Map<number, number>();
  for (const seed of seeds(300, 16)) {
    const site = diceSite(seed);
    const room = site.rooms[0]!;
    const result = await placeRoom(site, options, worldOf(solver));
    if (result.best === undefined || result.best.gaps.length > 0) continue;
    if (result.boundHolds !== "any-position") continue;
    const devices = result.best.devices;
    expect(coverageOf(prepareRoom(site, "room"), devices).gaps, `seed ${seed}`).toEqual([]);
    expect(devices.length, `seed ${seed}`).toBeGreaterThanOrEqual(result.bound);
    const reduced = result.problems.some((problem) => problem.code === "clearance-of-walls-reduced");
    const ceiling = ceilingOf(lookUp(site), { room, walls: reduced ? "least" : "clear" });
    const spacing = result.bound <= 3 ? 0.17 : 0.4;
    const points = gridOver(room.outline, spacing).filter((at) => ceiling.refusal(at) === undefined);
    expect(strictChoice(site, { points, count: result.bound - 1 }), `seed ${seed}`).toBeUndefined();
    counts.set(result.bound, (counts.get(result.bound) ?? 0) + 1);
  }
  expect(
    [...counts].reduce((sum, [bound, rooms]) => sum + (bound >= 2 ? rooms : 0), 0),
  ).toBeGreaterThanOrEqual(6);
}, 60_000);
