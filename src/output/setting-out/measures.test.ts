import { expect, test } from "vitest";
import { type Point, planningDefaults, type Room, type Site } from "#engine";
import { ferryWing } from "../ferry-wing.fixture.ts";
import { measuresOf } from "./measures.ts";

const detector = (tag: string) => ferryWing.detectors.find((one) => one.tag === tag)!;
const room = (id: string) => ferryWing.rooms.find((one) => one.id === id)!;

const siteOf = (one: Room): Site => ({
  name: "",
  defaults: planningDefaults,
  storeys: [{ id: "ground", name: "", elevation: 0 }],
  rooms: [one],
  floorPieces: [],
  openings: [],
  obstacles: [],
  dwellPlaces: [],
  interference: [],
  switches: [],
  ceilingThings: [],
  luminaires: [],
  models: [],
  detectors: [],
});

const plainRoom = (outline: readonly Point[]): Room => {
  const { ceilingGrid: _, ...rest } = room("office");
  return { ...rest, outline };
};

test("Two square distances to the nearest walls that are not parallel", () => {
  // The corridor is 16 × 2 m, and B0.01 hangs at (2.5, 1): both long walls are nearest, the short one comes second.
  const measures = measuresOf(detector("B0.01"), room("corridor"), ferryWing);
  expect(measures.map((one) => [one.kind, Number(one.distance.toFixed(6))])).toEqual([
    ["wall", 1],
    ["wall", 2.5],
  ]);
  expect(measures[1]!.foot).toEqual([0, 1]);
});

test("In a ceiling grid whole tiles are counted from the wall, a cut tile is not", () => {
  // Tiles of 0.6 m from (0.25, 2.25): 0.10 m is cut at the lower wall, 0.55 m at the right one.
  const measures = measuresOf(detector("B0.03"), room("office"), ferryWing);
  expect(measures.map((one) => one.kind)).toEqual(["tiles", "tiles"]);
  const [right, lower] = measures as readonly Extract<(typeof measures)[number], { kind: "tiles" }>[];
  expect([right!.tiles, right!.foot[0]]).toEqual([6, 8]);
  expect([lower!.tiles, lower!.foot[1]]).toEqual([4, 2.15]);
  expect(right!.cutTile).toBeCloseTo(0.55, 9);
  expect(lower!.cutTile).toBeCloseTo(0.1, 9);
});

test("A detector off the middle of its tile is set out from the walls", () => {
  const moved = { ...detector("B0.03"), at: [4.25, 4.35] as const };
  expect(measuresOf(moved, room("office"), ferryWing).map((one) => one.kind)).toEqual(["wall", "wall"]);
});

test("Turning and moving the plan changes no distance", () => {
  const outline: readonly Point[] = [
    [0, 0],
    [7, 0],
    [7, 3],
    [4, 3],
    [4, 5],
    [0, 5],
  ];
  const at: Point = [2.7, 1.9];
  const turned = ([x, y]: Point): Point => [
    1000 + x * Math.cos(0.7) - y * Math.sin(0.7),
    x * Math.sin(0.7) + y * Math.cos(0.7) - 500,
  ];
  const distances = (ring: readonly Point[], place: Point) => {
    const one = plainRoom(ring);
    return measuresOf({ ...detector("B0.03"), at: place }, one, siteOf(one)).map(
      (measure) => measure.distance,
    );
  };
  const before = distances(outline, at);
  expect(before).toEqual([1.9, 2.7]);
  distances(outline.map(turned), turned(at)).forEach((distance, i) => {
    expect(distance).toBeCloseTo(before[i]!, 9);
  });
});

test("In a room without two walls to measure from, two corners serve", () => {
  const many = Array.from(
    { length: 48 },
    (_, i): Point => [2 * Math.cos((i * Math.PI) / 24), 2 * Math.sin((i * Math.PI) / 24)],
  );
  const round = plainRoom(many);
  const measures = measuresOf({ ...detector("B0.03"), at: [0.5, 0.2] }, round, siteOf(round));
  expect(measures.map((one) => one.kind)).toEqual(["corner", "corner"]);
  for (const one of measures)
    expect(one.distance).toBeCloseTo(Math.hypot(one.foot[0] - 0.5, one.foot[1] - 0.2), 12);
});

test("No tape is held through something that reaches the ceiling, nor across the corner of another wall", () => {
  const store = room("store");
  const high = {
    ...ferryWing,
    obstacles: [
      {
        id: "screen",
        room: "store",
        kind: "partition" as const,
        name: "Screen",
        footprint: [
          [9, 2.4],
          [9.1, 2.4],
          [9.1, 4],
          [9, 4],
        ] as const,
        base: 0,
        top: 2.5,
        seeThrough: false,
      },
    ],
  };
  const free = measuresOf(detector("B0.04"), store, { ...ferryWing, obstacles: [] });
  expect(free.some((one) => one.foot[0] === 8.15)).toBe(true);
  const behind = measuresOf(detector("B0.04"), store, high);
  expect(behind.length).toBe(2);
  expect(behind.some((one) => one.foot[0] === 8.15)).toBe(false);
});

test("Wall above a door is measured from unless whole wall is near enough", () => {
  // B0.04 hangs 1.05 m from the wall with the door below its foot, and 3.95 m from the wall opposite.
  const measures = measuresOf(detector("B0.04"), room("store"), ferryWing);
  expect(measures.map((one) => Number(one.distance.toFixed(3))).sort()).toEqual([1.05, 1.45]);
});
