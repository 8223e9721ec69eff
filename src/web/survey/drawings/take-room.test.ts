import { expect, test } from "vitest";
import { type Opening, planningDefaults, type Room, type Site } from "#engine";
import { applied } from "../../jobs/apply.ts";
import { takeRoomSteps } from "./take-room.ts";

const room = (id: string, left: number): Room => ({
  id,
  storey: "ground",
  number: "",
  name: "",
  use: "other",
  outline: [
    [left, 0],
    [left + 4, 0],
    [left + 4, 3],
    [left, 3],
  ],
  holes: [],
  floor: 0,
  ceilingHeight: 2.5,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
});
const door = (id: string, of: string, x: number): Opening => ({
  id,
  rooms: [of, null],
  kind: "door",
  from: [x, 1],
  to: [x, 1.9],
  sill: 0,
  head: 2,
  thickness: 0.2,
  hinge: "from",
  opensInto: of,
  angle: Math.PI / 2,
  state: "closed",
});
const site: Site = {
  name: "",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "", elevation: 0 }],
  rooms: [room("west", 0)],
  floorPieces: [],
  openings: [door("d", "west", 4)],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  ceilingThings: [],
  luminaires: [],
  switches: [],
  models: [],
  detectors: [],
};

test("a door that the neighbour has already leads into the new room, through the wall between them", () => {
  const found = { room: room("east", 4.15), openings: [door("again", "east", 4.15)] };
  const { openings } = applied(site, takeRoomSteps(site, found));
  expect(openings).toHaveLength(1);
  expect(openings[0]).toMatchObject({ id: "d", rooms: ["west", "east"], thickness: 0.15, opensInto: "west" });
});

test("another door comes with the room", () => {
  const found = { room: room("east", 4.15), openings: [door("far", "east", 8.15)] };
  expect(applied(site, takeRoomSteps(site, found)).openings.map(({ id }) => id)).toEqual(["d", "far"]);
});
