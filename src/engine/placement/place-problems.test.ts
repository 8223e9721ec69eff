import { beforeAll, expect, test } from "vitest";
import { loadSolver } from "#solver";
import { english } from "../check/index.ts";
import type { Site } from "../site/index.ts";
import type { CoverSolver, PlacementOptions, PlacementWorld } from "./contract.ts";
import { placeRoom } from "./place-room.ts";
import { doorOf, rectangle, roomOf, roundModel, siteOf, worldOf } from "./rooms.fixture.ts";

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
const small = roomOf(rectangle(0, 0, 4, 3));

async function placed(
  site: Site,
  more: { options?: Partial<PlacementOptions>; world?: Partial<PlacementWorld> } = {},
) {
  const result = await placeRoom(site, { ...options, ...more.options }, worldOf(solver, more.world));
  return { result, codes: result.problems.map((problem) => problem.code) };
}

test("A room that is well placed reports nothing", async () => {
  const { codes, result } = await placed(siteOf(small, { openings: [door] }));
  expect(codes).toEqual([]);
  expect(result.best?.devices).toHaveLength(1);
});

test("Without models nothing is placed", async () => {
  const { codes, result } = await placed(siteOf(small, { openings: [door] }), { options: { models: [] } });
  expect(codes).toContain("no-models");
  expect(result.best).toBeUndefined();
});

test("A ceiling of 7 m is above every model: its height and theirs are named", async () => {
  const { result } = await placed(siteOf({ ...small, ceilingHeight: 7 }, { openings: [door] }));
  const problem = result.problems.find((one) => one.code === "no-model-for-height");
  expect(problem?.values).toMatchObject({ height: 7, least: 2, most: 6 });
});

test("A room of 38 °C is too warm to place in", async () => {
  const { codes, result } = await placed(siteOf({ ...small, highestTemperature: 38 }, { openings: [door] }));
  expect(codes).toContain("too-warm-to-place");
  expect(result.best).toBeUndefined();
});

test("A room in which neither walk nor hold is asked has nothing to watch", async () => {
  const room = { ...small, demand: { catch: true, walk: false, hold: false } };
  const { codes } = await placed(siteOf(room, { openings: [door] }));
  expect(codes).toContain("nothing-to-watch");
});

test("A ceiling that is forbidden everywhere has no place, and the reason is named", async () => {
  const room = { ...small, noDevices: [rectangle(-1, -1, 6, 5)] };
  const { result } = await placed(siteOf(room, { openings: [door] }));
  const problem = result.problems.find((one) => one.code === "no-place-on-ceiling");
  expect(english(problem?.values.reasons ?? "")).toMatch(/no devices/);
});

test("Far corners that no allowed place sees are named with their area, and no number is called the fewest", async () => {
  const room = roomOf(rectangle(0, 0, 12, 3), { noDevices: [rectangle(4, -1, 9, 5)] });
  const { result } = await placed(siteOf(room, { openings: [door] }));
  const problem = result.problems.find((one) => one.code === "cannot-be-watched");
  expect(problem?.at?.[0]).toBeGreaterThan(7);
  // From x = 4 m a reach of 4 m ends at 8 m: of 2.6 m × 11.8 m at least 3.8 m × 2.6 m are left.
  expect(Number(problem?.values.area)).toBeGreaterThan(9.8);
  expect(result.fewest).toBe(false);
  expect(result.best?.gaps.length).toBeGreaterThan(0);
});

test("Where only places near the walls see all, the clearance is given up, down to its least, and said", async () => {
  // Within 0.45 m of the left wall only, less than the default clearance of 0.5 m.
  const room = { ...small, noDevices: [rectangle(0.45, -1, 5, 5)] };
  const { result, codes } = await placed(siteOf(room, { openings: [door], models: [roundModel(5)] }));
  expect(codes).toContain("clearance-of-walls-reduced");
  const [x] = result.best!.devices[0]!.at;
  expect(x).toBeGreaterThanOrEqual(0.2 - 1e-3);
  expect(x).toBeLessThanOrEqual(0.45 + 1e-9);
  expect(result.best?.gaps).toEqual([]);
});

test("A heater that every place sees is kept at its distance, and said", async () => {
  const heater = {
    id: "heater",
    room: "room",
    kind: "heater" as const,
    at: [0.1, 1.5] as const,
    height: 2.2,
  };
  const { result, codes } = await placed(siteOf(small, { openings: [door], interference: [heater] }));
  expect(codes).toContain("source-cannot-be-avoided");
  const [x, y] = result.best!.devices[0]!.at;
  expect(Math.hypot(x - 0.1, y - 1.5)).toBeGreaterThanOrEqual(2 - 1e-3);
});

test("A dark walk beyond the limit is said, with the door and the metres", async () => {
  const base = siteOf(small, { openings: [door], models: [roundModel(4, { response: 3 })] });
  const { result } = await placed(base);
  const problem = result.problems.find((one) => one.code === "dark-walk-not-kept");
  expect(problem?.records).toEqual(["door"]);
  expect(Number(problem?.values.metres)).toBeGreaterThan(2);
  expect(result.best?.traits.worstDarkWalk).toBeGreaterThan(2);
});

test("A search that is cut off before every gap is closed says so and claims nothing", async () => {
  let asked = 0;
  const { result, codes } = await placed(
    siteOf(roomOf(rectangle(0, 0, 20, 12)), { openings: [door], models: [roundModel(3)] }),
    {
      world: { cancelled: () => asked++ > 4 },
    },
  );
  expect(codes.some((code) => code === "placing-stopped" || code === "cannot-be-watched")).toBe(true);
  expect(codes).toContain("placing-stopped");
  expect(result.fewest).toBe(false);
});

test("Where time runs out before a place without a heater in view is found, no place is called impossible", async () => {
  let seconds = 0;
  const heater = {
    id: "heater",
    room: "room",
    kind: "heater" as const,
    at: [10, 6] as const,
    height: 2.2,
  };
  const { result, codes } = await placed(
    siteOf(roomOf(rectangle(0, 0, 20, 12)), {
      openings: [door],
      interference: [heater],
      models: [roundModel(30)],
    }),
    { world: { now: () => seconds++ }, options: { seconds: 4 } },
  );
  expect(codes).toContain("placing-stopped");
  expect(codes).not.toContain("no-place-on-ceiling");
  expect(result.fewest).toBe(false);
});

test("Two devices at one place cannot be mounted: said, and not called the fewest", async () => {
  const walks = roundModel(4, { id: "walks" });
  const models = [
    { ...walks, zones: { towards: walks.zones.towards! } },
    { ...walks, id: "sits", zones: { seated: [{ height: 3, radius: 5 }] } },
  ];
  const seat = { id: "seat", room: "room", kind: "desk", at: [2, 1.5], radius: 0.6 } as const;
  const site = siteOf(small, { openings: [door], models, dwellPlaces: [seat] });
  const one = await placed(site, { options: { points: [[2, 1.5]] } });
  expect(one.result.best?.devices).toHaveLength(2);
  expect(one.codes).toContain("devices-at-one-place");
  expect(one.result.fewest).toBe(false);
  const several = await placed(site, {
    options: {
      points: [
        [2, 1.5],
        [2.4, 1.5],
      ],
    },
  });
  expect(several.result.best?.devices).toHaveLength(2);
  expect(several.codes).not.toContain("devices-at-one-place");
  expect(several.result.fewest).toBe(true);
});
