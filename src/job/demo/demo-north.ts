import { rest } from "./demo-east.ts";
import { stair } from "./demo-stair.ts";
import { box, type Drawn, dwell, outerWall, panels, partition, tileCentre, tiles } from "./drawing.ts";

const backOffice: Drawn = {
  rooms: [
    {
      id: "back-office",
      number: "G.10",
      name: "Ticket back-office",
      use: "sitting",
      outline: box(5.12, 7.92, 14.2, 13.5),
      ceilingHeight: 2.7,
      ceilingGrid: tiles(5.12, 7.92),
    },
  ],
  openings: [
    {
      id: "back-office-door",
      rooms: ["back-office", "corridor"],
      from: [6, 7.92],
      to: [6.9, 7.92],
      thickness: partition,
      opensInto: "back-office",
      hinge: "from",
    },
    {
      id: "back-office-door-east",
      rooms: ["back-office", "corridor"],
      from: [12.9, 7.92],
      to: [13.8, 7.92],
      thickness: partition,
      opensInto: "back-office",
      hinge: "to",
    },
    ...[5.9, 9.4, 12].map((left, index) => ({
      id: `back-office-window-${index + 1}`,
      rooms: ["back-office", null] as [string, null],
      kind: "window" as const,
      from: [left, 13.5] as [number, number],
      to: [left + 1.6, 13.5] as [number, number],
      sill: 0.9,
      head: 2.2,
      thickness: outerWall,
    })),
  ],
  obstacles: [
    {
      id: "back-office-glass",
      room: "back-office",
      kind: "glass",
      name: "Glass partition",
      footprint: box(8.72, 7.92, 8.8, 11.9),
      top: 2.7,
    },
    {
      id: "back-office-desk-1",
      room: "back-office",
      kind: "furniture",
      name: "Desk",
      footprint: box(9.3, 11.2, 10.9, 12),
      top: 0.74,
    },
    {
      id: "back-office-desk-2",
      room: "back-office",
      kind: "furniture",
      name: "Desk",
      footprint: box(11.8, 11.2, 13.4, 12),
      top: 0.74,
    },
    {
      id: "back-office-desk-3",
      room: "back-office",
      kind: "furniture",
      name: "Desk",
      footprint: box(9.3, 9.4, 10.9, 10.2),
      top: 0.74,
    },
    {
      id: "back-office-desk-4",
      room: "back-office",
      kind: "furniture",
      name: "Desk",
      footprint: box(11.8, 9.4, 13.4, 10.2),
      top: 0.74,
    },
    {
      id: "back-office-counter",
      room: "back-office",
      kind: "furniture",
      name: "Counter",
      footprint: box(5.12, 10.8, 7.6, 11.5),
      top: 1.1,
    },
    {
      id: "back-office-column",
      room: "back-office",
      kind: "column",
      name: "Column",
      footprint: box(11.2, 10.55, 11.5, 10.85),
      top: 2.7,
    },
  ],
  dwellPlaces: dwell("back-office", "desk", 0.6, [
    [10.1, 12.45],
    [12.6, 12.45],
    [10.1, 8.95],
    [12.6, 8.95],
    [6.4, 12.1],
  ]),
  interference: [
    {
      id: "back-office-air-1",
      room: "back-office",
      kind: "air-outlet",
      at: tileCentre({ left: 5.12, bottom: 7.92 }, 3, 4),
      height: 2.7,
    },
    {
      id: "back-office-air-2",
      room: "back-office",
      kind: "air-outlet",
      at: tileCentre({ left: 5.12, bottom: 7.92 }, 10, 5),
      height: 2.7,
    },
    {
      id: "back-office-sun",
      room: "back-office",
      kind: "sunlit-window",
      at: [12, 13.5],
      to: [13.6, 13.5],
      height: 1.5,
    },
  ],
  ceilingThings: [
    {
      id: "back-office-smoke",
      room: "back-office",
      kind: "smoke-head",
      at: tileCentre({ left: 5.12, bottom: 7.92 }, 8, 7),
    },
    {
      id: "back-office-speaker",
      room: "back-office",
      kind: "speaker",
      at: tileCentre({ left: 5.12, bottom: 7.92 }, 12, 2),
    },
  ],
  luminaires: panels(
    "back-office",
    2.7,
    [1, 4, 8, 12].flatMap((column) =>
      [1, 6].map((row) => tileCentre({ left: 5.12, bottom: 7.92 }, column, row)),
    ),
  ),
};

const centre: [number, number] = [16.9, 10.8];

const round = (value: number): number => Math.round(value * 100) / 100;

const meeting: Drawn = {
  rooms: [
    {
      id: "meeting",
      number: "G.11",
      name: "Meeting room",
      use: "sitting",
      outline: box(14.32, 7.92, 19.5, 13.5),
      ceilingHeight: 2.7,
      ceilingGrid: tiles(14.32, 7.92),
    },
  ],
  openings: [
    {
      id: "meeting-door",
      rooms: ["meeting", "corridor"],
      from: [14.7, 7.92],
      to: [15.6, 7.92],
      thickness: partition,
      opensInto: "meeting",
    },
    {
      id: "meeting-window",
      rooms: ["meeting", null],
      kind: "window",
      from: [15.4, 13.5],
      to: [18.4, 13.5],
      sill: 0.9,
      head: 2.2,
      thickness: outerWall,
    },
  ],
  obstacles: [
    {
      id: "meeting-table",
      room: "meeting",
      kind: "furniture",
      name: "Table",
      footprint: box(15.7, 10.1, 18.1, 11.5),
      top: 0.74,
    },
    {
      id: "meeting-cabinet",
      room: "meeting",
      kind: "furniture",
      name: "Cabinet",
      footprint: box(17.2, 7.92, 19.2, 8.37),
      top: 1.2,
    },
  ],
  dwellPlaces: dwell(
    "meeting",
    "seat",
    0.5,
    Array.from({ length: 8 }, (_, index): [number, number] => {
      const angle = ((index + 0.5) * Math.PI) / 4;
      return [round(centre[0] + 1.75 * Math.cos(angle)), round(centre[1] + 1.25 * Math.sin(angle))];
    }),
  ),
  interference: [
    {
      id: "meeting-air",
      room: "meeting",
      kind: "air-outlet",
      at: tileCentre({ left: 14.32, bottom: 7.92 }, 6, 7),
      height: 2.7,
    },
  ],
  ceilingThings: [
    {
      id: "meeting-smoke",
      room: "meeting",
      kind: "smoke-head",
      at: tileCentre({ left: 14.32, bottom: 7.92 }, 2, 7),
    },
  ],
  luminaires: panels(
    "meeting",
    2.7,
    [2, 6].flatMap((column) => [2, 5].map((row) => tileCentre({ left: 14.32, bottom: 7.92 }, column, row))),
  ),
};

/** Rooms along the north side of the corridor. */
export const northRooms: readonly Drawn[] = [backOffice, meeting, stair, rest];
