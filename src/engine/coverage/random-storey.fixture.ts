import type { DetectorModel, LensMask, ZoneRow } from "../detector/index.ts";
import type { Outline, Point } from "../geometry/index.ts";
import {
  type FloorPiece,
  type Obstacle,
  type Opening,
  planningDefaults,
  type Room,
  type Site,
} from "../site/index.ts";
import type { DeviceLike } from "./zone-types.ts";

/** Dice with a seed: numbers from 0 to below 1, the same for the same seed. */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface RandomStorey {
  readonly site: Site;
  readonly device: DeviceLike;
}

/**
 * A storey of two by two rooms with everything that can stand in the way: racks, floating ducts, touching and overlapping solids, non-convex and
 * flat footprints, glass, openings with sill and head, open leaves, walls with and without thickness, raised rooms and flights; turned and far off.
 */
export function randomStorey(seed: number): RandomStorey {
  const next = dice(seed);
  const between = (a: number, b: number): number => a + (b - a) * next();
  const chance = (p: number): boolean => next() < p;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;
  const [w, h] = [between(3, 7), between(3, 6)];
  const wall = pick([0, 0.1, 0.25]);
  const turn = chance(0.4) ? 0 : between(0, 2 * Math.PI);
  const shift: Point = chance(0.2) ? [10000, -7000] : [0, 0];
  const place = ([x, y]: Point): Point => [
    shift[0] + x * Math.cos(turn) - y * Math.sin(turn),
    shift[1] + x * Math.sin(turn) + y * Math.cos(turn),
  ];
  const rooms: Room[] = [];
  const obstacles: Obstacle[] = [];
  const openings: Opening[] = [];
  const floorPieces: FloorPiece[] = [];
  const corners: Point[] = [
    [0, 0],
    [w + wall, 0],
    [0, h + wall],
    [w + wall, h + wall],
  ];
  const levels = chance(0.25);
  for (const [i, [x, y]] of corners.entries()) {
    const notch = between(0.6, 1.4);
    // The notch lies at the storey's outer corner, away from the walls that rooms share.
    const shape: Point[] =
      i === 0 && chance(0.6)
        ? [
            [x + notch, y],
            [x + w, y],
            [x + w, y + h],
            [x, y + h],
            [x, y + notch],
            [x + notch, y + notch],
          ]
        : [
            [x, y],
            [x + w, y],
            [x + w, y + h],
            [x, y + h],
          ];
    const holes: Outline[] = chance(0.3)
      ? [
          [
            [x + 1.6, y + 1.6],
            [x + 1.6, y + 2.0],
            [x + 2.1, y + 2.0],
            [x + 2.1, y + 1.6],
          ],
        ]
      : [];
    rooms.push({
      id: `room-${i}`,
      storey: "ground",
      number: `${i}`,
      name: "Store",
      use: "other",
      outline: shape.map(place),
      holes: holes.map((hole) => hole.map(place)),
      floor: levels ? pick([0, 0.2]) : 0,
      ceilingHeight: 2.8,
      ...(chance(0.2) ? { highestTemperature: between(20, 29) } : {}),
      demand: { catch: true, walk: true, hold: true },
      noDevices: [],
    });
    if (levels && chance(0.5)) {
      const [fx, fy] = [x + between(1.5, w - 1.5), y + 0.3];
      const strip = (from: number, to: number): Outline =>
        (
          [
            [fx, fy + from],
            [fx + 1, fy + from],
            [fx + 1, fy + to],
            [fx, fy + to],
          ] as Point[]
        ).map(place);
      floorPieces.push(
        {
          id: `flight-${i}`,
          room: `room-${i}`,
          kind: "flight",
          footprint: strip(0, 1.4),
          from: place([fx + 0.5, fy]),
          to: place([fx + 0.5, fy + 1.4]),
          low: 0,
          high: 0.7,
        },
        {
          id: `landing-${i}`,
          room: `room-${i}`,
          kind: "landing",
          footprint: strip(1.4, 2.2),
          from: place([fx, fy]),
          to: place([fx, fy]),
          low: 0.7,
          high: 0.7,
        },
      );
    }
    const many = Math.floor(between(0, 7));
    for (let k = 0; k < many; k++)
      obstacles.push(
        ...solid({
          id: `solid-${i}-${k}`,
          room: `room-${i}`,
          x: x + between(0.1, w - 1),
          y: y + between(0.1, h - 1),
        }),
      );
  }
  opening({ id: "a", rooms: ["room-0", "room-1"], from: [w, between(1.5, h - 1.2)], along: [0, 1] });
  opening({ id: "b", rooms: ["room-0", "room-2"], from: [between(1.5, w - 1.2), h], along: [1, 0] });
  opening({
    id: "c",
    rooms: ["room-3", "room-1"],
    from: [w + wall + between(0.2, w - 1.2), h + wall],
    along: [1, 0],
  });
  opening({ id: "d", rooms: ["room-1", null], from: [2 * w + wall, between(0.2, h - 1.2)], along: [0, 1] });
  const model = randomModel();
  const home = pick([0, 0, 1, 2]);
  const [hx, hy] = corners[home] as Point;
  const device: DeviceLike = {
    model,
    at: place([hx + between(0.2, w - 0.2), hy + between(0.2, h - 0.2)]),
    height: pick([2.5, 2.6, 2.75, 3.2]),
    turn: between(0, 6.28),
    masks: masks(),
  };
  const site: Site = {
    name: "Random storey",
    defaults: planningDefaults,
    storeys: [{ id: "ground", name: "Ground", elevation: 0 }],
    rooms,
    floorPieces,
    openings,
    obstacles,
    dwellPlaces: [],
    interference: [],
    switches: [],
    ceilingThings: [],
    luminaires: [],
    models: [model],
    detectors: [
      {
        id: "d1",
        tag: "D1",
        room: `room-${home}`,
        controls: [],
        group: "",
        model: model.id,
        pinned: false,
        at: device.at,
        height: device.height,
        turn: device.turn,
        masks: device.masks,
      },
    ],
  };
  return { site, device };

  function solid(at: {
    readonly id: string;
    readonly room: string;
    readonly x: number;
    readonly y: number;
  }): readonly Obstacle[] {
    const [a, b] = [between(0.2, 1.2), between(0.2, 0.9)];
    const angle = chance(0.6) ? 0 : between(0, 3);
    const put = (ring: readonly Point[]): Outline =>
      ring.map(([px, py]) =>
        place([
          at.x + px * Math.cos(angle) - py * Math.sin(angle),
          at.y + px * Math.sin(angle) + py * Math.cos(angle),
        ]),
      );
    const heights = pick([
      [0, 0.75],
      [0, 1.4],
      [0, 1.6],
      [0, 2.1],
      [0, 2.8],
      [0, 9],
      [1.9, 2.3],
      [1.2, 1.5],
      [2.3, 2.8],
      [0.4, 1.1],
    ] as const);
    const shape = pick(["box", "box", "box", "angle", "flat", "pair", "star"] as const);
    const made = (id: string, ring: Outline): Obstacle => ({
      id,
      room: at.room,
      kind: "rack",
      name: id,
      footprint: chance(0.3) ? ring.toReversed() : ring,
      base: heights[0],
      top: heights[1],
      seeThrough: chance(0.05),
    });
    const box: Point[] = [
      [0, 0],
      [a, 0],
      [a, b],
      [0, b],
    ];
    switch (shape) {
      case "box":
        return [made(at.id, put(box))];
      case "angle":
        return [
          made(
            at.id,
            put([
              [0, 0],
              [a, 0],
              [a, 0.1],
              [0.1, 0.1],
              [0.1, b],
              [0, b],
            ]),
          ),
        ];
      case "flat":
        return [
          made(
            at.id,
            put([
              [0, 0],
              [a, 0],
            ]),
          ),
        ];
      case "pair":
        return [
          made(at.id, put(box)),
          made(
            `${at.id}-next`,
            put([
              [a, 0],
              [a + 0.5, 0],
              [a + 0.5, b],
              [a, b],
            ]),
          ),
        ];
      case "star": {
        const ring = Array.from({ length: 10 }, (_, k): Point => {
          const r = k % 2 === 0 ? 0.5 : 0.2;
          return [0.5 + r * Math.cos((k * Math.PI) / 5), 0.5 + r * Math.sin((k * Math.PI) / 5)];
        });
        return [made(at.id, put(ring))];
      }
    }
  }

  function opening(at: {
    readonly id: string;
    readonly rooms: readonly [string, string | null];
    readonly from: Point;
    readonly along: Point;
  }): void {
    const width = between(0.7, 1.1);
    const to: Point = [at.from[0] + width * at.along[0], at.from[1] + width * at.along[1]];
    const off = chance(0.3) ? 0.004 : 0;
    openings.push({
      id: at.id,
      rooms: at.rooms,
      kind: pick(["door", "door", "door", "passage", "passage", "window", "glazing"] as const),
      from: place([at.from[0] + off, at.from[1] + off]),
      to: place(to),
      sill: chance(0.3) ? between(0.1, 0.9) : 0,
      head: between(1.8, 2.4),
      thickness: wall,
      hinge: pick(["from", "to"] as const),
      opensInto: pick([at.rooms[0], at.rooms[1]]),
      angle: pick([Math.PI / 2, 1.2, 1.9]),
      state: pick(["open", "closed"] as const),
    });
  }

  function randomModel(): DetectorModel {
    const polar = (
      scale: number,
    ): ZoneRow["height"] extends number ? readonly (readonly [number, number])[] : never =>
      Array.from({ length: 9 }, (_, k) => [(k * 2 * Math.PI) / 9 + 0.1, scale * between(0.5, 1.2)] as const);
    const rows: readonly ZoneRow[] = chance(0.6)
      ? [
          { height: 2.5, radius: between(2.5, 6) },
          { height: 3.0, radius: between(2.5, 7) },
        ]
      : [
          { height: 2.5, outline: polar(between(3, 6)) },
          { height: 3.0, outline: polar(between(3, 6)) },
        ];
    return {
      id: "model",
      title: "Model",
      mounting: { min: 2, max: 4 },
      zones: { towards: rows },
      declaration: "assumed",
      declaredBy: "test",
      cost: 1,
    };
  }

  function masks(): readonly LensMask[] {
    if (chance(0.7)) return [];
    const from = between(0, 6.28);
    const first = {
      from,
      to: from + between(0.3, 3),
      inner: chance(0.3) ? 0 : between(0.2, 0.8),
      outer: chance(0.3) ? Math.PI / 2 : between(0.85, 1.3),
    };
    return chance(0.5)
      ? [first]
      : [first, { from: 0, to: 2 * Math.PI, inner: between(0.5, 0.7), outer: between(0.7, 0.8) }];
  }
}
