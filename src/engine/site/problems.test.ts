import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  dwellLike,
  flightLike,
  luminaireLike,
  obstacleLike,
  roomLike,
  roundModel,
  siteLike,
  sourceLike,
} from "../../../test/engine/records.ts";
import type { siteProblems as entries } from "../check/catalogue/site.ts";
import { remedyOf, sentenceOf } from "../check/index.ts";
import type { Outline } from "../geometry/index.ts";
import { siteProblems } from "./index.ts";
import type { Room, Site } from "./site.ts";

const room = roomLike({ id: "office", number: "0.1", name: "Office", outline: box(0, 0, 4, 3) });
const hall = roomLike({ id: "hall", number: "0.2", name: "Hall", outline: box(0, -2.2, 4, 2) });
const door = doorLike({ id: "door", rooms: ["office", "hall"], from: [1, 0], to: [1.9, 0] });
const detector = detectorLike({ id: "b1", room: "office", at: [2, 1.5] });
const sound = siteLike({ rooms: [room, hall], openings: [door], detectors: [detector] });
const withRoom = (given: Partial<Room>): Partial<Site> => ({ rooms: [{ ...room, ...given }, hall] });
const withOutline = (outline: Outline): Partial<Site> => ({
  ...withRoom({ outline }),
  openings: [],
  detectors: [],
});
const obstacle = obstacleLike({ id: "o", room: "office", footprint: box(3, 2, 0.5, 0.5) });
const flight = flightLike({
  id: "f",
  room: "office",
  footprint: box(0.2, 1, 2, 1),
  from: [0.2, 1.5],
  to: [2.2, 1.5],
});

/** For each code of the catalogue a plan that has this fault, and a piece of the sentence that must name it. */
const faults: Readonly<Record<keyof typeof entries, readonly [given: Partial<Site>, named: string]>> = {
  "duplicate-id": [{ detectors: [detector, { ...detector, tag: "B2" }] }, "2 detectors share the id b1"],
  "duplicate-tag": [{ detectors: [detector, { ...detector, id: "b2" }] }, "Tag B1 is on 2 detectors"],
  "duplicate-room-number": [
    { rooms: [room, { ...hall, number: "0.1" }] },
    "0.1 is used 2 times on storey Ground floor",
  ],
  "storey-missing": [withRoom({ storey: "cellar" }), "Room 0.1 Office"],
  "record-in-deleted-room": [
    { obstacles: [{ ...obstacle, room: "gone", name: "Rack 7" }] },
    "Rack 7 belongs to a room",
  ],
  "detector-in-deleted-room": [{ detectors: [{ ...detector, room: "gone" }] }, "Detector B1"],
  "controls-deleted-room": [{ detectors: [{ ...detector, controls: ["office", "gone"] }] }, "Detector B1"],
  "opening-to-deleted-room": [
    { openings: [{ ...door, rooms: ["office", "gone"] }] },
    "The door between 0.1 Office and (deleted room)",
  ],
  "model-unknown": [{ models: [] }, "Detector B1"],
  "number-missing": [{ obstacles: [{ ...obstacle, name: "Rack 7", base: Number.NaN }] }, "Rack 7: base"],
  "default-out-of-range": [{ defaults: { ...sound.defaults, speed: 0 } }, "walking speed is 0"],
  "outline-corners-missing": [
    withOutline([
      [0, 0],
      [4, 0],
    ]),
    "room 0.1 Office has 2 different corners",
  ],
  "outline-not-a-number": [
    withOutline([
      [0, 0],
      [4, 0],
      [Number.NaN, 3],
    ]),
    "corner 3",
  ],
  "outline-doubled-corner": [
    withRoom({
      outline: [
        [0, 0],
        [4, 0],
        [4, 0],
        [4, 3],
        [0, 3],
      ],
    }),
    "corner 3",
  ],
  "outline-self-crossing": [
    withOutline([
      [0, 0],
      [4, 3],
      [4, 0],
      [0, 3],
    ]),
    "near (2, 1.5)",
  ],
  "outline-without-area": [
    withOutline([
      [0, 0],
      [4, 0],
      [2, 1e-6],
    ]),
    "room 0.1 Office encloses no area",
  ],
  "hole-outside-room": [withRoom({ holes: [box(3, 2, 2, 0.5)] }), "room 0.1 Office"],
  "rooms-overlap": [{ rooms: [room, { ...hall, outline: box(0, -2.2, 4, 2.3) }] }, "overlap by 0.4 m²"],
  "ceiling-height-missing": [withRoom({ ceilingHeight: 0 }), "Room 0.1 Office"],
  "ceiling-height-unusual": [withRoom({ ceilingHeight: 27 }), "27 m high"],
  "room-without-door": [{ openings: [] }, "Room 0.2 Hall"],
  "temperature-unknown": [withRoom({ use: "plant" }), "Room 0.1 Office"],
  "floor-piece-outside-room": [
    { floorPieces: [{ ...flight, footprint: box(3, 1, 2, 1) }] },
    "A flight of room 0.1 Office",
  ],
  "flight-does-not-rise": [{ floorPieces: [{ ...flight, high: 0 }] }, "room 0.1 Office"],
  "opening-off-wall": [{ openings: [{ ...door, from: [1, 0.5], to: [1.9, 0.5] }] }, "0.5 m away"],
  "opening-misses-second-room": [{ openings: [{ ...door, thickness: 0.1 }] }, "0.1 m of wall are missing"],
  "opening-wider-than-wall": [{ openings: [{ ...door, from: [1, 0], to: [5, 0] }] }, "4 m wide"],
  "opening-without-width": [{ openings: [{ ...door, to: [1, 0] }] }, "0 m wide"],
  "door-too-narrow": [{ openings: [{ ...door, to: [1.3, 0] }] }, "0.3 m wide"],
  "opening-upside-down": [{ openings: [{ ...door, sill: 2, head: 1 }] }, "begins at 2 m and ends at 1 m"],
  "opening-above-ceiling": [
    { openings: [{ ...door, head: 3 }] },
    "3 m high, the ceiling of room 0.1 Office only 2.7 m",
  ],
  "door-above-floor": [{ openings: [{ ...door, sill: 0.8 }] }, "0.8 m above the floor"],
  "opening-thickness-unusual": [
    { openings: [{ ...door, rooms: ["office", null], opensInto: null, thickness: 20 }] },
    "20 m thick",
  ],
  "opening-joins-same-room": [
    { openings: [{ ...door, rooms: ["office", "office"] }] },
    "room 0.1 Office on both sides",
  ],
  "openings-overlap": [
    { openings: [door, { ...door, id: "second", from: [1.5, 0], to: [2.4, 0] }] },
    "overlap in the same wall",
  ],
  "door-swings-elsewhere": [
    { openings: [{ ...door, opensInto: null }] },
    "The door between 0.1 Office and 0.2 Hall",
  ],
  "obstacle-outside-room": [
    { obstacles: [{ ...obstacle, name: "Rack 7", footprint: box(3.5, 2, 1, 0.5) }] },
    "Rack 7 reaches 0.25 m² outside",
  ],
  "obstacle-upside-down": [
    { obstacles: [{ ...obstacle, name: "Rack 7", base: 2, top: 1 }] },
    "Rack 7 begins at 2 m and ends at 1 m",
  ],
  "obstacle-above-ceiling": [
    { obstacles: [{ ...obstacle, top: 3 }] },
    "3 m high, the ceiling of room 0.1 Office only 2.7 m",
  ],
  "see-through-obstacle": [
    { obstacles: [{ ...obstacle, name: "", kind: "rack", seeThrough: true }] },
    "A rack is marked as see-through",
  ],
  "dwell-place-outside-room": [
    { dwellPlaces: [dwellLike({ id: "p", room: "office", at: [5, 1] })] },
    "A desk stands outside room 0.1 Office",
  ],
  "dwell-place-without-size": [
    { dwellPlaces: [dwellLike({ id: "p", room: "office", at: [2, 1], radius: 0 })] },
    "radius of 0 m",
  ],
  "thing-outside-room": [
    { interference: [sourceLike({ id: "s", room: "office", at: [9, 9] })] },
    "source of false triggering (heater) lies outside",
  ],
  "luminaire-above-ceiling": [
    { luminaires: [luminaireLike({ id: "l", room: "office", at: [2, 1], height: 3 })] },
    "Luminaire l hangs at 3 m",
  ],
  "detector-outside-room": [
    { detectors: [{ ...detector, at: [5, 1] }] },
    "Detector B1 lies outside room 0.1 Office",
  ],
  "detector-above-ceiling": [
    { detectors: [{ ...detector, height: 3 }] },
    "set at 3 m, the ceiling of room 0.1 Office is at 2.7 m",
  ],
  "detector-outside-mounting-limits": [
    { models: [roundModel({ mounting: { min: 3, max: 4 } })] },
    "at 2.7 m; its data sheet allows 3 to 4 m",
  ],
  "detector-above-top-row": [
    { models: [roundModel({ zones: { towards: [{ height: 2.5, radius: 4 }] } })] },
    "up to 2.5 m only",
  ],
  "detector-in-obstacle": [
    { obstacles: [{ ...obstacle, name: "Duct", footprint: box(1.5, 1, 1, 1), base: 2.4, top: 2.7 + 0.1 }] },
    "Detector B1 sits inside Duct",
  ],
  "detector-where-none-may-be": [
    withRoom({ noDevices: [box(1, 1, 2, 1)] }),
    "room 0.1 Office where nothing may be mounted",
  ],
  "detector-height-missing": [{ detectors: [{ ...detector, height: 0 }] }, "Detector B1"],
  "model-without-zones": [{ models: [roundModel({ zones: {} })] }, "Model Round"],
  "model-mounting-limits-crossed": [
    { models: [roundModel({ mounting: { min: 4, max: 2 } })] },
    "from 4 to 2 m",
  ],
  "model-row-unusable": [
    {
      models: [
        roundModel({
          zones: {
            towards: [
              { height: 2.5, radius: 4 },
              { height: 2.5, radius: 5 },
            ],
          },
        }),
      ],
    },
    "row 2: the mounting heights do not rise",
  ],
  "demo-model-planned": [
    { models: [roundModel({ demo: true })] },
    "The invented model Round is planned (detectors: 1).",
  ],
};

test("a sound plan has no problem", () => {
  expect(siteProblems(sound)).toEqual([]);
});

test.each(Object.entries(faults))(
  "%s is reported for a plan that has this fault, and names it",
  (code, [given, named]) => {
    const problem = siteProblems({ ...sound, ...given }).find(
      (one) => one.code === code && sentenceOf(one).includes(named),
    );
    expect(
      problem,
      siteProblems({ ...sound, ...given })
        .map(sentenceOf)
        .join("\n"),
    ).toBeDefined();
    if (!problem) return;
    // Every {name} of sentence and remedy is filled.
    expect(sentenceOf(problem) + remedyOf(problem)).not.toMatch(/[{}]|undefined|NaN/);
  },
);

describe("what is no fault", () => {
  const codesOf = (given: Partial<Site>): string[] =>
    siteProblems({ ...sound, ...given }).map((problem) => problem.code);

  test("an opening whose wall has an extra corner in it", () => {
    expect(
      codesOf(
        withRoom({
          outline: [
            [0, 0],
            [1.4, 0],
            [4, 0],
            [4, 3],
            [0, 3],
          ],
        }),
      ),
    ).toEqual([]);
  });

  test("an outline drawn clockwise, and a door drawn from right to left", () => {
    expect(
      codesOf({
        rooms: [{ ...room, outline: room.outline.toReversed() }, hall],
        openings: [{ ...door, from: door.to, to: door.from }],
      }),
    ).toEqual([]);
  });

  test("a column drawn through the wall, a heater hung on it, a window above a door", () => {
    const column = obstacleLike({
      id: "c",
      room: "office",
      kind: "column",
      footprint: box(3.8, 1, 0.6, 0.4),
      top: 2.7,
    });
    const heater = sourceLike({ id: "h", room: "office", at: [4.1, 2] });
    const window = doorLike({ ...door, id: "w", kind: "window", sill: 2.1, head: 2.5 });
    expect(codesOf({ obstacles: [column], interference: [heater], openings: [door, window] })).toEqual([]);
  });

  test("rooms that overlap on different storeys", () => {
    const above = roomLike({ id: "above", outline: room.outline, storey: "first" });
    const problems = codesOf({
      rooms: [room, hall, above],
      storeys: [...sound.storeys, { id: "first", name: "First floor", elevation: 3 }],
    });
    expect(problems).toEqual(["room-without-door"]);
  });

  test("a model whose radii are outlines that rise in angle", () => {
    const outline = [
      [0, 4],
      [2, 3],
      [4, 5],
    ] as const;
    expect(codesOf({ models: [roundModel({ zones: { towards: [{ height: 2.7, outline }] } })] })).toEqual([]);
    expect(
      codesOf({
        models: [roundModel({ zones: { towards: [{ height: 2.7, outline: outline.slice(0, 2) }] } })],
      }),
    ).toContain("model-row-unusable");
  });
});

test("no content makes it throw, whatever numbers it holds (seed 9)", () => {
  const odd = fc.oneof(
    fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -1, 1e12),
    fc.double({ min: -10, max: 10, noNaN: true }),
  );
  const point = fc.tuple(odd, odd);
  const outline = fc.array(point, { maxLength: 6 });
  fc.assert(
    fc.property(outline, outline, point, point, odd, odd, (one, two, a, b, c, d) => {
      const site: Site = {
        ...sound,
        rooms: [{ ...room, outline: one, holes: [two], noDevices: [two], ceilingHeight: c, floor: d }, hall],
        openings: [{ ...door, from: a, to: b, sill: c, head: d, thickness: c, angle: d }],
        obstacles: [{ ...obstacle, footprint: two, base: c, top: d }],
        floorPieces: [{ ...flight, footprint: two, from: a, to: b, low: c, high: d }],
        dwellPlaces: [dwellLike({ id: "p", room: "office", at: a, radius: c })],
        interference: [sourceLike({ id: "s", room: "office", at: a, to: b, height: c })],
        luminaires: [luminaireLike({ id: "l", room: "office", at: b, height: d })],
        detectors: [{ ...detector, at: a, height: c, turn: d }],
      };
      for (const problem of siteProblems(site)) expect(sentenceOf(problem).length).toBeGreaterThan(10);
    }),
    { seed: 9, numRuns: 300, endOnFailure: true },
  );
});
