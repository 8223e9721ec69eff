import { expect, test } from "vitest";
import type { Detector, Layout, Site } from "#engine";
import { planningDefaults } from "#engine";
import { nextTag, siteAsked, stepsToTake } from "./take-layout.ts";

const device = (id: string, tag: string, more: Partial<Detector> = {}): Detector => ({
  id,
  tag,
  room: "r1",
  controls: ["r1"],
  group: "",
  model: "m",
  at: [1, 1],
  height: 2.5,
  turn: 0,
  masks: [],
  pinned: false,
  ...more,
});

const demand = { catch: true, walk: true, hold: true };

const site = (detectors: readonly Detector[]): Site => ({
  name: "Annex",
  defaults: planningDefaults,
  storeys: [
    { id: "upper", name: "Upper", elevation: 3 },
    { id: "ground", name: "Ground", elevation: 0 },
  ],
  rooms: ["r1", "r2"].map((id, index) => ({
    id,
    storey: index === 0 ? "ground" : "upper",
    number: "",
    name: id,
    use: "other",
    outline: [
      [0, 0],
      [4, 0],
      [4, 4],
    ],
    holes: [],
    floor: 0,
    ceilingHeight: 2.5,
    demand,
    noDevices: [],
  })),
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [],
  detectors,
});

const layout = (devices: readonly Detector[]): Layout => ({
  devices,
  cost: devices.length,
  gaps: [],
  darkWalks: [],
  traits: { worstDarkWalk: 0, spillArea: 0, leastMargin: 0, alignment: 0 },
});

const counter = () => {
  let count = 0;
  return () => `new-${++count}`;
};

test("the room's old detectors give way, those of other rooms stay", () => {
  const before = site([device("a", "B1.01"), device("b", "B1.02", { room: "r2" })]);
  const steps = stepsToTake(before, [{ room: "r1", layout: layout([device("x", "")]), demand }], counter());
  expect(steps).toEqual([
    { do: "remove", kind: "detectors", id: "a" },
    { do: "put", kind: "detectors", record: device("new-1", "B1.01") },
  ]);
});

test("a pinned detector is neither removed nor put again", () => {
  const pinned = device("a", "B1.01", { pinned: true });
  const steps = stepsToTake(
    site([pinned]),
    [{ room: "r1", layout: layout([pinned, device("x", "")]), demand }],
    counter(),
  );
  expect(steps).toEqual([{ do: "put", kind: "detectors", record: device("new-1", "B1.02") }]);
});

test("no tag is issued twice, whatever the layouts bring along", () => {
  const before = site([device("z", "B1.01", { pinned: true })]);
  const brought = layout([device("x", "B1.01"), device("y", "B1.01")]);
  const steps = stepsToTake(before, [{ room: "r1", layout: brought, demand }], counter());
  const tags = steps.flatMap((step) =>
    step.do === "put" && step.kind === "detectors" ? [step.record.tag] : [],
  );
  expect(new Set(["B1.01", ...tags]).size).toBe(3);
});

test("demands that the run left out are left out in the room as well", () => {
  const fewer = { catch: true, walk: false, hold: true };
  const steps = stepsToTake(site([]), [{ room: "r1", layout: layout([]), demand: fewer }], counter());
  expect(steps).toEqual([{ do: "set", kind: "rooms", id: "r1", fields: { demand: fewer } }]);
});

test("a tag carries the storey's place from below", () => {
  expect(nextTag(site([]), "r1", new Set())).toBe("B1.01");
  expect(nextTag(site([]), "r2", new Set(["B2.01"]))).toBe("B2.02");
});

test("many rooms are placed each for its own demand; one that is chosen goes to the rooms that are placed and no other", () => {
  const own = site([]);
  expect(siteAsked(own, ["r1", "r2"], undefined)).toBe(own);
  const walking = { catch: true, walk: true, hold: false };
  expect(siteAsked(own, ["r1"], walking).rooms.map(({ demand: asked }) => asked)).toEqual([walking, demand]);
});
