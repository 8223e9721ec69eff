import { expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  luminaireLike,
  roomLike,
  roundModel,
  siteLike,
} from "../../../test/engine/records.ts";
import type { DeviceSwap, SiteEntry } from "../site-test/index.ts";
import { handoverOf } from "./collect.ts";
import { handoverOfStorey } from "./of-storey.ts";

/** A stair well with a door on each of two storeys; one circuit feeds the hall and the landing, another the store. */
const site = siteLike({
  storeys: [
    { id: "ground", name: "Ground floor", elevation: 0 },
    { id: "first", name: "First floor", elevation: 3 },
  ],
  rooms: [
    roomLike({ id: "hall", outline: box(0, 0, 5, 4) }),
    roomLike({ id: "landing", storey: "first", outline: box(0, 0, 5, 4) }),
    roomLike({ id: "store", storey: "first", outline: box(0, 4.2, 5, 3) }),
  ],
  openings: [
    doorLike({ id: "in", rooms: ["hall", null], from: [0, 1], to: [0, 1.9] }),
    doorLike({ id: "up", rooms: ["hall", "landing"], from: [2, 4], to: [2.9, 4] }),
    doorLike({ id: "between", rooms: ["landing", "store"], from: [2, 4], to: [2.9, 4] }),
  ],
  models: [roundModel()],
  detectors: [
    detectorLike({ id: "a", tag: "B1.01", room: "hall", at: [2.5, 2], circuit: "Stairs" }),
    detectorLike({ id: "b", tag: "B2.01", room: "landing", at: [2.5, 2], circuit: "Stairs" }),
    detectorLike({ id: "c", tag: "B2.02", room: "store", at: [2.5, 5.5], circuit: "Store" }),
  ],
  luminaires: [
    luminaireLike({ id: "la", room: "hall", at: [2, 1], circuit: "Stairs", power: 30 }),
    luminaireLike({ id: "lb", room: "landing", at: [2, 1], circuit: "Stairs", power: 30 }),
    luminaireLike({ id: "lc", room: "store", circuit: "Store", power: 30, at: [2, 5] }),
  ],
});
const circuit = (id: string, name: string) =>
  ({ id, board: "board", name, breaker: "B", rating: 10 }) as const;
const whole = handoverOf(site, {
  choices: {},
  found: {
    boards: [],
    circuits: [circuit("c1", "Stairs"), circuit("c2", "Store")],
  } as never,
  entries: [],
  readings: () => [],
  notes: [],
});
const parts = { ground: handoverOfStorey(whole, "ground"), first: handoverOfStorey(whole, "first") };

test("a storey has its own rooms, devices, zones and settings, each room in one storey", () => {
  expect(parts.ground.rooms.map(({ room }) => room.id)).toEqual(["hall"]);
  expect(parts.first.rooms.map(({ room }) => room.id)).toEqual(["landing", "store"]);
  expect(parts.ground.settings.devices.map(({ context }) => context.device)).toEqual(["a"]);
  expect(parts.first.settings.devices.map(({ context }) => context.device)).toEqual(["b", "c"]);
  expect(parts.ground.site.luminaires.map(({ id }) => id)).toEqual(["la"]);
  expect(new Set(parts.first.zones.map(({ device }) => device))).toEqual(new Set(["b", "c"]));
  expect(parts.ground.site.storeys.map(({ id }) => id)).toEqual(["ground"]);
});

test("nothing is calculated anew: a room is seen as in the whole building", () => {
  for (const part of Object.values(parts))
    for (const room of part.rooms)
      expect(room).toBe(whole.rooms.find(({ room: { id } }) => id === room.room.id));
});

test("a group of circuits that spans two storeys is isolated and tested in the papers of both", () => {
  const groups = (of: typeof whole) => of.order.groups.map(({ detectors }) => detectors.map(({ id }) => id));
  expect(groups(whole).flat().sort()).toEqual(["a", "b", "c"]);
  const spanning = groups(whole).find((ids) => ids.includes("a"))!;
  expect(groups(parts.ground)).toEqual([spanning]);
  expect(groups(parts.first)).toContainEqual(spanning);
  const devices = (of: typeof whole) =>
    new Set(
      of.tests.flatMap(({ state: { step } }) => (step.about.kind === "detector" ? [step.about.id] : [])),
    );
  expect(devices(parts.ground)).toEqual(new Set(["a"]));
  expect(devices(parts.first)).toEqual(new Set(["b", "c"]));
  // What a step of both asks for is asked for in both; no step of the whole is in neither.
  const steps = (of: typeof whole) => of.tests.map(({ state }) => state.step.id);
  expect(new Set([...steps(parts.ground), ...steps(parts.first)])).toEqual(new Set(steps(whole)));
});

test("every finding of the whole is in the papers of some storey, and none of a room elsewhere", () => {
  expect(whole.findings.length).toBeGreaterThan(0);
  for (const finding of whole.findings)
    expect([parts.ground, parts.first].some(({ findings }) => findings.includes(finding))).toBe(true);
  for (const { room, records } of parts.ground.findings)
    expect(room === undefined || room === "hall" || records.includes("a")).toBe(true);
});

test("a door to another storey leads outside of this one, and stands in one of them", () => {
  expect(parts.ground.site.openings.map(({ id, rooms }) => [id, rooms])).toEqual([
    ["in", ["hall", null]],
    ["up", ["hall", null]],
  ]);
  expect(parts.first.site.openings.map(({ id }) => id)).toEqual(["between"]);
});

test("exchanged devices, what was found on them, and visits are told of the storey that they hang on", () => {
  const swap = (detector: string) => ({ id: `s${detector}`, detector }) as unknown as DeviceSwap;
  const entry = (id: string) => ({ id: `e${id}`, about: { kind: "detector", id } }) as unknown as SiteEntry;
  const state = (id: string) => ({ point: { about: { kind: "room", id } } });
  const care = {
    handedOver: "2026-03-02",
    visits: [{ occasion: {}, states: ["hall", "landing", "store"].map(state) }],
  } as unknown as NonNullable<typeof whole.care>;
  const told = { ...whole, swaps: ["a", "c"].map(swap), before: ["a", "c"].map(entry), care };
  const of = (storey: string) => {
    const part = handoverOfStorey(told, storey);
    return [
      part.swaps.map(({ detector }) => detector),
      part.before.map(({ about }) => about.id),
      part.care?.visits.flatMap(({ states }) => states.map(({ point }) => point.about.id)),
    ];
  };
  expect(of("ground")).toEqual([["a"], ["a"], ["hall"]]);
  expect(of("first")).toEqual([["c"], ["c"], ["landing", "store"]]);
});
