import {
  type Detector,
  type Obstacle,
  type Opening,
  type Outline,
  planningDefaults,
  type Room,
  type Site,
} from "#engine";
import type { RecordKind } from "../../contract.ts";

/** Small sites for the tests of this folder. */

export const box = (left: number, bottom: number, right: number, top: number): Outline => [
  [left, bottom],
  [right, bottom],
  [right, top],
  [left, top],
];

export const room = (id: string, outline: Outline, more: Partial<Room> = {}): Room => ({
  id,
  storey: "ground",
  number: "",
  name: id,
  use: "sitting",
  outline,
  holes: [],
  floor: 0,
  ceilingHeight: 2.5,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
  ...more,
});

export const door = (id: string, rooms: Opening["rooms"], more: Partial<Opening> = {}): Opening => ({
  id,
  rooms,
  kind: "door",
  from: [5, 1],
  to: [5, 2],
  sill: 0,
  head: 2,
  thickness: 0.2,
  hinge: "from",
  opensInto: rooms[0],
  angle: Math.PI / 2,
  state: "closed",
  ...more,
});

export const device = (id: string, of: string, more: Partial<Detector> = {}): Detector => ({
  id,
  tag: `B1.${id}`,
  room: of,
  controls: [of],
  group: "",
  model: "m",
  at: [1, 1],
  height: 2.5,
  turn: 0,
  masks: [],
  pinned: false,
  ...more,
});

export const rack = (id: string, of: string, footprint: Outline): Obstacle => ({
  id,
  room: of,
  kind: "rack",
  name: "",
  footprint,
  base: 0,
  top: 2,
  seeThrough: false,
});

export const siteOf = (more: Partial<Site>): Site => ({
  name: "",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground", elevation: 0 }],
  rooms: [],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [
    {
      id: "m",
      title: "",
      mounting: { min: 2, max: 3 },
      zones: {},
      declaration: "assumed",
      declaredBy: "",
      cost: 1,
    },
  ],
  detectors: [],
  ...more,
});

/** Ids that count up. */
export function counting(): (kind: RecordKind) => string {
  let number = 0;
  return (kind) => `${kind}-${++number}`;
}

/**
 * Two rooms with a wall of 0.2 m and a door between them, and one of everything in the western one.
 *
 *     0    5  5.2   9
 *     ┌────┐ ┌─────┐ 4
 *     │west┊ ┊ east│
 *     └────┘ └─────┘ 0
 */
export const pair: Site = siteOf({
  rooms: [
    room("west", box(0, 0, 5, 4), {
      holes: [
        [
          [0.5, 3],
          [0.5, 3.5],
          [1, 3.5],
          [1, 3],
        ],
      ],
      noDevices: [box(2, 2, 3, 3)],
      ceilingGrid: { tile: [0.6, 0.6], origin: [0.1, 0.2], turn: 0.3 },
    }),
    room("east", box(5.2, 0, 9, 4)),
  ],
  openings: [
    door("between", ["west", "east"]),
    door("out", ["west", null], { from: [1, 0], to: [2, 0], hinge: "to", opensInto: null }),
  ],
  obstacles: [rack("rack", "west", box(3, 3, 4, 3.5))],
  dwellPlaces: [{ id: "desk", room: "west", kind: "desk", at: [2, 1], radius: 0.6 }],
  interference: [{ id: "heater", room: "west", kind: "heater", at: [0.2, 1], to: [0.2, 2], height: 0.5 }],
  ceilingThings: [{ id: "head", room: "west", kind: "smoke-head", at: [2.5, 2] }],
  luminaires: [
    {
      id: "lamp",
      room: "west",
      name: "",
      at: [1.5, 2],
      height: 2.5,
      mounting: "flush",
      hot: false,
      length: 1.2,
      width: 0.3,
      turn: 0.4,
    },
  ],
  switches: [{ id: "switch", room: "west", kind: "switch", at: [4.9, 0.8], height: 1.1 }],
  floorPieces: [
    {
      id: "landing",
      room: "west",
      kind: "flight",
      footprint: box(0.2, 2.2, 1.2, 2.8),
      from: [0.2, 2.5],
      to: [1.2, 2.5],
      low: 0,
      high: 0.4,
    },
  ],
  detectors: [
    device("01", "west", { turn: 0.5, masks: [{ from: 0.2, to: 1, inner: 0, outer: 1 }] }),
    device("02", "east", { at: [7, 2], controls: ["east", "west"] }),
  ],
});
