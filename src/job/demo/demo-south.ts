import { luggage } from "./demo-east.ts";
import { battens, box, type Drawn, dwell, panels, partition, tileCentre, tiles } from "./drawing.ts";

/** A row of cubicles as one obstacle: a rear panel along the wall, dividing panels, and beside each door a strip of front. */
function cubicles(left: number, count: number): [number, number][] {
  const [width, depth, panel, strip] = [0.95, 1.5, 0.03, 0.25];
  const outline: [number, number][] = [
    [left, 0],
    [left + count * width + panel, 0],
  ];
  for (let index = count; index >= 0; index--) {
    const x = left + index * width;
    outline.push([x + panel, depth]);
    if (index > 0) outline.push([x - strip, depth], [x - strip, depth - panel], [x, depth - panel]);
    else outline.push([x, depth]);
    if (index > 0) outline.push([x, panel], [x - width + panel, panel]);
  }
  return outline.map(([x, y]) => [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000]);
}

/** A changing room: lockers along both long walls and back to back in the middle, benches in both aisles. */
function changing(room: string, left: number, number: string, name: string, door: number): Drawn {
  const right = left + 4.48;
  const middle = left + 2.24;
  return {
    rooms: [
      {
        id: room,
        number,
        name,
        use: "changing",
        outline: box(left, 0, right, 5.88),
        ceilingHeight: 2.6,
        ceilingGrid: tiles(left, 0),
      },
    ],
    openings: [
      {
        id: `${room}-door`,
        rooms: [room, "corridor"],
        from: [door, 5.88],
        to: [door + 0.9, 5.88],
        thickness: partition,
        opensInto: room,
        hinge: "from",
      },
    ],
    obstacles: [
      {
        id: `${room}-lockers-west`,
        room,
        kind: "rack",
        name: "Lockers",
        footprint: box(left, 0.3, left + 0.5, 4.2),
        top: 1.95,
      },
      {
        id: `${room}-lockers-east`,
        room,
        kind: "rack",
        name: "Lockers",
        footprint: box(right - 0.5, 0.3, right, 4.2),
        top: 1.95,
      },
      {
        id: `${room}-lockers-middle`,
        room,
        kind: "rack",
        name: "Lockers, back to back",
        footprint: box(middle - 0.42, 0.9, middle + 0.42, 3.9),
        top: 1.95,
      },
    ],
    dwellPlaces: dwell(room, "bench", 0.4, [
      [left + 1.15, 1.4],
      [left + 1.15, 3.3],
      [right - 1.15, 1.4],
      [right - 1.15, 3.3],
    ]),
    luminaires: panels(room, 2.6, [
      tileCentre({ left, bottom: 0 }, 1, 2),
      tileCentre({ left, bottom: 0 }, 5, 2),
      tileCentre({ left, bottom: 0 }, 1, 6),
      tileCentre({ left, bottom: 0 }, 5, 6),
      tileCentre({ left, bottom: 0 }, 3, 8),
    ]),
    ceilingThings: [
      { id: `${room}-smoke`, room, kind: "smoke-head", at: tileCentre({ left, bottom: 0 }, 3, 4) },
    ],
    interference: [
      { id: `${room}-air`, room, kind: "air-outlet", at: tileCentre({ left, bottom: 0 }, 3, 1), height: 2.6 },
    ],
  };
}

const toilets: Drawn = {
  rooms: [
    {
      id: "toilets",
      number: "G.06",
      name: "Toilets",
      use: "sanitary",
      outline: box(14.32, 0, 19, 5.88),
      ceilingHeight: 2.6,
      ceilingGrid: tiles(14.32, 0),
    },
  ],
  openings: [
    {
      id: "toilets-door",
      rooms: ["toilets", "corridor"],
      from: [14.8, 5.88],
      to: [15.7, 5.88],
      thickness: partition,
      opensInto: "toilets",
    },
  ],
  obstacles: [
    {
      id: "toilets-cubicles",
      room: "toilets",
      kind: "cubicle",
      name: "Cubicles",
      footprint: cubicles(14.9, 4),
      base: 0.15,
      top: 2,
    },
    {
      id: "toilets-basins",
      room: "toilets",
      kind: "furniture",
      name: "Basins",
      footprint: box(18.5, 2.6, 19, 5.4),
      top: 0.85,
    },
    {
      id: "toilets-screen",
      room: "toilets",
      kind: "partition",
      name: "Privacy screen",
      footprint: box(14.32, 4.2, 16.1, 4.3),
      top: 2.2,
    },
  ],
  dwellPlaces: [
    ...dwell("toilets", "wc", 0.3, [
      [15.39, 0.6],
      [16.34, 0.6],
      [17.29, 0.6],
      [18.24, 0.6],
    ]),
    ...dwell("toilets", "basin", 0.3, [
      [18.15, 3],
      [18.15, 4],
      [18.15, 5],
    ]),
  ],
  luminaires: panels("toilets", 2.6, [
    tileCentre({ left: 14.32, bottom: 0 }, 1, 4),
    tileCentre({ left: 14.32, bottom: 0 }, 5, 4),
    tileCentre({ left: 14.32, bottom: 0 }, 4, 8),
    tileCentre({ left: 14.32, bottom: 0 }, 1, 8),
  ]),
  interference: [
    {
      id: "toilets-air",
      room: "toilets",
      kind: "air-outlet",
      at: tileCentre({ left: 14.32, bottom: 0 }, 3, 2),
      height: 2.6,
    },
  ],
};

const drying: Drawn = {
  rooms: [
    {
      id: "drying",
      number: "G.07",
      name: "Drying room",
      use: "changing",
      outline: box(19.12, 0, 22.6, 5.88),
      ceilingHeight: 2.7,
      highestTemperature: 32,
    },
  ],
  openings: [
    {
      id: "drying-door",
      rooms: ["drying", "corridor"],
      from: [20.4, 5.88],
      to: [21.3, 5.88],
      thickness: partition,
      opensInto: "drying",
      hinge: "to",
    },
  ],
  obstacles: [
    {
      id: "drying-rail-west",
      room: "drying",
      kind: "rack",
      name: "Hanging rail",
      footprint: box(19.12, 0.6, 19.72, 4.6),
      base: 0.3,
      top: 1.9,
    },
    {
      id: "drying-rail-middle",
      room: "drying",
      kind: "rack",
      name: "Mesh rack for boots",
      footprint: box(20.62, 0.9, 21.12, 3.9),
      top: 1.5,
      seeThrough: true,
    },
  ],
  dwellPlaces: dwell("drying", "bench", 0.4, [[21.6, 1.4]]),
  interference: [
    { id: "drying-heater-1", room: "drying", kind: "heater", at: [22.45, 1.5], height: 2.3 },
    { id: "drying-heater-2", room: "drying", kind: "heater", at: [22.45, 4.2], height: 2.3 },
    { id: "drying-fan", room: "drying", kind: "air-outlet", at: [20.1, 0.5], height: 2.7 },
  ],
  luminaires: battens("drying", 2.62, [
    [20.86, 1.4],
    [20.86, 4.6],
  ]),
};

/** Rooms along the south side of the corridor. */
export const southRooms: readonly Drawn[] = [
  changing("changing-west", 5.12, "G.04", "Changing room, west", 8.4),
  changing("changing-east", 9.72, "G.05", "Changing room, east", 12.9),
  toilets,
  drying,
  luggage,
];
