import { describe, expect, test } from "vitest";
import {
  box,
  detectorLike,
  doorLike,
  flightLike,
  roomLike,
  siteLike,
  sourceLike,
} from "../../../test/engine/records.ts";
import { english } from "../check/index.ts";
import {
  clearanceOf,
  faceOf,
  flightEdge,
  floorHeight,
  linksOf,
  lookUp,
  nameOfOpening,
  openingWidth,
  planningDefaults,
  revealOf,
  roomsReachedFrom,
  roomTitle,
  rounded,
} from "./index.ts";

const office = roomLike({ id: "office", number: "0.1", name: "Office", outline: box(0, 0, 4, 3) });
const hall = roomLike({ id: "hall", name: "Hall", outline: box(0, -2.2, 4, 2) });
const store = roomLike({ id: "store", name: "", outline: box(10, 0, 2, 2) });
const door = doorLike({ id: "door", rooms: ["office", "hall"], from: [1, 0], to: [1.9, 0] });

describe("reveal", () => {
  test("reaches the wall's thickness away from the first room, whichever way from and to run", () => {
    for (const opening of [door, { ...door, from: door.to, to: door.from }]) {
      const reveal = revealOf(opening, office);
      expect(reveal.through.map((value) => value + 0)).toEqual([0, -1]);
      expect(reveal.far.map((point) => point[1])).toEqual([-0.2, -0.2]);
      expect(faceOf(reveal, "first").inward.map((value) => value + 0)).toEqual([0, 1]);
      expect(faceOf(reveal, "second").inward.map((value) => value + 0)).toEqual([0, -1]);
    }
    expect(openingWidth(door)).toBeCloseTo(0.9, 12);
  });

  test("of an opening in the wall of a hole leads into the hole, for outlines either way round", () => {
    const hole = box(1, 1, 1, 1);
    for (const ring of [hole, hole.toReversed()]) {
      const court = roomLike({ id: "court", outline: box(0, 0, 4, 3), holes: [ring] });
      // The hole's lower wall is y = 1; the solid lies above it.
      const { through } = revealOf({ ...door, from: [1.2, 1], to: [1.8, 1] }, court);
      expect(through.map((value) => value + 0)).toEqual([0, 1]);
    }
  });

  test("outline runs counter-clockwise", () => {
    const { outline } = revealOf(door, office);
    const area = outline.reduce((sum, p, i) => {
      const q = outline[(i + 1) % outline.length] ?? p;
      return sum + p[0] * q[1] - q[0] * p[1];
    }, 0);
    expect(area / 2).toBeCloseTo(0.9 * 0.2, 12);
  });
});

describe("floor height", () => {
  const flight = flightLike({
    id: "f",
    room: "office",
    footprint: box(1, 0, 3, 1),
    from: [1, 0.5],
    to: [4, 0.5],
    low: 0,
    high: 1.5,
  });
  const landing = flightLike({
    id: "l",
    room: "office",
    kind: "landing",
    footprint: box(4, 0, 1, 1),
    from: [4, 0],
    to: [5, 0],
    low: 1.5,
    high: 1.5,
  });

  test("rises evenly along a flight, stays level on a landing, is 0 elsewhere", () => {
    const at = (x: number, y = 0.5): number => floorHeight([flight, landing], [x, y]);
    expect([at(1), at(2), at(2.5, 0.9), at(4.5), at(0.5)]).toEqual([0, 0.5, 0.75, 1.5, 0]);
  });

  test("foot and head are the edges nearest from and to", () => {
    expect(flightEdge(flight, "foot").map((point) => point[0])).toEqual([1, 1]);
    expect(flightEdge(flight, "head").map((point) => point[0])).toEqual([4, 4]);
  });

  test("a winding flight rises by the share of the distances to its two edges", () => {
    // Foot along y = 0 from x = 1 to 3, head along x = 0 from y = 1 to 3: half-way on the diagonal.
    const winder = flightLike({
      id: "w",
      room: "office",
      footprint: [
        [1, 0],
        [3, 0],
        [3, 3],
        [0, 3],
        [0, 1],
      ],
      from: [2, 0],
      to: [0, 2],
      low: 0,
      high: 1,
    });
    expect(floorHeight([winder], [2, 2])).toBeCloseTo(0.5, 12);
    expect(floorHeight([winder], [2, 1])).toBeCloseTo(1 / 3, 12);
  });
});

describe("look-ups", () => {
  const detector = detectorLike({ id: "b1", room: "office", at: [2, 1], controls: ["office", "hall"] });
  const look = lookUp(siteLike({ rooms: [office, hall, store], openings: [door], detectors: [detector] }));

  test("by id and by room", () => {
    expect(look.roomById.get("hall")).toBe(hall);
    expect(look.openingsOf("hall")).toEqual([door]);
    expect(look.openingsOf("store")).toEqual([]);
    expect(look.detectorsIn("hall")).toEqual([]);
    expect(look.detectorsFor("hall")).toEqual([detector]);
  });

  test("doors join rooms; what no door joins is not reached", () => {
    expect(linksOf(look, "office")).toEqual([{ opening: "door", room: "hall" }]);
    expect(roomsReachedFrom(look, "hall")).toEqual(["hall", "office"]);
    expect(roomsReachedFrom(look, "store")).toEqual(["store"]);
  });

  test("names are those of the trade", () => {
    expect(roomTitle(office)).toBe("0.1 Office");
    expect(roomTitle(store)).toBe("store");
    expect(english(nameOfOpening(door, look))).toBe("The door between 0.1 Office and Hall");
    expect(english(nameOfOpening({ ...door, rooms: ["hall", null] }, look))).toBe(
      "The door between Hall and outside",
    );
    expect(rounded(1.2345, 2)).toBe(1.23);
  });
});

test("a source's own clearance comes before that of its kind", () => {
  const outlet = sourceLike({ id: "a", room: "office", at: [1, 1], kind: "air-outlet" });
  expect(clearanceOf(outlet, planningDefaults)).toBe(1.5);
  expect(clearanceOf({ ...outlet, clearance: 1 }, planningDefaults)).toBe(1);
  expect(
    (["heater", "machine", "door-curtain", "sunlit-window"] as const).map((kind) =>
      clearanceOf({ ...outlet, kind }, planningDefaults),
    ),
  ).toEqual([2, 2, 2, 0]);
});
