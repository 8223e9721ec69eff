import { expect, test } from "vitest";
import { planningDefaults, type Room, type Site } from "#engine";
import { applied } from "../jobs/apply.ts";
import { roomParts, sameParts } from "./room-key.ts";

const room = (id: string): Room => ({
  id,
  storey: "s",
  number: "",
  name: id,
  use: "other",
  outline: [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ],
  holes: [],
  floor: 0,
  ceilingHeight: 2.5,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
});

const door = (id: string, first: string, second: string): Site["openings"][number] => ({
  id,
  rooms: [first, second],
  kind: "door",
  from: [0, 0],
  to: [1, 0],
  sill: 0,
  head: 2,
  thickness: 0.1,
  hinge: "from",
  opensInto: first,
  angle: 1.5,
  state: "closed",
});

const site: Site = {
  name: "",
  defaults: planningDefaults,
  storeys: [],
  rooms: [room("a"), room("b"), room("c"), room("far")],
  floorPieces: [],
  openings: [door("ab", "a", "b"), door("bc", "b", "c")],
  obstacles: [],
  dwellPlaces: [
    { id: "desk", room: "b", kind: "desk", at: [0, 0], radius: 0.6 },
    { id: "away", room: "far", kind: "desk", at: [0, 0], radius: 0.6 },
  ],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [],
  detectors: [],
};

test("a change in a room or behind its doors is a change of its parts", () => {
  const moved = applied(site, [{ do: "set", kind: "dwellPlaces", id: "desk", fields: { at: [1, 1] } }]);
  expect(sameParts(roomParts(site, "a"), roomParts(moved, "a"))).toBe(false);
  expect(sameParts(roomParts(site, "b"), roomParts(moved, "b"))).toBe(false);
});

test("a change far away leaves a room's parts as they were", () => {
  const moved = applied(site, [{ do: "set", kind: "dwellPlaces", id: "away", fields: { at: [1, 1] } }]);
  expect(sameParts(roomParts(site, "a"), roomParts(moved, "a"))).toBe(true);
});

test("other planning numbers change every room", () => {
  const other = { ...site, defaults: { ...site.defaults, onset: 1 } };
  expect(sameParts(roomParts(site, "far"), roomParts(other, "far"))).toBe(false);
});
