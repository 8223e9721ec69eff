import { expect, test } from "vitest";
import { loadSolver } from "#solver";
import { planningDefaults } from "../site/index.ts";
import { gridOver } from "./brute-force.fixture.ts";
import { placeRoom } from "./place-room.ts";
import { rectangle, roomOf, roundModel, siteOf, worldOf } from "./rooms.fixture.ts";

/**
 * A corridor 10 × 1.4 m, standing area 0.5 m to each side of its middle. Two devices 5 m apart on the grid of 0.5 m reach
 * √(reach² − 0.5²) = 2.496 m along its edges: between them 8 mm stay uncovered. The reach allows both to move by 0.2 m.
 */
const reach = Math.hypot(2.496, 0.5);
const corridor = siteOf(
  roomOf(rectangle(0, 0, 10, 1.4), { demand: { catch: false, walk: true, hold: false } }),
  { models: [roundModel(reach)], defaults: { ...planningDefaults, spacing: 0.5 } },
);
const options = { room: "room", seconds: 20, seed: 1, bound: "candidates", alternatives: 0 } as const;

test("A layout that misses strictness on the grid by millimetres is shifted, not given a device more", async () => {
  const placed = await placeRoom(corridor, options, worldOf(await loadSolver()));
  expect(placed.best!.devices).toHaveLength(2);
  expect(placed.best!.gaps).toEqual([]);
  expect(placed).toMatchObject({ bound: 2, fewest: true });
});

test("Given places are not left: there the sliver costs a device more", async () => {
  const points = gridOver(rectangle(0, 0, 10, 1.4), 0.5).map(([x]) => [Math.round(x * 2) / 2, 0.7] as const);
  const placed = await placeRoom(corridor, { ...options, points }, worldOf(await loadSolver()));
  expect(placed.best!.devices).toHaveLength(3);
  expect(points).toContainEqual(placed.best!.devices[0]!.at);
});
