import { beforeAll, expect, test } from "vitest";
import { loadSolver } from "#solver";
import type { CoverSolver, PlacementOptions } from "./contract.ts";
import { placeRoom } from "./place-room.ts";
import { doorOf, obstacleOf, rectangle, roomOf, roundModel, siteOf, worldOf } from "./rooms.fixture.ts";

let solver: CoverSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const options: PlacementOptions = {
  room: "room",
  seconds: 60,
  seed: 1,
  bound: "any-position",
  alternatives: 0,
};
const door = doorOf([1, 0], [1.9, 0]);

test("A room within the reach of one device gets one, fewest at any position", async () => {
  const result = await placeRoom(
    siteOf(roomOf(rectangle(0, 0, 4, 3)), { openings: [door] }),
    options,
    worldOf(solver),
  );
  expect(result).toMatchObject({ bound: 1, boundHolds: "any-position", fewest: true });
  expect(result.best?.devices).toHaveLength(1);
  expect(result.best?.gaps).toEqual([]);
});

test("The same seed gives the same layout, whatever the clock", async () => {
  const site = siteOf(roomOf(rectangle(0, 0, 10, 6)), {
    openings: [door],
    obstacles: [obstacleOf("rack", rectangle(3, 2, 3, 0.5))],
  });
  const slow = { ...worldOf(solver), now: () => performance.now() / 3000 };
  const [one, two] = [await placeRoom(site, options, worldOf(solver)), await placeRoom(site, options, slow)];
  expect(two.best?.devices).toEqual(one.best?.devices);
  expect(one.fewest).toBe(true);
});

test("A ceiling that no model may hang at is a problem with the heights named", async () => {
  const result = await placeRoom(
    siteOf(roomOf(rectangle(0, 0, 4, 3), { ceilingHeight: 7 }), { openings: [door] }),
    options,
    worldOf(solver),
  );
  expect(result.best).toBeUndefined();
  expect(result.fewest).toBe(false);
  expect(result.problems.map((problem) => problem.code)).toContain("no-model-for-height");
});

test("A ceiling that is forbidden everywhere is a problem", async () => {
  const room = roomOf(rectangle(0, 0, 4, 3), { noDevices: [rectangle(-1, -1, 6, 5)] });
  const result = await placeRoom(
    siteOf(room, { openings: [door], models: [roundModel(4)] }),
    options,
    worldOf(solver),
  );
  expect(result.problems.map((problem) => problem.code)).toContain("no-place-on-ceiling");
});
