import { battens, box, type Drawn, outerWall, partition } from "./drawing.ts";

/** A half-turn stair open through both storeys: up along the west, round the landing, up along the east to the upper floor. */
export const stair: Drawn = {
  rooms: [
    {
      id: "stair",
      number: "G.12",
      name: "Stair",
      use: "stair",
      outline: box(19.62, 7.92, 22.4, 13.5),
      ceilingHeight: 6.1,
    },
  ],
  floorPieces: [
    {
      id: "stair-flight-1",
      room: "stair",
      kind: "flight",
      footprint: box(19.62, 9.2, 20.92, 12),
      from: [20.27, 9.2],
      to: [20.27, 12],
      low: 0,
      high: 1.7,
    },
    {
      id: "stair-landing",
      room: "stair",
      kind: "landing",
      footprint: box(19.62, 12, 22.4, 13.5),
      low: 1.7,
      high: 1.7,
    },
    {
      id: "stair-flight-2",
      room: "stair",
      kind: "flight",
      footprint: box(21.1, 9.2, 22.4, 12),
      from: [21.75, 12],
      to: [21.75, 9.2],
      low: 1.7,
      high: 3.4,
    },
    {
      id: "stair-top",
      room: "stair",
      kind: "landing",
      footprint: box(21.1, 7.92, 22.4, 9.2),
      low: 3.4,
      high: 3.4,
    },
  ],
  obstacles: [
    {
      id: "stair-platform-wall",
      room: "stair",
      kind: "partition",
      name: "Wall below the upper landing, with balustrade",
      footprint: box(20.92, 7.92, 21.1, 9.2),
      top: 4.4,
    },
    {
      id: "stair-well",
      room: "stair",
      kind: "partition",
      name: "Wall between the flights",
      footprint: box(20.92, 9.2, 21.1, 12),
      top: 2.6,
    },
  ],
  openings: [
    {
      id: "stair-door",
      rooms: ["stair", "corridor"],
      from: [19.8, 7.92],
      to: [20.7, 7.92],
      thickness: partition,
      opensInto: "corridor",
    },
    {
      id: "stair-door-above",
      rooms: ["stair", "archive"],
      from: [21.3, 7.92],
      to: [22.2, 7.92],
      sill: 0,
      head: 2.1,
      thickness: partition,
      opensInto: "archive",
    },
  ],
  luminaires: battens("stair", 3, [
    [20.27, 8.4],
    [21.0, 13.2],
    [21.75, 8.4],
  ]),
};

/** The one room upstairs that belongs to the wing: the stair leads to it. */
export const archive: Drawn = {
  rooms: [
    {
      id: "archive",
      storey: "first",
      number: "1.01",
      name: "Archive",
      use: "moving",
      outline: box(16.2, 2, 22.6, 7.8),
      ceilingHeight: 2.7,
    },
  ],
  openings: [
    {
      id: "archive-window",
      rooms: ["archive", null],
      kind: "window",
      from: [18, 2],
      to: [20, 2],
      sill: 0.9,
      head: 2.1,
      thickness: outerWall,
    },
  ],
  obstacles: [
    {
      id: "archive-shelf-1",
      room: "archive",
      kind: "rack",
      name: "Shelves",
      footprint: box(16.7, 3.2, 20.4, 3.8),
      top: 2.2,
    },
    {
      id: "archive-shelf-2",
      room: "archive",
      kind: "rack",
      name: "Shelves",
      footprint: box(16.7, 4.9, 20.4, 5.5),
      top: 2.2,
    },
    {
      id: "archive-shelf-3",
      room: "archive",
      kind: "rack",
      name: "Shelves",
      footprint: box(16.2, 7.2, 20.4, 7.8),
      top: 2.2,
    },
  ],
  luminaires: battens("archive", 2.62, [
    [17.6, 2.6],
    [17.6, 4.35],
    [17.6, 6.4],
    [21.5, 4.9],
  ]),
};
