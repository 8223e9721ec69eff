import {
  type Detector,
  english,
  type Obstacle,
  type Opening,
  type Point,
  planningDefaults,
  type Room,
  type RoomCoverage,
  type Site,
} from "#engine";
import type { SheetTitle } from "./drawing/title-block.ts";
import type { DeviceZone } from "./drawing/zone-marks.ts";

/** A small invented storey for the tests of sheets and tables: an office behind a corridor, a store and a toilet. */
const box = (x: number, y: number, w: number, h: number): readonly Point[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

const room = (
  id: string,
  number: string,
  name: string,
  outline: readonly Point[],
  more: Partial<Room> = {},
): Room => ({
  id,
  storey: "ground",
  number,
  name,
  use: "sitting",
  outline,
  holes: [],
  floor: 0,
  ceilingHeight: 2.5,
  demand: { catch: true, walk: true, hold: true },
  noDevices: [],
  ...more,
});

const opening = (
  id: string,
  rooms: Opening["rooms"],
  from: Point,
  to: Point,
  more: Partial<Opening> = {},
): Opening => ({
  id,
  rooms,
  kind: "door",
  from,
  to,
  sill: 0,
  head: 2.1,
  thickness: 0.15,
  hinge: "from",
  opensInto: rooms[0],
  angle: Math.PI / 2,
  state: "closed",
  ...more,
});

const obstacle = (
  id: string,
  inRoom: string,
  name: string,
  footprint: readonly Point[],
  more: Partial<Obstacle> = {},
): Obstacle => ({
  id,
  room: inRoom,
  kind: "furniture",
  name,
  footprint,
  base: 0,
  top: 0.74,
  seeThrough: false,
  ...more,
});

const detector = (
  id: string,
  tag: string,
  inRoom: string,
  at: Point,
  more: Partial<Detector> = {},
): Detector => ({
  id,
  tag,
  room: inRoom,
  controls: [inRoom],
  group: "",
  model: "round-8",
  at,
  height: 2.5,
  turn: 0,
  masks: [],
  pinned: false,
  ...more,
});

export const ferryWing: Site = {
  name: "Saltmarsh Ferry Terminal, Staff Wing",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "Ground floor", elevation: 0 }],
  rooms: [
    room("corridor", "0.01", "Corridor", box(0, 0, 16, 2), { use: "passing" }),
    room("office", "0.02", "Ticket back-office", box(0, 2.15, 8, 5), {
      ceilingGrid: { tile: [0.6, 0.6], origin: [0.25, 2.25], turn: 0 },
    }),
    room(
      "store",
      "0.03",
      "Luggage store",
      [
        [8.15, 2.15],
        [13, 2.15],
        [13, 4.5],
        [11, 4.5],
        [11, 7.15],
        [8.15, 7.15],
      ],
      { use: "moving" },
    ),
    room("toilet", "0.04", "Toilet", box(13.15, 2.15, 2.85, 2.35), { use: "sanitary" }),
  ],
  floorPieces: [
    {
      id: "flight",
      room: "corridor",
      kind: "flight",
      footprint: box(13, 0, 1.4, 2),
      from: [13, 1],
      to: [14.4, 1],
      low: 0,
      high: 0.7,
    },
    {
      id: "landing",
      room: "corridor",
      kind: "landing",
      footprint: box(14.4, 0, 1.6, 2),
      from: [14.4, 1],
      to: [16, 1],
      low: 0.7,
      high: 0.7,
    },
  ],
  openings: [
    opening("d1", ["office", "corridor"], [1, 2.15], [1.9, 2.15]),
    opening("d2", ["store", "corridor"], [9, 2.15], [10.2, 2.15], { hinge: "to", opensInto: "corridor" }),
    opening("d3", ["toilet", "corridor"], [14.6, 2.15], [15.4, 2.15]),
    opening("d4", ["corridor", null], [0, 0.5], [0, 1.5], { thickness: 0.3, opensInto: null }),
    opening("w1", ["office", null], [2, 7.15], [5, 7.15], { kind: "window", sill: 0.9, thickness: 0.3 }),
    opening("g1", ["office", "corridor"], [4, 2.15], [7, 2.15], { kind: "glazing", sill: 0.9 }),
  ],
  obstacles: [
    obstacle("desk1", "office", "Desk", box(5, 5, 1.8, 0.8)),
    obstacle("desk2", "office", "Desk", box(2, 5, 1.8, 0.8)),
    obstacle("rack1", "store", "Rack", box(8.3, 4.2, 2.4, 0.6), { kind: "rack", top: 2.2 }),
    obstacle("duct", "corridor", "Duct", box(3, 1.4, 6, 0.5), { kind: "duct", base: 2.2, top: 2.5 }),
    obstacle(
      "panel",
      "toilet",
      "Panels",
      [
        [14.4, 4.5],
        [14.4, 3.2],
        [14.43, 3.2],
        [14.43, 4.5],
      ],
      { kind: "cubicle", top: 2 },
    ),
  ],
  dwellPlaces: [
    { id: "p1", room: "office", kind: "desk", at: [5.9, 4.6], radius: 0.6 },
    { id: "p2", room: "office", kind: "desk", at: [2.9, 4.6], radius: 0.6 },
    { id: "p3", room: "toilet", kind: "wc", at: [13.8, 4], radius: 0.3 },
  ],
  interference: [
    { id: "h1", room: "office", kind: "heater", at: [3.5, 7.05], height: 0.3 },
    { id: "a1", room: "store", kind: "air-outlet", at: [9, 6.8], height: 2.3 },
  ],
  switches: [],
  ceilingThings: [],
  luminaires: [
    {
      id: "l1",
      room: "office",
      name: "Panel",
      at: [2.05, 4.05],
      height: 2.5,
      mounting: "flush",
      hot: false,
      length: 0.6,
      width: 0.6,
      turn: 0,
    },
    {
      id: "l2",
      room: "office",
      name: "Panel",
      at: [5.65, 4.05],
      height: 2.5,
      mounting: "flush",
      hot: false,
      length: 0.6,
      width: 0.6,
      turn: 0,
    },
  ],
  models: [
    {
      id: "round-8",
      title: "Round, 8 m across at 2.5 m",
      mounting: { min: 2.2, max: 3.5 },
      zones: { towards: [{ height: 2.5, radius: 4 }], seated: [{ height: 2.5, radius: 2 }] },
      declaration: "assumed",
      declaredBy: "invented for the demo",
      cutOut: 0.068,
      cost: 1,
      demo: true,
    },
    {
      id: "hearing-6",
      title: "Round, 6 m across at 2.5 m, hears",
      mounting: { min: 2.2, max: 3 },
      zones: { towards: [{ height: 2.5, radius: 3 }], sound: [{ height: 2.5, radius: 4 }] },
      declaration: "assumed",
      declaredBy: "invented for the demo",
      cost: 1.4,
      demo: true,
    },
  ],
  detectors: [
    detector("b1", "B0.01", "corridor", [2.5, 1]),
    detector("b2", "B0.02", "corridor", [9, 1], { turn: Math.PI / 2 }),
    detector("b3", "B0.03", "office", [4.15, 4.35]),
    detector("b4", "B0.04", "store", [9.6, 3.2]),
    detector("b5", "B0.05", "toilet", [14.6, 3.1], {
      model: "hearing-6",
      masks: [{ from: 0, to: 1, inner: 0.5, outer: 1.4 }],
    }),
  ],
};

const disc = (at: Point, radius: number): readonly Point[] =>
  Array.from({ length: 48 }, (_, i) => [
    at[0] + radius * Math.cos((i * Math.PI) / 24),
    at[1] + radius * Math.sin((i * Math.PI) / 24),
  ]);

/** Made by hand for drawing; it is no calculation. */
export const ferryWingZones: readonly DeviceZone[] = [
  { device: "b3", kind: "towards", region: [{ outline: box(0.6, 2.15, 7.1, 4.9), holes: [] }] },
  { device: "b3", kind: "seated", region: [{ outline: disc([4.15, 4.35], 1.9), holes: [] }] },
  { device: "b1", kind: "towards", region: [{ outline: box(0, 0, 6, 2), holes: [] }] },
  { device: "b2", kind: "towards", region: [{ outline: box(5.5, 0, 7, 2), holes: [] }] },
  { device: "b5", kind: "towards", region: [{ outline: box(13.15, 2.15, 2.85, 2), holes: [] }] },
  { device: "b5", kind: "across", region: [{ outline: disc([14.6, 3.1], 0.8), holes: [] }] },
  { device: "b5", kind: "sound", region: [{ outline: box(13.15, 2.15, 2.85, 2.35), holes: [] }] },
];

const coverageOf = (id: string, more: Partial<RoomCoverage>): RoomCoverage => ({
  room: id,
  demand: {
    room: id,
    asked: { catch: true, walk: true, hold: true },
    standing: [],
    bays: [],
    unreachable: [],
    dwell: [],
    problems: [],
  },
  demanded: { walk: 0, hold: 0, catch: 0 },
  covered: { walk: 0, hold: 0, catch: 0 },
  gaps: [],
  spill: [],
  interference: [],
  darkWalks: [],
  checks: [],
  problems: [],
  ...more,
});

export const ferryWingCoverage: readonly RoomCoverage[] = [
  coverageOf("store", {
    gaps: [
      {
        demand: "walk",
        region: [{ outline: box(8.4, 4.9, 2.2, 1.9), holes: [] }],
        area: 4.18,
        at: [9.5, 5.8],
        cause: { kind: "hidden", behind: { kind: "obstacle", id: "rack1", name: "Rack" } },
        tolerated: false,
      },
    ],
    spill: [
      {
        room: "corridor",
        region: [{ outline: box(9, 0.6, 1.2, 1.4), holes: [] }],
        area: 1.7,
        devices: ["b4"],
      },
    ],
  }),
  coverageOf("office", {
    interference: [{ source: "h1", device: "b3", distance: 2.8 }],
    darkWalks: [
      {
        opening: "d1",
        toward: { kind: "dwell-place", id: "p1", at: [5.9, 4.6] },
        metres: 1.9,
        lit: true,
        path: [
          [1.45, 2.15],
          [1.45, 2.6],
          [5.9, 4.6],
        ],
        litAt: [2.9, 3.2],
        device: "b3",
      },
    ],
  }),
];

export const ferryWingTitle: SheetTitle = {
  job: ferryWing.name,
  client: "Saltmarsh Harbour Trust",
  site: "Quay Road",
  storey: "Ground floor",
  sheet: "Plan, detectors",
  date: "2026-03-02",
  revision: "A",
  drawnBy: "J. Marlow",
  checkedBy: "",
  speak: english,
  page: 1,
  pages: 2,
};
