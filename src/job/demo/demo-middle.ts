import { archive } from "./demo-stair.ts";
import {
  battens,
  box,
  type Drawn,
  dwell,
  outerWall,
  panels,
  partition,
  tileCentre,
  tiles,
} from "./drawing.ts";

const entrance: Drawn = {
  rooms: [
    {
      id: "entrance",
      number: "G.01",
      name: "Entrance",
      use: "passing",
      outline: box(0, 4, 5, 9.8),
      ceilingHeight: 2.9,
      ceilingGrid: tiles(0, 4),
    },
  ],
  openings: [
    {
      id: "entrance-door",
      rooms: ["entrance", null],
      from: [0, 7.7],
      to: [0, 6.1],
      head: 2.3,
      thickness: outerWall,
      opensInto: null,
    },
    {
      id: "entrance-glazing",
      rooms: ["entrance", null],
      kind: "glazing",
      from: [0, 5.9],
      to: [0, 4.3],
      sill: 0.2,
      head: 2.3,
      thickness: outerWall,
    },
    {
      id: "entrance-corridor",
      rooms: ["entrance", "corridor"],
      from: [5, 6.2],
      to: [5, 7.6],
      thickness: partition,
      opensInto: "corridor",
      hinge: "to",
      state: "open",
    },
  ],
  obstacles: [
    {
      id: "entrance-bench",
      room: "entrance",
      kind: "furniture",
      name: "Bench",
      footprint: box(1, 9.35, 3.4, 9.8),
      top: 0.45,
    },
    {
      id: "entrance-desk",
      room: "entrance",
      kind: "furniture",
      name: "Sign-in desk",
      footprint: box(3.6, 4.9, 4.4, 6),
      top: 1.05,
    },
  ],
  dwellPlaces: [
    ...dwell("entrance", "desk", 0.6, [[4.7, 5.5]]),
    ...dwell("entrance", "bench", 0.4, [
      [1.6, 9.2],
      [2.8, 9.2],
    ]),
  ],
  interference: [
    {
      id: "entrance-curtain",
      room: "entrance",
      kind: "door-curtain",
      at: [0.2, 6.1],
      to: [0.2, 7.7],
      height: 2.4,
    },
    { id: "entrance-sun", room: "entrance", kind: "sunlit-window", at: [0, 4.3], to: [0, 5.9], height: 1.2 },
  ],
  ceilingThings: [
    {
      id: "entrance-smoke",
      room: "entrance",
      kind: "smoke-head",
      at: tileCentre({ left: 0, bottom: 4 }, 4, 7),
    },
  ],
  luminaires: panels(
    "entrance",
    2.9,
    [1, 6].flatMap((column) => [2, 5, 8].map((row) => tileCentre({ left: 0, bottom: 4 }, column, row))),
  ),
};

const plant: Drawn = {
  rooms: [
    {
      id: "plant",
      number: "G.02",
      name: "Plant room",
      use: "plant",
      outline: box(0, 0, 5, 3.88),
      ceilingHeight: 3.2,
      highestTemperature: 26,
      noDevices: [box(0, 0, 1.6, 1.4)],
    },
  ],
  openings: [
    {
      id: "plant-door",
      rooms: ["plant", "entrance"],
      from: [2.2, 3.88],
      to: [3.1, 3.88],
      thickness: partition,
      opensInto: "entrance",
      hinge: "to",
    },
  ],
  obstacles: [
    {
      id: "plant-boiler",
      room: "plant",
      kind: "other",
      name: "Heat pump",
      footprint: box(0.4, 0.4, 1.4, 1.3),
      top: 1.9,
    },
    {
      id: "plant-tank",
      room: "plant",
      kind: "other",
      name: "Hot water tank",
      footprint: box(1.9, 0.3, 2.7, 1.1),
      top: 2,
    },
    {
      id: "plant-panel",
      room: "plant",
      kind: "other",
      name: "Switch panel with manual override",
      footprint: box(4.6, 1, 5, 3),
      top: 2,
    },
    {
      id: "plant-duct",
      room: "plant",
      kind: "duct",
      name: "Air duct",
      footprint: box(0, 1.7, 4.4, 2.2),
      base: 2.6,
      top: 3,
    },
  ],
  dwellPlaces: [
    ...dwell("plant", "panel", 0.6, [
      [4.2, 1.6],
      [4.2, 2.5],
    ]),
    ...dwell("plant", "machine", 0.5, [[0.9, 1.75]]),
  ],
  interference: [{ id: "plant-pump", room: "plant", kind: "machine", at: [0.9, 0.85], height: 1.5 }],
  luminaires: battens("plant", 2.5, [
    [1.4, 3],
    [3.5, 1.4],
  ]),
};

const firstAid: Drawn = {
  rooms: [
    {
      id: "first-aid",
      number: "G.03",
      name: "First-aid room",
      use: "sitting",
      outline: box(0, 9.92, 5, 13.5),
      ceilingHeight: 2.7,
      ceilingGrid: tiles(0, 9.92),
    },
  ],
  openings: [
    {
      id: "first-aid-door",
      rooms: ["first-aid", "entrance"],
      from: [3.8, 9.92],
      to: [4.7, 9.92],
      thickness: partition,
      opensInto: "first-aid",
      hinge: "to",
    },
    {
      id: "first-aid-window",
      rooms: ["first-aid", null],
      kind: "window",
      from: [1.4, 13.5],
      to: [3.4, 13.5],
      sill: 1.1,
      head: 2.2,
      thickness: outerWall,
    },
  ],
  obstacles: [
    {
      id: "first-aid-couch",
      room: "first-aid",
      kind: "furniture",
      name: "Couch",
      footprint: box(0.2, 12.6, 2.1, 13.3),
      top: 0.6,
    },
    {
      id: "first-aid-curtain",
      room: "first-aid",
      kind: "partition",
      name: "Curtain",
      footprint: box(0, 12.2, 2.3, 12.24),
      base: 0.3,
      top: 2,
    },
  ],
  dwellPlaces: dwell("first-aid", "desk", 0.6, [[4.2, 12.4]]),
  luminaires: panels(
    "first-aid",
    2.7,
    [1, 5].flatMap((column) => [1, 4].map((row) => tileCentre({ left: 0, bottom: 9.92 }, column, row))),
  ),
};

const corridor: Drawn = {
  rooms: [
    {
      id: "corridor",
      number: "G.14",
      name: "Corridor",
      use: "passing",
      outline: box(5.12, 6, 30, 7.8),
      ceilingHeight: 2.5,
      ceilingGrid: tiles(5.12, 6),
    },
  ],
  openings: [
    {
      id: "corridor-exit",
      rooms: ["corridor", null],
      from: [30, 6.45],
      to: [30, 7.35],
      thickness: outerWall,
      opensInto: null,
    },
  ],
  luminaires: panels(
    "corridor",
    2.5,
    [2, 7, 12, 17, 22, 27, 32, 37].map((column) => tileCentre({ left: 5.12, bottom: 6 }, column, 1)),
  ),
  ceilingThings: [
    ...[5, 20, 35].map((column, index) => ({
      id: `corridor-smoke-${index + 1}`,
      room: "corridor",
      kind: "smoke-head" as const,
      at: tileCentre({ left: 5.12, bottom: 6 }, column, 1),
    })),
    {
      id: "corridor-escape",
      room: "corridor",
      kind: "luminaire-emergency",
      at: tileCentre({ left: 5.12, bottom: 6 }, 39, 1),
    },
  ],
  interference: [
    {
      id: "corridor-air",
      room: "corridor",
      kind: "air-outlet",
      at: tileCentre({ left: 5.12, bottom: 6 }, 25, 1),
      height: 2.5,
    },
  ],
};

export const middleRooms: readonly Drawn[] = [entrance, plant, firstAid, corridor, archive];
